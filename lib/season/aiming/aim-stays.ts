/**
 * The best way to spend a day on a number of aims: which aim in which part of the day. Exact: every place to change is
 * tried against every other, by a table of (aims so far, end of the last part).
 */

/** One aim held through a part of the day: bins from `from` up to, not including, `to`. */
export interface AimStay {
  /** Index among the aims. */
  readonly aim: number;
  readonly from: number;
  readonly to: number;
}

/** A day spent on one or more aims. */
export interface SplitDay {
  readonly stays: readonly AimStay[];
  readonly energyWh: number;
}

/** Energies that differ by less than this share of each other are the same sum taken in another order. */
const ROUNDING = 1e-9;

/** The best single aim from each edge to each later one, and what it brings. */
interface BestBetween {
  readonly energyWh: Float64Array;
  readonly aim: Uint16Array;
}

const bestBetween = (binWh: readonly Float64Array[], edges: readonly number[]): BestBetween => {
  const count = edges.length;
  const energyWh = new Float64Array(count * count).fill(Number.NEGATIVE_INFINITY);
  const aim = new Uint16Array(count * count);
  const upTo = new Float64Array(count);
  binWh.forEach((wh, index) => {
    let sum = 0;
    let bin = edges[0];
    edges.forEach((edge, place) => {
      for (; bin < edge; bin += 1) sum += wh[bin];
      upTo[place] = sum;
    });
    for (let from = 0; from < count - 1; from += 1) {
      for (let to = from + 1; to < count; to += 1) {
        const energy = upTo[to] - upTo[from];
        if (energy > energyWh[from * count + to]) {
          energyWh[from * count + to] = energy;
          aim[from * count + to] = index;
        }
      }
    }
  });
  return { energyWh, aim };
};

/**
 * The best day on at most 1, 2, 3 ... aims. Where another aim brings nothing, the day with fewer is given again.
 *
 * @param binWh for each aim, what it brings in each part (bin) of the day, Wh
 * @param mostAims aims a day to go up to, at least 1
 * @param mayChange whether the aim may be changed at an edge: edge n lies before bin n
 * @returns days on at most 1, 2 ... `mostAims` aims, each at least as good as the one before
 * @throws RangeError without an aim, or with less than one a day
 */
export const bestSplitDays = (
  binWh: readonly Float64Array[],
  mostAims: number,
  mayChange: (edge: number) => boolean,
): readonly SplitDay[] => {
  if (binWh.length === 0 || !(mostAims >= 1)) {
    throw new RangeError(
      `bestSplitDays: expected aims and at least 1 a day, received ${binWh.length} and ${mostAims}`,
    );
  }
  const bins = binWh[0].length;
  const inner = Array.from({ length: bins - 1 }, (_, bin) => bin + 1).filter(mayChange);
  const edges = [0, ...inner, bins];
  const count = edges.length;
  const { energyWh, aim } = bestBetween(binWh, edges);

  const days: SplitDay[] = [];
  let before = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
  before[0] = 0;
  const cameFrom: Uint16Array[] = [];
  for (let aims = 1; aims <= mostAims; aims += 1) {
    const total = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
    const origin = new Uint16Array(count);
    for (let to = 1; to < count; to += 1) {
      for (let from = 0; from < to; from += 1) {
        const energy = before[from] + energyWh[from * count + to];
        if (energy > total[to]) {
          total[to] = energy;
          origin[to] = from;
        }
      }
    }
    cameFrom.push(origin);
    before = total;
    const fewer = days.at(-1);
    const energy = total[count - 1];
    days.push(
      fewer !== undefined && !(energy > fewer.energyWh * (1 + ROUNDING))
        ? fewer
        : { stays: traced(cameFrom, edges, aim), energyWh: energy },
    );
  }
  return days;
};

/** Walks back through the table from the end of the day. */
const traced = (
  cameFrom: readonly Uint16Array[],
  edges: readonly number[],
  aim: Uint16Array,
): readonly AimStay[] => {
  const stays: AimStay[] = [];
  let to = edges.length - 1;
  for (let round = cameFrom.length - 1; round >= 0; round -= 1) {
    const from = cameFrom[round][to];
    stays.unshift({ aim: aim[from * edges.length + to], from: edges[from], to: edges[to] });
    to = from;
  }
  return stays;
};
