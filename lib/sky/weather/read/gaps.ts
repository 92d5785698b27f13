/**
 * Holes in the global light: short ones are filled with the clearness of their neighbours, long ones are refused.
 */
import { isoMinute } from "../../../units/dates.ts";
import type { Problem } from "../../../units/problem.ts";
import { MINUTE_MS } from "../../../units/time.ts";
import type { WeatherGrid } from "./grid.ts";
import type { IntervalSun } from "./interval-sun.ts";

/** Longest hole, counted in time with the sun up, that is filled; common practice, no source. */
export const LONGEST_GAP_HOURS = 3;

/** Sun so low that a clearness taken there means nothing, W/m2 above the air on the horizontal. */
const LOW_SUN = 50;

/** Clearness next to a hole: the nearest interval on one side with a fair sun, within 3 hours. */
const clearnessBeside = (
  global: Float64Array,
  above: Float64Array,
  from: number,
  step: 1 | -1,
  reach: number,
): number => {
  for (let n = 0, i = from; n < reach && i >= 0 && i < global.length; n += 1, i += step) {
    const sun = above[i];
    if (sun >= LOW_SUN && !Number.isNaN(global[i])) return global[i] / sun;
  }
  return Number.NaN;
};

/**
 * Fills short holes of the grid's global light in place: at night with zero, by day with the clearness running straight
 * from one side to the other. Long ones are complaints.
 *
 * @returns intervals filled by day or night, and the complaints
 */
export const fillGaps = (
  grid: WeatherGrid,
  sun: IntervalSun,
  file: string,
): { readonly filled: number; readonly problems: readonly Problem[] } => {
  const global = grid.columns.get("global");
  if (global === undefined) return { filled: 0, problems: [] };
  const hours = grid.intervalMinutes / 60;
  const reach = Math.ceil(LONGEST_GAP_HOURS / hours);
  const timeOf = (i: number): string => isoMinute(grid.startMs + i * grid.intervalMinutes * MINUTE_MS);
  const problems: Problem[] = [];
  let filled = 0;
  let i = 0;
  while (i < grid.length) {
    if (!Number.isNaN(global[i])) {
      i += 1;
      continue;
    }
    const first = i;
    let litHours = 0;
    while (i < grid.length && Number.isNaN(global[i])) {
      litHours += sun.lit[i] * hours;
      i += 1;
    }
    const before = clearnessBeside(global, sun.above, first - 1, -1, reach);
    const after = clearnessBeside(global, sun.above, i, 1, reach);
    if (litHours > LONGEST_GAP_HOURS) {
      const rows = first > 0 && i < grid.length ? ` rows ${grid.row[first - 1]}-${grid.row[i]}` : "";
      problems.push({
        path: `${file}${rows} ghi`,
        value: `missing from ${timeOf(first)} to ${timeOf(i)}`,
        allowed: `must have no hole of more than ${LONGEST_GAP_HOURS} h of daylight`,
        hint: "take another year or station, or put its hours in for that time",
      });
      continue;
    }
    const left = Number.isNaN(before) ? after : before;
    const right = Number.isNaN(after) ? before : after;
    for (let at = first; at < i; at += 1) {
      const share = (at - first + 1) / (i - first + 1);
      const clearness = left + (right - left) * share;
      // A hole so near to the night that no clearness stands beside it hides next to no light.
      global[at] = Number.isNaN(clearness) ? 0 : clearness * sun.above[at];
      filled += 1;
    }
  }
  return { filled, problems };
};
