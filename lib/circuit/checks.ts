import type { Battery } from "../plan/battery.ts";
import type { Circuit } from "../plan/circuit.ts";
import type { CompleteNameplate } from "../plan/nameplate.ts";
import { restV } from "./chemistry.ts";

/** Something about a circuit that its owner must know before building or believing it. */
export interface CircuitRemark {
  /** `danger` can break or burn something; `loss` throws light away. */
  readonly kind: "danger" | "loss";
  readonly words: string;
}

/** Panels of one kind, as far as a circuit asks. */
export interface RatedPanels {
  readonly name: string;
  readonly howMany: number;
  readonly nameplate: CompleteNameplate;
}

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

/** Cell temperature of a panel in full sun on a warm day, degC: its voltage then decides whether it still charges. */
const HOT_CELL_C = 65;

const remark = (kind: CircuitRemark["kind"], words: string): CircuitRemark => ({ kind, words });

const voltageRemarks = (circuit: Circuit, panels: readonly RatedPanels[]): readonly CircuitRemark[] => {
  const { controller, coldestC } = circuit;
  return panels.flatMap(({ name, nameplate }) => {
    const volts = coldOpenV(nameplate, coldestC);
    return volts > controller.maxInputV
      ? [
          remark(
            "danger",
            `"${name}" can reach ${volts.toFixed(1)} V at ${coldestC} °C; the controller stands ${controller.maxInputV} V. Do not connect it.`,
          ),
        ]
      : [];
  });
};

const currentRemarks = (
  circuit: Circuit,
  panels: readonly RatedPanels[],
  volts: number,
): readonly CircuitRemark[] => {
  const { controller, wiring } = circuit;
  const amps = panels.map(({ howMany, nameplate }) => {
    const each = controller.kind === "mppt" ? (nameplate.vmpV * nameplate.impA) / volts : nameplate.iscA;
    return wiring === "parallel" ? each * howMany : each;
  });
  const most = wiring === "parallel" ? amps.reduce((sum, one) => sum + one, 0) : Math.max(...amps);
  return most > controller.maxCurrentA
    ? [
        remark(
          controller.kind === "pwm" ? "danger" : "loss",
          controller.kind === "pwm"
            ? `The panels can give ${most.toFixed(1)} A, the controller stands ${controller.maxCurrentA} A. Take a larger one.`
            : `The panels could charge with ${most.toFixed(1)} A, the controller gives at most ${controller.maxCurrentA} A: the rest of strong light is curtailed.`,
        ),
      ]
    : [];
};

const matchRemarks = (
  circuit: Circuit,
  panels: readonly RatedPanels[],
  battery: Battery,
): readonly CircuitRemark[] => {
  const { controller, wiring } = circuit;
  const fullV = restV(battery, 1);
  const needed =
    fullV +
    (controller.kind === "mppt"
      ? Math.max(controller.headroomV, controller.startAboveBatteryV)
      : controller.dropV);
  const remarks = panels.flatMap(({ name, nameplate }) => {
    const { vmpV, vocV, vocPctPerK } = nameplate;
    const hotV = vmpV - vocV * (-vocPctPerK / 100) * (HOT_CELL_C - 25);
    if (vocV < needed) {
      return [
        remark(
          "loss",
          `"${name}" (Voc ${vocV.toFixed(1)} V) is too low to charge a battery of ${fullV.toFixed(1)} V through this controller.`,
        ),
      ];
    }
    if (controller.kind === "pwm" && vmpV > 1.7 * fullV) {
      return [
        remark(
          "loss",
          `"${name}" works at ${vmpV.toFixed(1)} V; a PWM controller pulls it down to the battery's ${fullV.toFixed(1)} V and wastes the rest. This panel needs MPPT.`,
        ),
      ];
    }
    return hotV < fullV + (controller.kind === "mppt" ? controller.headroomV : controller.dropV)
      ? [
          remark(
            "loss",
            `In hot sun "${name}" works at about ${hotV.toFixed(1)} V, hardly above a full battery: it loses most on the hottest days.`,
          ),
        ]
      : [];
  });
  const volts = panels.map(({ nameplate }) => nameplate.vmpV);
  const [low, high] = [Math.min(...volts), Math.max(...volts)];
  return wiring === "parallel" && high > low * (1 + ALIKE_VOLTS)
    ? [
        ...remarks,
        remark(
          "loss",
          `Panels side by side share one voltage, and these differ (${low.toFixed(1)} and ${high.toFixed(1)} V): give each its own controller.`,
        ),
      ]
    : remarks;
};

/** Three or more panels side by side can feed a fault in one of them with more than it stands (common practice, no source). */
const stringRemarks = (circuit: Circuit, panels: readonly RatedPanels[]): readonly CircuitRemark[] =>
  circuit.wiring === "parallel" && panels.reduce((sum, { howMany }) => sum + howMany, 0) > 2
    ? [
        remark(
          "danger",
          "Three or more panels side by side: each needs a fuse of its own, no larger than its label's greatest series fuse.",
        ),
      ]
    : [];

/** A battery charged faster than its maker allows (a controller does not know the limit unless it is set). */
const chargeRemarks = (
  circuit: Circuit,
  panels: readonly RatedPanels[],
  battery: Battery,
): readonly CircuitRemark[] => {
  const limitA = (battery.capacityAh * battery.maxChargePerHourPct) / 100;
  const controllers =
    circuit.wiring === "parallel" ? 1 : panels.reduce((sum, { howMany }) => sum + howMany, 0);
  const mostA = controllers * circuit.controller.maxCurrentA;
  if (mostA <= limitA) return [];
  const limit = `the battery takes at most ${limitA.toFixed(0)} A`;
  return [
    remark(
      "danger",
      controllers === 1
        ? `The controller can charge with ${mostA} A, ${limit}: set the controller's limit.`
        : `The ${controllers} controllers together can charge with ${mostA} A, ${limit}: set their limits.`,
    ),
  ];
};

/** All that is to be said about a circuit's parts beside each other, dangers first. */
export const circuitRemarks = (
  circuit: Circuit,
  panels: readonly RatedPanels[],
  battery: Battery,
): readonly CircuitRemark[] => {
  const volts = restV(battery, 0.5);
  return [
    ...voltageRemarks(circuit, panels),
    ...currentRemarks(circuit, panels, volts),
    ...stringRemarks(circuit, panels),
    ...chargeRemarks(circuit, panels, battery),
    ...matchRemarks(circuit, panels, battery),
  ].sort((a, b) => Number(b.kind === "danger") - Number(a.kind === "danger"));
};
