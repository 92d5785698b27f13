/**
 * The intervals of a file laid over the rows of a season: how much of each interval's daylight each row holds.
 *
 * Rows are counted by the sun, intervals by the clock, so their edges do not meet. Every row hands its sunlit length to
 * the intervals it lies across; an interval's energy is later spread over exactly those rows. So it is kept whole for any
 * step and any interval, and none of it falls where the sun is down.
 */

import type { SunColumns } from "../../../sun/columns.ts";
import { HOUR_MS, MINUTE_MS } from "../../../units/time.ts";
import type { SkyColumns } from "../../columns.ts";

import type { LitIntervals } from "./split.ts";

const HALF_HOUR_MS = HOUR_MS / 2;

/** Where the intervals of a season lie: slot `i` runs from `startMs + i x intervalMs` (season's clock, UTC). */
export interface SlotSpan {
  readonly startMs: number;
  readonly intervalMs: number;
  readonly length: number;
}

/** The slots of a season with the sun in them; means are over the lit part. `global` is left for the file to fill. */
export interface SeasonSlots extends SlotSpan, LitIntervals {
  /** Milliseconds of each slot that rows lie across. */
  readonly litMs: Float64Array;
  /** Milliseconds of each slot inside the season; less than the interval only at its first and last midnight. */
  readonly insideMs: Float64Array;
}

/** The slots a season's rows lie in, for intervals that start at `phaseMs` and every `intervalMinutes` before and after. */
export const slotSpan = (sun: SunColumns, phaseMs: number, intervalMinutes: number): SlotSpan => {
  const intervalMs = intervalMinutes * MINUTE_MS;
  if (sun.length === 0) return { startMs: phaseMs, intervalMs, length: 0 };
  const last = sun.length - 1;
  const first = Math.floor((sun.timeMs[0] - sun.hours[0] * HALF_HOUR_MS - phaseMs) / intervalMs);
  const end = Math.ceil((sun.timeMs[last] + sun.hours[last] * HALF_HOUR_MS - phaseMs) / intervalMs);
  return { startMs: phaseMs + first * intervalMs, intervalMs, length: end - first };
};

/**
 * Calls `visit` for every row and slot that share time, row by row: how many milliseconds they share.
 */
export const eachOverlap = (
  sun: SunColumns,
  { startMs, intervalMs }: SlotSpan,
  visit: (row: number, slot: number, sharedMs: number) => void,
): void => {
  const { timeMs, hours, length } = sun;
  for (let row = 0; row < length; row += 1) {
    const halfMs = hours[row] * HALF_HOUR_MS;
    const to = timeMs[row] + halfMs - startMs;
    let from = timeMs[row] - halfMs - startMs;
    for (let slot = Math.floor(from / intervalMs); from < to; slot += 1) {
      const edge = Math.min(to, (slot + 1) * intervalMs);
      visit(row, slot, edge - from);
      from = edge;
    }
  }
};

/**
 * Where a season starts and ends in midnight sun, ms: the light before and after belongs to days that are not asked for.
 * Infinite where its first and last midnight are dark, since then no light is cut.
 */
const midnightEnds = ({ days, timeMs, hours, stepMinutes }: SunColumns): readonly [number, number] => {
  const [firstDay, lastDay, last] = [days[0], days[days.length - 1], timeMs.length - 1];
  const stepMs = stepMinutes * MINUTE_MS;
  const from = timeMs[0] - hours[0] * HALF_HOUR_MS;
  const to = timeMs[last] + hours[last] * HALF_HOUR_MS;
  return [
    from - firstDay.startMs < stepMs ? from : Number.NEGATIVE_INFINITY,
    2 * lastDay.noonMs - lastDay.startMs - to < stepMs ? to : Number.POSITIVE_INFINITY,
  ];
};

/** Sums up the sun in every slot of a season. */
export const seasonSlots = (sun: SunColumns, clear: SkyColumns, span: SlotSpan): SeasonSlots => {
  const { startMs, intervalMs, length } = span;
  const column = () => new Float64Array(length);
  const slots: SeasonSlots = {
    ...span,
    global: column(),
    above: column(),
    clear: column(),
    sine: column(),
    solarHour: column(),
    litMs: column(),
    insideMs: column().fill(intervalMs),
    day: new Int32Array(length).fill(-1),
  };
  const { above, clear: clearGlobal, sine, solarHour, litMs, insideMs, day } = slots;
  const { up, days } = sun;
  eachOverlap(sun, span, (row, slot, sharedMs) => {
    litMs[slot] += sharedMs;
    above[slot] += sharedMs * clear.extraterrestrial[row] * up[row];
    clearGlobal[slot] += sharedMs * clear.global[row];
    sine[slot] += sharedMs * up[row];
    if (day[slot] < 0) day[slot] = sun.day[row];
  });
  const [seasonStart, seasonEnd] = midnightEnds(sun);
  for (let slot = 0; slot < length; slot += 1) {
    const from = startMs + slot * intervalMs;
    const inside = Math.min(from + intervalMs, seasonEnd) - Math.max(from, seasonStart);
    insideMs[slot] = Math.max(inside, litMs[slot]);
    if (litMs[slot] === 0) continue;
    above[slot] /= litMs[slot];
    clearGlobal[slot] /= litMs[slot];
    sine[slot] /= litMs[slot];
    const noonMs = days[day[slot]]?.noonMs ?? Number.NaN;
    solarHour[slot] = 12 + (from + intervalMs / 2 - noonMs) / HOUR_MS;
  }
  return slots;
};
