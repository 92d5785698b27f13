/**
 * From twelve monthly means to a value for each date: a smooth curve through the year that keeps every month's mean.
 */

/** One day of the calendar, for the curve's arithmetic. */
export interface CalendarDay {
  /** 1..12 */
  readonly month: number;
  /** How far into its month the middle of the day is, 0..1. */
  readonly into: number;
}

/** Days of each month of a common year, January first. */
export const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** The 365 days of a common year, in order. */
export const COMMON_YEAR: readonly CalendarDay[] = MONTH_DAYS.flatMap((count, index) =>
  Array.from({ length: count }, (_, date) => ({ month: index + 1, into: (date + 0.5) / count })),
);

/** Index (0..364) of a civil date in the common year; 29 February stands with the 28th. */
export const calendarIndex = (isoDate: string): number => {
  const month = Number(isoDate.slice(5, 7));
  const date = Number(isoDate.slice(8, 10));
  let index = Math.min(date, MONTH_DAYS[month - 1] ?? 31) - 1;
  for (const count of MONTH_DAYS.slice(0, month - 1)) index += count;
  return index;
};

/** Quadratic B-spline: a day leans on its own month's knot and those before and after. Smooth, and never overshoots its knots. */
const valueAt = (knots: Float64Array, { month, into }: CalendarDay): number =>
  knots[(month + 10) % 12] * 0.5 * (1 - into) ** 2 +
  knots[month - 1] * (0.5 + into - into * into) +
  knots[month % 12] * 0.5 * into * into;

/** Rounds of correction; each takes away at least a third of what is left. */
const ROUNDS = 80;

/** Weighted mean of each month; NaN where all weights are 0. */
const monthMeans = (values: Float64Array, weights: Float64Array): Float64Array => {
  const sums = new Float64Array(12);
  const totals = new Float64Array(12);
  for (const [day, { month }] of COMMON_YEAR.entries()) {
    sums[month - 1] += values[day] * weights[day];
    totals[month - 1] += weights[day];
  }
  return sums.map((sum, month) => sum / totals[month]);
};

const EVEN = new Float64Array(COMMON_YEAR.length).fill(1);

/**
 * A value for each day of a common year, smooth across the months and across the new year, whose weighted mean over each
 * month is the given one. A month without weight takes what its neighbours lead to.
 *
 * A curve of quadratic B-splines with a knot a month; the knots are moved until the means fit (a fixed-point
 * iteration, as in the mean-preserving interpolations of climatology).
 *
 * @param means twelve, January first
 * @param weights of each of the 365 days, 0 or more; even when left out
 * @example smoothYear(new Array(12).fill(5))[100] // 5
 */
export const smoothYear = (means: readonly number[], weights: Float64Array = EVEN): Float64Array => {
  const weighed = new Uint8Array(12);
  for (const [day, { month }] of COMMON_YEAR.entries()) if (weights[day] > 0) weighed[month - 1] = 1;
  const usual =
    means.reduce((sum, mean, month) => sum + (weighed[month] ? mean : 0), 0) /
    weighed.reduce((a, b) => a + b, 0);
  const knots = Float64Array.from({ length: 12 }, (_, month) =>
    weighed[month] ? (means[month] ?? Number.NaN) : usual,
  );
  const values = new Float64Array(COMMON_YEAR.length);
  for (let round = 0; round <= ROUNDS; round++) {
    for (const [day, calendarDay] of COMMON_YEAR.entries()) values[day] = valueAt(knots, calendarDay);
    if (round === ROUNDS) break;
    const found = monthMeans(values, weights);
    for (let month = 0; month < 12; month++) {
      knots[month] = weighed[month]
        ? knots[month] + (means[month] ?? Number.NaN) - found[month]
        : 0.5 * (knots[(month + 11) % 12] + knots[(month + 1) % 12]);
    }
  }
  return values;
};

/** Halvings of the interval in which a month's shift is sought; leaves 1e-15 of it. */
const HALVINGS = 50;

/**
 * Brings each day between its bounds and shifts the rest of the month until its weighted mean is again the given one.
 * Where the bounds leave no room for that, the days stand at the bound.
 *
 * @param values changed in place
 */
export const holdMeansWithin = (
  values: Float64Array,
  means: readonly number[],
  weights: Float64Array,
  least: Float64Array,
  most: Float64Array,
): void => {
  for (let month = 1; month <= 12; month++) {
    const days = COMMON_YEAR.flatMap((day, index) =>
      day.month === month && weights[index] > 0 ? [index] : [],
    );
    const weight = days.reduce((sum, day) => sum + weights[day], 0);
    const held = (day: number, shift: number): number =>
      Math.min(most[day], Math.max(least[day], values[day] + shift));
    const missing = (shift: number): number =>
      (means[month - 1] ?? Number.NaN) -
      days.reduce((sum, day) => sum + weights[day] * held(day, shift), 0) / weight;
    let [low, high] = [-2, 2];
    for (let halving = 0; halving < HALVINGS; halving++) {
      const middle = 0.5 * (low + high);
      if (missing(middle) > 0) low = middle;
      else high = middle;
    }
    for (const day of days) values[day] = held(day, 0.5 * (low + high));
  }
};
