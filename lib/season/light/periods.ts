import type { SeasonDay } from "../../sun/columns.ts";
import type { DayStretch } from "./day-sums.ts";

/** A stretch of a season that figures are given for: the whole of it, or one calendar month. */
export interface Period extends DayStretch {
  /** `season`, or year and month (`2027-06`). */
  readonly name: string;
}

/** The whole season first, then every calendar month it touches, in order. */
export const periodsOf = (days: readonly SeasonDay[]): readonly Period[] => {
  const months: Period[] = [];
  days.forEach(({ date }, day) => {
    const name = date.slice(0, 7);
    const last = months.at(-1);
    if (last?.name === name) months[months.length - 1] = { ...last, end: day + 1 };
    else months.push({ name, first: day, end: day + 1 });
  });
  return [{ name: "season", first: 0, end: days.length }, ...months];
};
