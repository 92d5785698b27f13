import { batteryModel } from "../../circuit/battery.ts";
import { controllerInputs, mostIntoBatteryA } from "../../circuit/build.ts";
import { worstPanelA } from "../../circuit/checks.ts";
import { restV } from "../../circuit/chemistry.ts";
import { type CableDrop, cableDrop, thickerRuns } from "../../circuit/drop.ts";
import { type CurrentCheck, checkCurrent } from "../../circuit/fuse.ts";
import type { CircuitRemark } from "../../circuit/remark.ts";
import type { CableRun, Circuit, Controller } from "../../plan/circuit.ts";
import type { SkySource } from "../light/sky-source.ts";
import { type BatteryOptions, batterySeasons, meanOutcome } from "./battery-season.ts";
import { ratedPanels, remarksOf, type SetUp } from "./set-up.ts";

/** One size of a cable run and what it costs in energy. */
export interface CableChoice extends CableDrop {
  /** Whether it is the size of the plan. */
  readonly today: boolean;
  /** What the battery is offered less than through a cable without resistance, Wh: a day on average, and a season. */
  readonly lostWhADay: number;
  readonly lostWhASeason: number;
  /** What the battery is offered more than with today's size, Wh a season. */
  readonly returnsWhASeason: number;
}

/** A cable run: the current it is rated and checked by, and sizes to choose from. */
export interface RunAnswer {
  readonly run: "panel cable" | "battery cable";
  readonly ratedA: number;
  readonly atV: number;
  readonly choices: readonly CableChoice[];
  readonly check: CurrentCheck;
}

/** What is to be known about a plan's wiring. */
export interface WiringAnswer {
  readonly runs: readonly RunAnswer[];
  readonly remarks: readonly CircuitRemark[];
  readonly days: number;
  /** What the panels' cable leads to: only a controller that tracks their power can use all the volts that arrive. */
  readonly controller: Controller["kind"];
}

/** Sizes shown beside today's. */
const SIZES_UP = 3;

const withRun = (circuit: Circuit, key: "panelCable" | "batteryCable", run: CableRun): Circuit => ({
  ...circuit,
  [key]: run,
});

/** The same run with next to no resistance: what a loss is counted from. */
const withoutResistance = (run: CableRun): CableRun => ({
  ...run,
  size: 300,
  lengthM: 1e-6,
  contactMilliohm: 0,
});

/**
 * What a plan's cables drop, lose and may carry, and what the next sizes up would return.
 *
 * The loss is what the battery is offered less: a drop that a PWM controller would have wasted anyway costs nothing.
 *
 * @param source skies that the set-up lives through
 */
export const wiringOf = (source: SkySource, setUp: SetUp, options: BatteryOptions): WiringAnswer => {
  const { circuit, battery } = setUp;
  const { controller } = circuit;
  const batteryV = batteryModel(battery).meanV;
  const panels = ratedPanels(setUp);
  const ratedAtPanel = Math.max(...panels.map(({ nameplate }) => nameplate.impA));
  const worstAtPanel = worstPanelA(circuit, panels);
  const panelV =
    controller.kind === "mppt"
      ? Math.min(...panels.map(({ nameplate, inSeries = 1 }) => inSeries * nameplate.vmpV))
      : restV(battery, 0.5);
  const mostIntoBattery = mostIntoBatteryA(controllerInputs(circuit, panels));
  const ratedIntoBattery = Math.min(
    mostIntoBattery,
    panels.reduce((sum, { nameplate: { vmpV, impA }, howMany, inSeries = 1, own = controller }) => {
      const strings = howMany / inSeries;
      return sum + strings * (own.kind === "mppt" ? (inSeries * vmpV * impA) / batteryV : impA);
    }, 0),
  );

  const runs = (["panelCable", "batteryCable"] as const).map((key) => {
    const sizes = thickerRuns(circuit[key], SIZES_UP);
    return { key, sizes, variants: [withoutResistance(circuit[key]), ...sizes] };
  });
  const offered = batterySeasons(
    source,
    runs.flatMap(({ key, variants }) =>
      variants.map((run) => ({ ...setUp, circuit: withRun(circuit, key, run) })),
    ),
    options,
  ).map((season) => meanOutcome(season, "offeredWh"));
  const days = source.sun.days.length;

  let at = 0;
  const answers = runs.map(({ key, sizes, variants }): RunAnswer => {
    const [ideal, today, ...thicker] = offered.slice(at, at + variants.length);
    at += variants.length;
    const [ratedA, atV, worstA] =
      key === "panelCable"
        ? [ratedAtPanel, panelV, worstAtPanel]
        : [ratedIntoBattery, batteryV, mostIntoBattery];
    return {
      run: key === "panelCable" ? "panel cable" : "battery cable",
      ratedA,
      atV,
      choices: sizes.map((run, size): CableChoice => {
        const offeredWh = [today, ...thicker][size];
        return {
          ...cableDrop(run, ratedA, atV),
          today: size === 0,
          lostWhADay: (ideal - offeredWh) / days,
          lostWhASeason: ideal - offeredWh,
          returnsWhASeason: offeredWh - today,
        };
      }),
      check: checkCurrent(circuit[key], worstA, circuit.continuousFactor, circuit.hottestC),
    };
  });
  return {
    runs: answers,
    days,
    controller: controller.kind,
    remarks: remarksOf(setUp),
  };
};
