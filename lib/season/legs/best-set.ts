/**
 * The best few of many columns, exactly. A set of settings brings on each day what the best of them brings; a score
 * of the season's days says which set is best. Branch and bound: nothing is tried that could not beat what is known.
 */

/** Days sorted into groups; a set scores the lowest of the groups' mean days. One group is the whole season. */
export interface DayGroups {
  /** Group of each day, 0 to `count` - 1. Every group holds at least one day. */
  readonly groupOfDay: Uint8Array;
  readonly count: number;
}

/** One set: which columns, lowest index first, and its score (mean Wh a day of its poorest group). */
export interface BestSet {
  readonly indices: readonly number[];
  readonly scoreWh: number;
}

/** What a season without a choice brings: the days' base, one column. */
type Days = Float64Array;

const groupSizes = ({ groupOfDay, count }: DayGroups): Float64Array => {
  const sizes = new Float64Array(count);
  for (const group of groupOfDay) sizes[group] += 1;
  return sizes;
};

/** Mean day of the poorest group. */
export const poorestMean = (dayWh: Days, groups: DayGroups, sizes = groupSizes(groups)): number => {
  const sums = new Float64Array(groups.count);
  for (let day = 0; day < dayWh.length; day += 1) sums[groups.groupOfDay[day]] += dayWh[day];
  return sums.reduce((least, sum, group) => Math.min(least, sum / sizes[group]), Number.POSITIVE_INFINITY);
};

/** What a set scores beside a base. */
export const scoreOf = (
  base: Days,
  columns: readonly Days[],
  indices: readonly number[],
  groups: DayGroups,
): number =>
  poorestMean(
    indices.reduce((held, index) => largerOf(held, columns[index]), base),
    groups,
  );

/** Two sets this near are alike: rounding must not choose the longer list of legs. */
const ALIKE = 1e-12;

/**
 * The best set of at most `most` columns beside a base that is there anyway.
 *
 * Bounds, both exact upper limits: what is held so far with every later column thrown in; and, since a further
 * column gains less the more are held (the score's sums are submodular), what is held with the columns' single
 * gains added up.
 *
 * @param base Wh of each day without any of the columns (lying flat, legs already owned)
 * @param columns Wh of each day for each candidate
 * @param start a set that is known to do well: only better ones are looked for
 * @param ceilingWh a score that no set can pass: one that reaches it ends the search
 * @returns the best set; of equals the one found first
 * @throws RangeError when lengths differ or `most` is below 0
 */
export const bestSet = (
  base: Days,
  columns: readonly Days[],
  most: number,
  groups: DayGroups,
  start: readonly number[] = [],
  ceilingWh = Number.POSITIVE_INFINITY,
): BestSet => {
  if (most < 0) throw new RangeError(`bestSet: expected 0 or more columns, received ${most}`);
  const days = base.length;
  const wrong = columns.find(({ length }) => length !== days);
  if (wrong) throw new RangeError(`bestSet: expected columns of ${days} days, received ${wrong.length}`);
  const search = new Search(base, columns, groups, start, ceilingWh);
  return search.best(most);
};

class Search {
  private readonly columns: readonly Days[];
  private readonly groups: DayGroups;
  private readonly sizes: Float64Array;
  /** The best of column i and all after it, day by day. */
  private readonly restOf: readonly Days[];
  private readonly base: Days;
  private readonly enoughWh: number;
  private found: BestSet;

  constructor(
    base: Days,
    columns: readonly Days[],
    groups: DayGroups,
    start: readonly number[],
    ceilingWh: number,
  ) {
    this.base = base;
    this.columns = columns;
    this.groups = groups;
    this.sizes = groupSizes(groups);
    this.restOf = suffixMaxima(columns, base.length);
    this.enoughWh = ceilingWh * (1 - ALIKE);
    this.found = { indices: start, scoreWh: scoreOf(base, columns, start, groups) };
  }

  best(most: number): BestSet {
    const left = Math.min(most, this.columns.length);
    if (left > 0) this.descend(this.base, [], 0, left);
    return this.found;
  }

  /** Tries every column from `from` on beside what is `held`, as long as it may lead to something better. */
  private descend(held: Days, indices: readonly number[], from: number, left: number): void {
    const { columns, groups, sizes } = this;
    const bounds = this.boundsOf(held, from, left);
    // Most promising first: a good set found early spares most of the rest.
    const order = Array.from({ length: columns.length - from }, (_, step) => from + step).sort(
      (a, b) => bounds[b - from] - bounds[a - from] || a - b,
    );
    for (const index of order) {
      const { scoreWh: best } = this.found;
      if (best >= this.enoughWh || bounds[index - from] <= best * (1 + ALIKE)) return;
      const next = largerOf(held, columns[index]);
      const scoreWh = poorestMean(next, groups, sizes);
      if (scoreWh > this.found.scoreWh * (1 + ALIKE)) {
        this.found = { indices: [...indices, index], scoreWh };
      }
      if (left > 1 && index + 1 < columns.length) {
        this.descend(next, [...indices, index], index + 1, left - 1);
      }
    }
  }

  /** For each column from `from` on: no set that goes on with it, and then only with later ones, scores more. */
  private boundsOf(held: Days, from: number, left: number): Float64Array {
    const { columns, groups, sizes, restOf } = this;
    const { groupOfDay, count } = groups;
    const bounds = new Float64Array(columns.length - from);
    const heldSums = new Float64Array(count);
    for (let day = 0; day < held.length; day += 1) heldSums[groupOfDay[day]] += held[day];
    /** The largest single gains of later columns in each group, `left - 1` of them, largest first. */
    const later = Array.from({ length: count }, () => new Float64Array(left - 1));
    const gains = new Float64Array(count);
    const withAll = new Float64Array(count);
    for (let index = columns.length - 1; index >= from; index -= 1) {
      const column = columns[index];
      const rest = restOf[index];
      gains.fill(0);
      withAll.fill(0);
      for (let day = 0; day < held.length; day += 1) {
        const group = groupOfDay[day];
        const now = held[day];
        if (column[day] > now) gains[group] += column[day] - now;
        if (rest[day] > now) withAll[group] += rest[day] - now;
      }
      let bound = Number.POSITIVE_INFINITY;
      for (let group = 0; group < count; group += 1) {
        let addedUp = gains[group];
        for (const gain of later[group]) addedUp += gain;
        bound = Math.min(bound, (heldSums[group] + Math.min(addedUp, withAll[group])) / sizes[group]);
        keepLargest(later[group], gains[group]);
      }
      // Sums taken in another order than the score's may fall a hair short of it.
      bounds[index - from] = bound * (1 + 4 * ALIKE);
    }
    return bounds;
  }
}

const largerOf = (a: Days, b: Days): Days => {
  const larger = new Float64Array(a.length);
  for (let day = 0; day < a.length; day += 1) larger[day] = Math.max(a[day], b[day]);
  return larger;
};

const suffixMaxima = (columns: readonly Days[], days: number): readonly Days[] => {
  const suffixes: Days[] = new Array(columns.length);
  let rest: Days = new Float64Array(days);
  for (let index = columns.length - 1; index >= 0; index -= 1) {
    rest = largerOf(rest, columns[index]);
    suffixes[index] = rest;
  }
  return suffixes;
};

/** Puts a value into a short list kept largest first, dropping the smallest. */
const keepLargest = (list: Float64Array, value: number): void => {
  let place = list.length - 1;
  if (place < 0 || value <= list[place]) return;
  for (; place > 0 && list[place - 1] < value; place -= 1) list[place] = list[place - 1];
  list[place] = value;
};
