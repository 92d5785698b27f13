/** What the library's checks came to, as their notebook shows it: numbers of ours beside numbers from outside. */
import type { SkyToPlane } from "../../../lib/plan/sky.ts";
import type { Headline } from "../../../lib/report/words/headline.ts";

/** One number of ours beside one from outside, how far they are apart, and how far they may be. */
export type CheckedCase = readonly [
  id: string,
  ours: number,
  theirs: number,
  difference: number,
  allowed: number,
];

/** Cases of one quantity against one source. */
export interface CheckedQuantity {
  readonly quantity: string;
  readonly reference: string;
  /** Unit of difference and allowance. */
  readonly unit: string;
  /** Why so much is allowed. */
  readonly cause: string;
  readonly meanDifference: number;
  readonly greatestDifference: number;
  readonly cases: readonly CheckedCase[];
}

/** What was checked of one room of the library. */
export interface CheckedRoom {
  readonly room: string;
  readonly comparisons: readonly CheckedQuantity[];
}

/** Error of the daily sums on one plane by one sky-to-plane model, per cent of the mean measured day. */
export interface ModelError {
  readonly model: SkyToPlane;
  readonly days: number;
  readonly biasPct: number;
  readonly rmsePct: number;
}

/** A tilted sensor: what it read each day, and what the default model makes of the light on the level. */
export interface MeasuredPlane {
  readonly tiltDeg: number;
  readonly bearingDeg: number;
  readonly errors: readonly ModelError[];
  readonly days: readonly (readonly [date: string, computedWhM2: number, measuredWhM2: number])[];
}

/** The tilted sensors of a station at one tilt. */
export interface MeasuredStation {
  readonly station: string;
  /** What the computation was given. */
  readonly from: string;
  readonly planes: readonly MeasuredPlane[];
}

/** Everything the checks' notebook shows. */
export interface Checks {
  readonly sections: readonly CheckedRoom[];
  readonly stations: readonly MeasuredStation[];
}

/** Share of what is allowed that the worst case of a comparison uses, 0 to 1; above 1 it fails. */
export const shareUsed = ({ cases }: CheckedQuantity): number =>
  cases.reduce(
    (most, [, , , difference, allowed]) =>
      difference === 0 ? most : Math.max(most, Math.abs(difference) / allowed),
    0,
  );

/** How many numbers were compared, and whether all of them are as near as they must be. */
export const checksHeadline = ({ sections }: Checks): Headline => {
  const comparisons = sections.flatMap((section) => section.comparisons);
  const cases = comparisons.reduce((sum, each) => sum + each.cases.length, 0);
  const failed = comparisons.filter((each) => shareUsed(each) > 1).length;
  return [
    { figure: cases.toLocaleString("en") },
    " numbers of ours stand beside published tables, worked examples, open measurements and independent programs, in ",
    { figure: `${comparisons.length} comparisons` },
    failed === 0 ? "; all are as near as their source lets them be." : "; ",
    ...(failed === 0
      ? []
      : [{ figure: `${failed} ${failed === 1 ? "is" : "are"} not as near as they must be` }, "."]),
  ];
};
