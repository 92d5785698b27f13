import type { SeasonDay } from "../sun/columns.ts";

/** A stretch of a season that figures are given for: the whole of it, or one calendar month. */
export interface Period {
  /** `season`, or year and month (`2027-06`). */
  readonly name: string;
  /** Indices of its days, from `first` up to, not including, `end`. */
  readonly first: number;
  readonly end: number;
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

/** Mean of a column over a period. */
export const meanOver = (dayWh: Float64Array, { first, end }: Period): number => {
  let sum = 0;
  for (let day = first; day < end; day += 1) sum += dayWh[day];
  return sum / (end - first);
};
