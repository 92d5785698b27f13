import type { SkyColumns } from "../../sky/columns.ts";
import type { SunColumns } from "../../sun/columns.ts";
import { type WholeDays, wholeDays } from "../../sun/whole-days.ts";
import { MINUTE_MS } from "../../units/time.ts";

/** A battery lives through the nights too: every step of every solar day, and which row of the sun columns lights it. */
export interface BatterySteps extends WholeDays {
  readonly hours: number;
  /** Row of the sun columns for each step, day after day; -1 with the sun down. */
  readonly row: Int32Array;
  /** Part of each row's step in which the sun is up, 0 to 1: W x share is the step's mean. */
  readonly litShare: Float64Array;
}

/**
 * Lays the rows of a season out over its whole days. The steps begin where the sun columns' own do, so that each row has
 * one for itself; only where the sun dips below the horizon and is back within a step are there two, and the longer is kept.
 */
export const batterySteps = (sun: SunColumns): BatterySteps => {
  const { days, stepMinutes, timeMs, hours, length } = sun;
  const whole = wholeDays(sun);
  const { startsMs, perDay } = whole;
  const stepHours = stepMinutes / 60;
  const stepMs = stepMinutes * MINUTE_MS;
  const row = new Int32Array(days.length * perDay).fill(-1);
  days.forEach(({ first, end }, day) => {
    for (let at = first; at < end; at += 1) {
      const step = Math.floor((timeMs[at] - startsMs[day]) / stepMs);
      const place = day * perDay + Math.min(perDay - 1, Math.max(0, step));
      if (row[place] < 0 || hours[at] > hours[row[place]]) row[place] = at;
    }
  });
  return {
    ...whole,
    hours: stepHours,
    row,
    litShare: Float64Array.from({ length }, (_, at) => Math.min(1, hours[at] / stepHours)),
  };
};

/**
 * Air of each day, degC: the mean over its sunlit steps, which is when batteries charge. A day without sun takes the
 * air that the plan states for its month.
 *
 * @param statedC One number for the year, or twelve, January first.
 */
export const airOfDays = (
  { days }: SunColumns,
  { airC }: SkyColumns,
  statedC: number | readonly number[],
): Float64Array =>
  Float64Array.from(days, ({ first, end, month }) => {
    if (end === first) return typeof statedC === "number" ? statedC : statedC[month - 1];
    let sum = 0;
    for (let row = first; row < end; row += 1) sum += airC[row];
    return sum / (end - first);
  });
