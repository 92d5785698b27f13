import type { ClockWindow } from "../plan/clock.ts";
import { type Appliance, type Loads, WEEKDAYS, type Weekday } from "../plan/loads.ts";
import { DAY_MINUTES, DAY_MS, MINUTE_MS } from "../units/time.ts";
import { civilDays, windowHours } from "./clock-windows.ts";

/** Whole days cut into equal steps, each day from its own start: solar days, as the sun columns have them. */
export interface DaySteps {
  readonly startsMs: readonly number[];
  readonly stepMinutes: number;
}

/** What is drawn from the battery in each step, W, inverter losses included: day after day. */
export interface LoadColumns {
  readonly length: number;
  /** What does not depend on the weather. */
  readonly steadyW: Float64Array;
  /** Appliances whose running share follows the warmth round them. */
  readonly cooling: readonly CoolingLoad[];
}

/** A fridge or the like: what it draws in each step while it runs, and for what share of the time it runs. */
export interface CoolingLoad {
  readonly runningW: Float64Array;
  /** Share of the time that it runs with that air outdoors, 0 to 1. */
  readonly duty: (outdoorC: number) => number;
}

type Cooling = Extract<Appliance["use"], { readonly kind: "cooling" }>;

/**
 * The share of the time that a cooler runs: heat leaks in as the difference of temperatures, so
 * duty = stated duty x (air - inside) / (stated air - inside), 0 to 1.
 *
 * @param use Duty in % at the air that its maker states, and the temperature kept inside, degC.
 * @param outdoorC Air of the day; a stated room takes its place.
 * @example coolingDuty({ kind: "cooling", dutyPct: 40, statedAtC: 25, insideC: 5 }, 15) // 0.2
 */
export const coolingDuty = (use: Cooling, outdoorC: number): number => {
  const air = use.roomC ?? outdoorC;
  const leak = (air - use.insideC) / (use.statedAtC - use.insideC);
  return Math.min(1, Math.max(0, (use.dutyPct / 100) * leak));
};

const WHOLE_DAY: ClockWindow = { from: "00:00", to: "24:00" };

/** When an appliance may run, and the share of its power that it then draws on average. */
const usesOf = ({ use }: Appliance): readonly { readonly window: ClockWindow; readonly share: number }[] => {
  switch (use.kind) {
    case "at-times":
      return use.times.map((window) => ({ window, share: 1 }));
    case "for-hours":
      return [{ window: use.between, share: Math.min(1, use.hours / windowHours(use.between)) }];
    case "cooling":
      return [{ window: WHOLE_DAY, share: 1 }];
  }
};

/**
 * Watts from the battery while an appliance runs: on the inverter it costs the inverter's loss, and its own draw unless
 * that runs all day anyway.
 */
const batteryWatts = ({ watts, howMany, supply }: Appliance, loads: Loads): number => {
  if (supply === "battery") return watts * howMany;
  const ownW = watts > 0 && loads.inverterOn === "with-its-loads" ? loads.inverterOwnW : 0;
  return (watts * howMany) / (loads.inverterEfficiencyPct / 100) + ownW;
};

/** What an inverter that is left on draws day and night, W; 0 for one that is on with its loads only. */
export const idleInverterW = ({ inverterOn, inverterOwnW }: Loads): number =>
  inverterOn === "all-day" ? inverterOwnW : 0;

/** Adds a steady power between two instants to the steps of the days they touch, by the share of each step covered. */
const addBetween = (
  { startsMs, stepMinutes }: DaySteps,
  [fromMs, toMs]: readonly [number, number],
  watts: number,
  out: Float64Array,
): void => {
  const stepMs = stepMinutes * MINUTE_MS;
  const perDay = DAY_MINUTES / stepMinutes;
  startsMs.forEach((startMs, day) => {
    const from = Math.max(0, (fromMs - startMs) / stepMs);
    const to = Math.min(perDay, (toMs - startMs) / stepMs);
    for (let step = Math.floor(from); step < to; step += 1) {
      out[day * perDay + step] += watts * (Math.min(step + 1, to) - Math.max(step, from));
    }
  });
};

/**
 * Lays a list of appliances out over the steps of a season: clock times are read in the site's zone on each civil date, on
 * the weekdays stated (that of the window's start), and a step that a window covers in part gets that part.
 *
 * The inverter's own draw is counted with each appliance that runs on it, or once, day and night, where it is left on.
 *
 * @param timeZone IANA zone of the site.
 */
export const loadColumns = (loads: Loads, steps: DaySteps, timeZone: string): LoadColumns => {
  const { startsMs, stepMinutes } = steps;
  const length = (startsMs.length * DAY_MINUTES) / stepMinutes;
  const steadyW = new Float64Array(length).fill(idleInverterW(loads));
  const cooling: CoolingLoad[] = [];
  const [firstMs, lastMs] = [startsMs[0] ?? 0, (startsMs.at(-1) ?? 0) + DAY_MS];
  const dates = loads.appliances.length === 0 ? [] : civilDays(firstMs, lastMs, timeZone);
  for (const appliance of loads.appliances) {
    const { use } = appliance;
    const out = use.kind === "cooling" ? new Float64Array(length) : steadyW;
    const watts = batteryWatts(appliance, loads);
    dates.forEach((date, at) => {
      if (!appliance.days.includes(WEEKDAYS[date.dayOfWeek - 1])) return;
      // A date's windows touch no solar day but the three round it.
      const near = Math.max(0, at - 3);
      const nearby = { startsMs: startsMs.slice(near, at + 3), stepMinutes };
      const part = out.subarray((near * DAY_MINUTES) / stepMinutes);
      for (const { window, share } of usesOf(appliance)) {
        addBetween(nearby, date.window(window), watts * share, part);
      }
    });
    if (use.kind === "cooling") {
      cooling.push({ runningW: out, duty: (outdoorC) => coolingDuty(use, outdoorC) });
    }
  }
  return { length, steadyW, cooling };
};

/** Watt-hours that an appliance takes from the battery on a day that it is used on, with that air outdoors. */
export const applianceDayWh = (appliance: Appliance, loads: Loads, outdoorC: number): number => {
  const duty = appliance.use.kind === "cooling" ? coolingDuty(appliance.use, outdoorC) : 1;
  const hours = usesOf(appliance).reduce((sum, { window, share }) => sum + windowHours(window) * share, 0);
  return batteryWatts(appliance, loads) * hours * duty;
};

/** Watt-hours that a list of appliances takes from the battery on a plain day of 24 hours. */
export const dayLoadWh = (loads: Loads, weekday: Weekday, outdoorC: number): number =>
  loads.appliances
    .filter(({ days }) => days.includes(weekday))
    .reduce((sum, appliance) => sum + applianceDayWh(appliance, loads, outdoorC), 24 * idleInverterW(loads));
