/**
 * One measurement, two readers: a comparison with something published or measured is written once, here, and read by the
 * tests (which fail on it) and by `npm run accuracy` (which prints it).
 */

/** One number of ours beside one from outside. */
export interface Case {
  readonly id: string;
  readonly ours: number;
  readonly theirs: number;
  /** How far apart they are, in the comparison's unit and with its sign. */
  readonly difference: number;
  /** How far apart they may be. */
  readonly tolerance: number;
}

/** A set of cases of one quantity against one source. */
export interface Comparison {
  readonly quantity: string;
  readonly reference: string;
  /** Unit of the differences and tolerances. */
  readonly unit: string;
  /** Why the tolerance is what it is: what the source's rounding or the models' difference leaves. */
  readonly cause: string;
  /**
   * What makes it a check of the code against itself (a table kept as it was printed, a definition): worth failing on, but no
   * outside truth, and counted apart.
   */
  readonly identity?: string;
  /** How many cases there must be: a dropped case fails. */
  readonly count: number;
  readonly cases: () => readonly Case[];
}

/** What a comparison came to. */
export interface Outcome {
  readonly comparison: Comparison;
  readonly cases: readonly Case[];
  readonly meanDifference: number;
  readonly greatestDifference: number;
  readonly leastTolerance: number;
  readonly greatestTolerance: number;
  /** Cases out of tolerance; NaN counts as out. */
  readonly misses: readonly Case[];
}

/** A case whose difference is ours minus theirs. */
export const absolute = (id: string, ours: number, theirs: number, tolerance: number): Case => ({
  id,
  ours,
  theirs,
  difference: ours - theirs,
  tolerance,
});

/** A case whose difference is in per cent of theirs; so is the tolerance. */
export const relative = (id: string, ours: number, theirs: number, tolerancePct: number): Case => ({
  id,
  ours,
  theirs,
  difference: 100 * (ours / theirs - 1),
  tolerance: tolerancePct,
});

/** A case whose ours is itself a difference (a bias, an error), which should be small. */
export const nearZero = (id: string, ours: number, tolerance: number): Case =>
  absolute(id, ours, 0, tolerance);

/** Runs a comparison. */
export const outcomeOf = (comparison: Comparison): Outcome => {
  const cases = comparison.cases();
  const sizes = cases.map(({ difference }) => Math.abs(difference));
  const tolerances = cases.map(({ tolerance }) => tolerance);
  return {
    comparison,
    cases,
    meanDifference: sizes.reduce((sum, size) => sum + size, 0) / sizes.length,
    greatestDifference: Math.max(...sizes),
    leastTolerance: Math.min(...tolerances),
    greatestTolerance: Math.max(...tolerances),
    misses: cases.filter(({ difference, tolerance }) => !(Math.abs(difference) <= tolerance)),
  };
};
