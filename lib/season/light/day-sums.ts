/** Sums over columns of day values, Wh. A NaN among them stays: an answer must not hide a hole. */

/** A stretch of days: from `first` up to, not including, `end`. */
export interface DayStretch {
  readonly first: number;
  readonly end: number;
}

/** The sum over a stretch of days. */
export const totalOver = (dayWh: Float64Array, { first, end }: DayStretch): number => {
  let sum = 0;
  for (let day = first; day < end; day += 1) sum += dayWh[day];
  return sum;
};

/** The sum over all days: a season's total, Wh. @example totalWh(Float64Array.of(400, 500)) // 900 */
export const totalWh = (dayWh: Float64Array): number => totalOver(dayWh, { first: 0, end: dayWh.length });

/** The mean over a stretch of days; NaN where it has none. */
export const meanOver = (dayWh: Float64Array, stretch: DayStretch): number =>
  totalOver(dayWh, stretch) / (stretch.end - stretch.first);
