/**
 * Typical years are put together from months of different years, and some files keep those years in their stamps.
 * Read as they stand, such a file is a dozen months strewn over decades; here it becomes one year.
 */

import { DAY_MS } from "../../../units/time.ts";
import type { WeatherTable } from "./table.ts";

/** Label years: an ordinary one, and one with 29 February for files that have it. */
const LABEL_YEAR = 2001;
const LABEL_LEAP_YEAR = 2000;

/** From the end of one month to the same place in another year is at least this far, either way. */
const JUMP_MS = 300 * DAY_MS;

/** Twelve months, or thirteen pieces where the zone cuts one in two, have at most this many seams. */
const MOST_JUMPS = 13;

/** The same month, day and time in another year. */
const inYear = (ms: number, year: number): number => {
  const date = new Date(ms);
  return ms - Date.UTC(date.getUTCFullYear(), 0, 1) + Date.UTC(year, 0, 1) + leapDayBetween(date, year);
};

/** Days after February lie a day later in a leap year: what to add when the two years differ in that. */
const leapDayBetween = (date: Date, year: number): number => {
  if (date.getUTCMonth() < 2) return 0;
  const leap = (each: number) => (new Date(Date.UTC(each, 1, 29)).getUTCMonth() === 1 ? 1 : 0);
  return (leap(year) - leap(date.getUTCFullYear())) * DAY_MS;
};

/**
 * A table whose months come from different years, relabelled as one year; `null` when it is nothing of the kind.
 * It is one when its stamps jump by whole years at most thirteen times and, with one label year, run on without a seam.
 */
export const asTypicalYear = (table: WeatherTable): WeatherTable | null => {
  const { stamp, length } = table;
  const stepMs = stamp[1] - stamp[0];
  let jumps = 0;
  for (let i = 1; i < length; i += 1) {
    if (Math.abs(stamp[i] - stamp[i - 1]) > JUMP_MS) jumps += 1;
  }
  if (jumps === 0 || jumps > MOST_JUMPS || !(stepMs > 0)) return null;
  const hasLeapDay = stamp.some((ms) => {
    const date = new Date(ms);
    return date.getUTCMonth() === 1 && date.getUTCDate() === 29;
  });
  let year = hasLeapDay ? LABEL_LEAP_YEAR : LABEL_YEAR;
  const labelled = new Float64Array(length);
  for (let i = 0; i < length; i += 1) {
    labelled[i] = inYear(stamp[i], year);
    // The last hours of a local year lie in the next year by UTC.
    if (i > 0 && labelled[i] < labelled[i - 1]) {
      year += 1;
      labelled[i] = inYear(stamp[i], year);
    }
    // NaN too: a stamp that can't be read is for the ordinary complaints.
    if (i > 0 && labelled[i] - labelled[i - 1] !== stepMs) return null;
  }
  return { ...table, stamp: labelled };
};
