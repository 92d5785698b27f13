import { PlanError } from "../units/problem.ts";

/** Pieces of one length that are wanted. */
export interface PieceDemand {
  readonly pieceMm: number;
  readonly howMany: number;
}

/** One bar of stock, what is cut from it, and what is left over. mm. */
export interface CutBar {
  readonly stockMm: number;
  readonly piecesMm: readonly number[];
  readonly offcutMm: number;
}

/** Which bars to buy and how to cut them. */
export interface CuttingPlan {
  readonly bars: readonly CutBar[];
  readonly stockMm: number;
  readonly offcutMm: number;
}

/** A pattern of pieces on a bar, as counts by demand. */
type Pattern = readonly number[];

interface Step {
  readonly stockMm: number;
  readonly bars: number;
  readonly stock: number;
  readonly pattern: Pattern;
}

const MOST_STATES = 50_000;

/** Worse than any: what a better one is looked for against. */
const NO_STEP: Step = { stockMm: 0, bars: 0, stock: Number.POSITIVE_INFINITY, pattern: [] };

const refuse = (value: unknown, allowed: string, hint: string): PlanError =>
  new PlanError([{ path: "stand.cutting", value, allowed, hint }]);

/**
 * The least stock that yields all pieces, exactly: least length bought, then fewest bars. Between neighbouring
 * pieces the saw takes one kerf; n pieces fit a bar when their lengths and n - 1 kerfs do.
 *
 * A table over how many pieces of each length are still to cut: the longest one left goes on the next bar, with
 * every choice of company that fits.
 *
 * @param stockMm lengths of bar that can be had
 * @throws PlanError when a piece is longer than every bar, or the pieces are too many to settle exactly
 * @example cutStock([{ pieceMm: 500, howMany: 4 }], [2000], 3).bars.length // 2, since four pieces and three kerfs are 2009 mm
 */
export const cutStock = (
  demands: readonly PieceDemand[],
  stockMm: readonly number[],
  kerfMm: number,
): CuttingPlan => {
  const wanted = demands.filter(({ howMany }) => howMany > 0).sort((a, b) => b.pieceMm - a.pieceMm);
  const lengths = wanted.map(({ pieceMm }) => pieceMm);
  const longestBar = Math.max(...stockMm);
  const [longest = 0] = lengths;
  if (longest > longestBar) {
    throw refuse(
      `${longest.toFixed(1)} mm piece`,
      `must be at most the longest stock, ${longestBar} mm`,
      "add a longer stock length",
    );
  }
  const strides = stridesOf(wanted);
  const states = wanted.reduce((product, { howMany }) => product * (howMany + 1), 1);
  if (states > MOST_STATES) {
    throw refuse(`${states} cutting states`, `must be at most ${MOST_STATES}`, "cut fewer lengths in one go");
  }
  const best = new Map<number, Step>();
  const key = (left: readonly number[]): number =>
    left.reduce((sum, count, i) => sum + count * (strides[i] ?? 0), 0);

  const solve = (left: readonly number[]): { readonly bars: number; readonly stock: number } => {
    const first = left.findIndex((count) => count > 0);
    if (first < 0) return { bars: 0, stock: 0 };
    const known = best.get(key(left));
    if (known) return known;
    let found = NO_STEP;
    for (const bar of stockMm) {
      for (const pattern of patternsWith(first, left, lengths, bar, kerfMm)) {
        const rest = solve(left.map((count, i) => count - (pattern[i] ?? 0)));
        const stock = rest.stock + bar;
        const bars = rest.bars + 1;
        if (stock < found.stock || (stock === found.stock && bars < found.bars)) {
          found = { stockMm: bar, bars, stock, pattern };
        }
      }
    }
    best.set(key(left), found);
    return found;
  };

  let left: readonly number[] = wanted.map(({ howMany }) => howMany);
  solve(left);
  const bars: CutBar[] = [];
  for (let step = best.get(key(left)); step; step = best.get(key(left))) {
    bars.push(barOf(step, lengths, kerfMm));
    const { pattern } = step;
    left = left.map((count, i) => count - (pattern[i] ?? 0));
  }
  const total = (of: (bar: CutBar) => number) => bars.reduce((sum, bar) => sum + of(bar), 0);
  return { bars, stockMm: total((bar) => bar.stockMm), offcutMm: total((bar) => bar.offcutMm) };
};

const stridesOf = (wanted: readonly PieceDemand[]): readonly number[] => {
  let stride = 1;
  return wanted.map(({ howMany }) => {
    const mine = stride;
    stride *= howMany + 1;
    return mine;
  });
};

/** Rounding must not refuse pieces that fill a bar to the last hair. */
const HAIR_MM = 1e-9;

/** Every way to fill a bar that holds at least one of piece `first`. */
const patternsWith = (
  first: number,
  left: readonly number[],
  lengths: readonly number[],
  barMm: number,
  kerfMm: number,
): readonly Pattern[] => {
  const patterns: Pattern[] = [];
  const counts = new Array<number>(left.length).fill(0);
  // Each piece brings a kerf, and the bar is one kerf longer: n pieces then pay for n - 1 cuts.
  const fill = (index: number, roomMm: number): void => {
    if (index === left.length) {
      patterns.push([...counts]);
      return;
    }
    const each = (lengths[index] ?? 0) + kerfMm;
    const most = Math.min(left[index] ?? 0, Math.floor((roomMm + HAIR_MM) / each));
    for (let count = most; count >= (index === first ? 1 : 0); count--) {
      counts[index] = count;
      fill(index + 1, roomMm - count * each);
    }
    counts[index] = 0;
  };
  fill(first, barMm + kerfMm);
  return patterns;
};

const barOf = ({ stockMm, pattern }: Step, lengths: readonly number[], kerfMm: number): CutBar => {
  const piecesMm = pattern.flatMap((count, i) => new Array<number>(count).fill(lengths[i] ?? 0));
  const used = piecesMm.reduce((sum, piece) => sum + piece + kerfMm, 0);
  // The last cut's dust comes off the offcut; there is no cut when the pieces end with the bar.
  return { stockMm, piecesMm, offcutMm: Math.max(0, stockMm - used) };
};
