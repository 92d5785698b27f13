import type { Battery } from "../plan/battery.ts";
import type { CableRun, Circuit } from "../plan/circuit.ts";
import { type CompleteNameplate, completeNameplate } from "../plan/nameplate.ts";
import type { Plan } from "../plan/plan.ts";
import { branchFuseRemarks } from "./branch-fuses.ts";
import {
  type ControllerInput,
  controllerInputs,
  mostIntoBatteryA,
  type RatedPanels,
  shortCircuitA,
} from "./build.ts";
import { restV } from "./chemistry.ts";
import { checkCurrent } from "./fuse.ts";
import { type CircuitRemark, remark } from "./remark.ts";

/**
 * Open-circuit voltage on a cold morning, V: Voc x (1 + coefficient x (air - 25)). The sun's first light finds the cells as
 * cold as the air.
 *
 * @example coldOpenV({ vocV: 22, vocPctPerK: -0.3 }, -15) // 24.64
 */
export const coldOpenV = (
  { vocV, vocPctPerK }: Pick<CompleteNameplate, "vocV" | "vocPctPerK">,
  airC: number,
): number => vocV * (1 + (vocPctPerK / 100) * (airC - 25));

/** Panels further apart in Vmp than this do not belong side by side on one controller (common practice, no source). */
const ALIKE_VOLTS = 0.1;

/** A panel that works this far above a full battery is mostly wasted behind a PWM controller (common practice, no source). */
const WASTED_ABOVE = 1.7;

/** Cell temperature of a panel in full sun on a warm day, degC: its voltage then decides whether it still charges. */
const HOT_CELL_C = 65;

const inARow = (inSeries: number): string => (inSeries === 1 ? "" : `, ${inSeries} in series,`);

const voltageRemarks = (
  { coldestC }: Circuit,
  { controller, strings }: ControllerInput,
): readonly CircuitRemark[] =>
  strings.flatMap(({ of: { name, nameplate }, inSeries }) => {
    const volts = inSeries * coldOpenV(nameplate, coldestC);
    return volts > controller.maxInputV
      ? [
          remark(
            "danger",
            "input voltage",
            `"${name}"${inARow(inSeries)} can reach ${volts.toFixed(1)} V at ${coldestC} °C; the controller stands ${controller.maxInputV} V. Do not connect it.`,
          ),
        ]
      : [];
  });

const currentRemarks = (
  { strongLightFactor }: Circuit,
  input: ControllerInput,
  battery: Battery,
): readonly CircuitRemark[] => {
  const { controller, strings } = input;
  const labelA = shortCircuitA(input);
  const strongA = labelA * strongLightFactor;
  const passes = controller.kind === "pwm" ? controller.maxCurrentA : controller.maxPanelIscA;
  if (passes !== undefined && strongA > passes) {
    return [
      remark(
        "danger",
        "input current",
        `The panels can give ${strongA.toFixed(1)} A in strong light (${labelA.toFixed(1)} A by their labels), the controller stands ${passes} A. Take a larger one.`,
      ),
    ];
  }
  if (controller.kind === "pwm") return [];
  const volts = restV(battery, 0.5);
  const chargingA = strings.reduce(
    (sum, { of: { nameplate }, count, inSeries }) =>
      sum + (count * inSeries * nameplate.vmpV * nameplate.impA) / volts,
    0,
  );
  return chargingA > controller.maxCurrentA
    ? [
        remark(
          "loss",
          "clipped",
          `The panels could charge with ${chargingA.toFixed(1)} A, the controller gives at most ${controller.maxCurrentA} A: the rest of strong light is curtailed.`,
        ),
      ]
    : [];
};

/** Whether a controller and its strings suit the battery: enough volts, not wastefully many, and alike. */
const matchRemarks = (
  { controller, strings }: ControllerInput,
  battery: Battery,
): readonly CircuitRemark[] => {
  const fullV = restV(battery, 1);
  const startV =
    fullV +
    (controller.kind === "mppt"
      ? Math.max(controller.headroomV, controller.startAboveBatteryV)
      : controller.dropV);
  const keepV = fullV + (controller.kind === "mppt" ? controller.headroomV : controller.dropV);
  const remarks = strings.flatMap(({ of: { name, nameplate }, inSeries }) => {
    const [vmpV, vocV] = [inSeries * nameplate.vmpV, inSeries * nameplate.vocV];
    const hotV = vmpV - vocV * (-nameplate.vocPctPerK / 100) * (HOT_CELL_C - 25);
    if (vocV < startV) {
      return [
        remark(
          "loss",
          "too low",
          `"${name}"${inARow(inSeries)} (Voc ${vocV.toFixed(1)} V) is too low to charge a battery of ${fullV.toFixed(1)} V through this controller.`,
        ),
      ];
    }
    if (controller.kind === "pwm" && vmpV > WASTED_ABOVE * fullV) {
      return [
        remark(
          "loss",
          "wasted volts",
          `"${name}"${inARow(inSeries)} works at ${vmpV.toFixed(1)} V; a PWM controller pulls it down to the battery's ${fullV.toFixed(1)} V and wastes the rest. This panel needs MPPT.`,
        ),
      ];
    }
    return hotV < keepV
      ? [
          remark(
            "loss",
            "hot",
            `In hot sun "${name}"${inARow(inSeries)} works at about ${hotV.toFixed(1)} V, hardly above a full battery: it loses most on the hottest days.`,
          ),
        ]
      : [];
  });
  const volts = strings.map(({ of, inSeries }) => inSeries * of.nameplate.vmpV);
  const [low, high] = [Math.min(...volts), Math.max(...volts)];
  return high > low * (1 + ALIKE_VOLTS)
    ? [
        ...remarks,
        remark(
          "loss",
          "unlike volts",
          `Panels side by side share one voltage, and these differ (${low.toFixed(1)} and ${high.toFixed(1)} V): give each its own controller.`,
        ),
      ]
    : remarks;
};

/** A battery charged faster than its maker allows (a controller does not know the limit unless it is set). */
const chargeRemarks = (
  { strongLightFactor }: Circuit,
  inputs: readonly ControllerInput[],
  battery: Battery,
): readonly CircuitRemark[] => {
  const limitA = (battery.capacityAh * battery.maxChargePerHourPct) / 100;
  const controllers = inputs.reduce((sum, { alike }) => sum + alike, 0);
  // Without tracking no more comes than the panels give, and nothing can be set.
  const mostOf = (input: ControllerInput): number =>
    input.controller.kind === "mppt"
      ? input.controller.maxCurrentA
      : Math.min(input.controller.maxCurrentA, shortCircuitA(input) * strongLightFactor);
  const mostA = inputs.reduce((sum, input) => sum + input.alike * mostOf(input), 0);
  if (mostA <= limitA) return [];
  const limit = `the battery takes at most ${limitA.toFixed(0)} A`;
  if (inputs.every(({ controller }) => controller.kind === "pwm")) {
    return [
      remark(
        "danger",
        "charging current",
        `The panels can charge with ${mostA.toFixed(1)} A in strong light, ${limit}, and a PWM controller cannot hold it back.`,
      ),
    ];
  }
  return [
    remark(
      "danger",
      "charging current",
      controllers === 1
        ? `The controller can charge with ${Number(mostA.toFixed(1))} A, ${limit}: set the controller's limit.`
        : `The ${controllers} controllers together can charge with ${Number(mostA.toFixed(1))} A, ${limit}: set their limits.`,
    ),
  ];
};

const cableRemarks = (
  { continuousFactor, hottestC }: Circuit,
  run: CableRun,
  about: "panel cable" | "battery cable",
  worstA: number,
): readonly CircuitRemark[] => {
  const { verdict, words } = checkCurrent(run, worstA, continuousFactor, hottestC);
  if (verdict === "fits" || verdict === "not-listed") return [];
  return [remark("danger", about, `The ${about}: ${words.charAt(0).toLowerCase()}${words.slice(1)}`)];
};

/** The most that a panel's own cable can carry forwards, A: a string's short-circuit current in strong light. */
export const worstPanelA = (
  circuit: Pick<Circuit, "strongLightFactor">,
  panels: readonly Pick<RatedPanels, "nameplate">[],
): number => Math.max(...panels.map(({ nameplate }) => nameplate.iscA)) * circuit.strongLightFactor;

/**
 * All that is to be said about a build's parts beside each other, dangers first: the voltage and current that each
 * controller stands, fuses in the branches, the battery's charging current, both cables and their fuses; then what throws
 * light away. Whoever tells of a build, or of one that could be bought, asks here.
 *
 * Plain data in, plain data out, some microseconds: fit for a search over many builds.
 */
export const circuitRemarks = (
  circuit: Circuit,
  panels: readonly RatedPanels[],
  battery: Battery,
): readonly CircuitRemark[] => {
  const inputs = controllerInputs(circuit, panels);
  return [
    ...inputs.flatMap((input) => voltageRemarks(circuit, input)),
    ...inputs.flatMap((input) => currentRemarks(circuit, input, battery)),
    ...inputs.flatMap((input) => branchFuseRemarks(circuit, input)),
    ...chargeRemarks(circuit, inputs, battery),
    ...cableRemarks(circuit, circuit.panelCable, "panel cable", worstPanelA(circuit, panels)),
    ...cableRemarks(circuit, circuit.batteryCable, "battery cable", mostIntoBatteryA(inputs)),
    ...inputs.flatMap((input) => matchRemarks(input, battery)),
  ].sort((a, b) => Number(b.kind === "danger") - Number(a.kind === "danger"));
};

/** The same of a plan as it is, before any light is worked out. */
export const planRemarks = ({
  circuit,
  panels,
  battery,
}: Pick<Plan, "circuit" | "panels" | "battery">): readonly CircuitRemark[] =>
  circuitRemarks(
    circuit,
    panels.map(({ name, howMany, inSeries, controller, module }) => ({
      name,
      howMany,
      inSeries,
      own: controller,
      maxSeriesFuseA: module.maxSeriesFuseA,
      nameplate: completeNameplate(module),
    })),
    battery,
  );
