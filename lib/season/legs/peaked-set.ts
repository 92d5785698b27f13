import { type BestSet, poorestMean } from "./best-set.ts";

/**
 * The best few of many columns where every day is single-peaked over them, as watt-hours over rising tilts mostly
 * are: exact like `bestSet` for a whole season, and as fast as the columns themselves are to make.
 */

/** Wh of each day at one tilt. */
type Days = Float64Array;

/**
 * For each day the column it is best at; `null` unless every day rises to its peak and then falls, so that of any
 * set the best is one of the two columns on either side of the peak.
 */
const peaksOf = (columns: readonly Days[], days: number): Uint16Array | null => {
  const peaks = new Uint16Array(days);
  const last = columns.length - 1;
  for (let day = 0; day < days; day += 1) {
    let peak = 0;
    while (peak < last && columns[peak + 1][day] >= columns[peak][day]) peak += 1;
    for (let index = peak; index < last; index += 1) {
      if (columns[index + 1][day] > columns[index][day]) return null;
    }
    peaks[day] = peak;
  }
  return peaks;
};

/**
 * Best sets of 1, 2 ... `most` columns by season total, beside a base that is there anyway; `null` when some day has
 * more than one peak (then only `bestSet` is exact).
 *
 * A set is a walk up the columns. Between one column and the next lie the days whose peak is there, and they bring the
 * better of the two; so the best walk is found from the worth of each pair, by dynamic programming.
 *
 * @param columns in order of tilt
 * @returns one set for each size that beats the smaller ones; size 0 first
 */
export const bestPeakedSets = (
  base: Days,
  columns: readonly Days[],
  most: number,
): readonly BestSet[] | null => {
  const days = base.length;
  const count = columns.length;
  const peaks = peaksOf(columns, days);
  if (peaks === null) return null;
  const byPeak = Array.from({ length: days }, (_, day) => day).sort((a, b) => peaks[a] - peaks[b]);
  /** How many days peak at or before each column. */
  const daysUpTo = columns.map((_, index) => byPeak.filter((day) => peaks[day] <= index).length);

  const worth = (low: Days, high: Days, from: number, end: number): number => {
    let sum = 0;
    for (let place = from; place < end; place += 1) {
      const day = byPeak[place];
      sum += Math.max(base[day], low[day], high[day]);
    }
    return sum;
  };
  const between = columns.map((low, a) =>
    columns.map((high, b) => (b > a ? worth(low, high, daysUpTo[a], daysUpTo[b]) : 0)),
  );
  const after = columns.map((column, index) => worth(column, column, daysUpTo[index], days));
  /** Best worth of the days up to each column when it is the set's latest, and the columns so far. */
  let totals = columns.map((column, index) => worth(column, column, 0, daysUpTo[index]));
  let chains: readonly (readonly number[])[] = columns.map((_, index) => [index]);

  const season = { groupOfDay: new Uint8Array(days), count: 1 };
  const sets: BestSet[] = [{ indices: [], scoreWh: poorestMean(base, season) }];
  for (let size = 1; size <= Math.min(most, count); size += 1) {
    if (size > 1) {
      const [before, chainsBefore] = [totals, chains];
      const latest = columns.map((_, b) => {
        let best = -1;
        let total = Number.NEGATIVE_INFINITY;
        for (let a = size - 2; a < b; a += 1) {
          const here = before[a] + between[a][b];
          if (here > total) [best, total] = [a, here];
        }
        return { best, total };
      });
      totals = latest.map(({ total }) => total);
      chains = latest.map(({ best }, b) => (best < 0 ? [] : [...chainsBefore[best], b]));
    }
    const ends = totals.map((total, index) => total + after[index]);
    const end = ends.indexOf(Math.max(...ends));
    const scoreWh = ends[end] / days;
    if (scoreWh > sets[sets.length - 1].scoreWh * (1 + 1e-12)) sets.push({ indices: chains[end], scoreWh });
  }
  return sets;
};
