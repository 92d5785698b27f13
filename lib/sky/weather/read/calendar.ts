/**
 * Which stretch of a file stands for which stretch of a season. The same year where the file has it; else the same
 * month, day and hour (UTC) of another year, as typical years are meant. 29 February is read from the 28th where the
 * file's year has none.
 */
import { DAY_MS } from "../../../units/time.ts";

/** A season day and hour in the file: how far the file's clock is from the season's, ms; NaN where the file has neither. */
export type FileShift = (timeMs: number) => number;

const midnightIn = (year: number, month: number, day: number): number => {
  const ms = Date.UTC(year, month, day);
  // 29 February of a common year would be 1 March.
  return new Date(ms).getUTCMonth() === month ? ms : ms - DAY_MS;
};

/**
 * How to shift instants of a season so that they fall into a file that runs from `startMs` to `endMs`.
 *
 * @param yearsOn years from the season's calendar to the file's: the first choice; the nearest other year of the file
 *   that has the instant is taken where that one has not
 */
export const fileShift = (startMs: number, endMs: number, yearsOn: number): FileShift => {
  const firstYear = new Date(startMs).getUTCFullYear();
  const lastYear = new Date(endMs).getUTCFullYear();
  let day = Number.NaN;
  let candidates: readonly number[] = [];
  return (timeMs) => {
    const today = Math.floor(timeMs / DAY_MS);
    if (today !== day) {
      day = today;
      const date = new Date(today * DAY_MS);
      const wanted = date.getUTCFullYear() + yearsOn;
      const years = Array.from({ length: lastYear - firstYear + 1 }, (_, i) => firstYear + i);
      candidates = years
        .sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted))
        .map((year) => midnightIn(year, date.getUTCMonth(), date.getUTCDate()) - today * DAY_MS);
    }
    for (const shift of candidates) {
      const shifted = timeMs + shift;
      if (shifted >= startMs && shifted < endMs) return shift;
    }
    return Number.NaN;
  };
};
