import { type BatteryModel, batteryModel } from "../../circuit/battery.ts";
import { batteryTemperature } from "../../circuit/battery-temperature.ts";
import type { LoadColumns } from "../../circuit/loads.ts";
import { type Battery, keptAtC } from "../../plan/battery.ts";
import type { SkySource } from "../light/sky-source.ts";
import { airOfDays, type BatterySteps } from "./battery-steps.ts";

/** What stands round a battery on every step of a season: its temperature, what that leaves of its capacity, and the loads. */
export interface Surroundings {
  /** The battery's own temperature, degC. */
  readonly batteryC: Float64Array;
  /** Share of the capacity that it has at that temperature, 0 to 1. */
  readonly capacityShare: Float64Array;
  /** Drawn from the battery, W. */
  readonly loadW: Float64Array;
}

/** One set-up's battery and loads. */
export interface Inhabitant {
  readonly battery: Battery;
  readonly loads: LoadColumns;
}

/**
 * The air of each season of a source on every step of its days, degC: drawn with the season's light, or read from the
 * weather file night and day; where neither knows it, the mean air of each day's lit rows.
 *
 * @param statedC air where the sky says nothing of it, degC: one number or twelve
 */
const airUnder = (source: SkySource, { perDay }: BatterySteps, statedC: number | readonly number[]) => {
  const { sun } = source;
  const spreadDays = (days: Float64Array, out: Float64Array): void => {
    for (let step = 0; step < out.length; step += 1) out[step] = days[Math.floor(step / perDay)];
  };
  return (season: number, out: Float64Array): void => {
    if (source.kind === "drawn") {
      if (source.air === undefined) spreadDays(airOfDays(sun, source.rungs[0].sky.sky, statedC), out);
      else source.air(season, out);
      return;
    }
    const { sky, stepAirC } = source.skies[season];
    spreadDays(airOfDays(sun, sky, statedC), out);
    stepAirC?.forEach((airC, step) => {
      if (!Number.isNaN(airC)) out[step] = airC;
    });
  };
};

/** Adds up what is drawn in each step, coolers running by the air of the hour. */
const fillLoads = ({ steadyW, cooling }: LoadColumns, airC: Float64Array, out: Float64Array): void => {
  out.set(steadyW);
  for (const { runningW, duty } of cooling) {
    for (let step = 0; step < out.length; step += 1) out[step] += duty(airC[step]) * runningW[step];
  }
};

const fillCapacity = ({ capacityShare }: BatteryModel, batteryC: Float64Array, out: Float64Array): void => {
  for (let step = 0; step < out.length; step += 1) out[step] = capacityShare(batteryC[step]);
};

/**
 * What stands round the batteries of several set-ups, season after season; batteries that stand alike and loads that are
 * the same are worked out once.
 *
 * @param statedC air where the sky says nothing of it, degC: one number or twelve
 * @returns a reader of one season, which writes to the same room each time: one for each inhabitant, in their order
 */
export const surroundingsOf = (
  source: SkySource,
  steps: BatterySteps,
  inhabitants: readonly Inhabitant[],
  statedC: number | readonly number[],
): ((season: number) => readonly Surroundings[]) => {
  const length = steps.startsMs.length * steps.perDay;
  const column = () => new Float64Array(length);
  const readAir = airUnder(source, steps, statedC);
  const air = column();
  const stands = new Map<
    string,
    { model: BatteryModel; batteryC: Float64Array; capacityShare: Float64Array }
  >();
  const drawn = new Map<LoadColumns, Float64Array>();
  const all = inhabitants.map(({ battery, loads }): Surroundings => {
    const key = [battery.chemistry, battery.stands, keptAtC(battery)].join();
    const stand = stands.get(key) ?? {
      model: batteryModel(battery),
      batteryC: column(),
      capacityShare: column(),
    };
    stands.set(key, stand);
    const loadW = drawn.get(loads) ?? column();
    drawn.set(loads, loadW);
    return { batteryC: stand.batteryC, capacityShare: stand.capacityShare, loadW };
  });
  return (season) => {
    readAir(season, air);
    for (const { model, batteryC, capacityShare } of stands.values()) {
      if (model.keptAtC === null) batteryTemperature(air, steps.perDay, model.followsAirH, batteryC);
      else batteryC.fill(model.keptAtC);
      fillCapacity(model, batteryC, capacityShare);
    }
    for (const [loads, loadW] of drawn) fillLoads(loads, air, loadW);
    return all;
  };
};
