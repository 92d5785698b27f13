import { Temporal } from "temporal-polyfill";
import type { SeasonDay } from "../../sun/columns.ts";
import { MINUTE_MS } from "../../units/time.ts";
import type { DayStretch } from "../light/day-sums.ts";

/** Solar noon moves by half a minute a day; a jump of more than this is the clock's. */
const CLOCK_JUMP_MINUTES = 10;

/**
 * When solar noon comes on each day, on the clock of the site's zone: minutes after midnight of the day's date.
 *
 * @example
 * const place = { latitudeDeg: 52, longitudeDeg: 5, timeZone: "Europe/Amsterdam" };
 * const { days } = sunColumns(place, { from: "2027-01-01", to: "2027-01-01" });
 * noonClocks(days, place.timeZone)[0] // 763.4, which is 12:43
 */
export const noonClocks = (days: readonly SeasonDay[], timeZone: string): Float64Array =>
  Float64Array.from(days, ({ date, noonMs }) => {
    const noon = Temporal.Instant.fromEpochMilliseconds(noonMs).toZonedDateTimeISO(timeZone);
    return (noonMs + noon.offsetNanoseconds / 1e6 - Date.parse(date)) / MINUTE_MS;
  });

/** The mean over a period's days. */
export const meanClock = (clocks: Float64Array, { first, end }: DayStretch): number =>
  clocks.subarray(first, end).reduce((sum, minutes) => sum + minutes, 0) / (end - first);

/** A clock time for a part of a period: it changes when the clocks do. */
export interface ClockStretch {
  /** Index of the day from which it holds. */
  readonly first: number;
  /** Minutes after midnight, mean over the days of the stretch. */
  readonly minutes: number;
}

/**
 * A time of day, stated from solar noon, on the clock: one stretch, or more where the clocks are put forward or back
 * within the period.
 *
 * @param afterNoon minutes after solar noon, negative before it
 */
export const clockStretches = (
  clocks: Float64Array,
  { first, end }: DayStretch,
  afterNoon: number,
): readonly ClockStretch[] => {
  const starts = [first];
  for (let day = first + 1; day < end; day += 1) {
    if (Math.abs(clocks[day] - clocks[day - 1]) > CLOCK_JUMP_MINUTES) starts.push(day);
  }
  return starts.map((start, index) => {
    const stretch = { first: start, end: starts[index + 1] ?? end };
    return { first: start, minutes: meanClock(clocks, stretch) + afterNoon };
  });
};
