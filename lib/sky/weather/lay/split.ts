/**
 * From what a file says of an interval to beam and diffuse: its own columns where it has them, else a published split.
 */

import type { DiffuseSplit } from "../../../plan/sky.ts";
import { clampedAsin, toDegrees } from "../../../units/angle.ts";
import { engererShare } from "../../diffuse-share/engerer.ts";
import { erbsHourly } from "../../diffuse-share/erbs.ts";
import { reindlShare } from "../../diffuse-share/reindl.ts";
import { ridleyShare } from "../../diffuse-share/ridley.ts";

/** The intervals of a season: what the file says, and where the sun is. Means over the lit part, W/m2. */
export interface LitIntervals {
  readonly length: number;
  readonly global: Float64Array;
  /** Mean extraterrestrial horizontal and clear-sky global irradiance while it is light. */
  readonly above: Float64Array;
  readonly clear: Float64Array;
  /** Mean sine of the sun's altitude while it is light; 0 for an interval without light. */
  readonly sine: Float64Array;
  /** Solar time at the interval's middle, hours. */
  readonly solarHour: Float64Array;
  /** Index of the solar day an interval belongs to. */
  readonly day: Int32Array;
}

/** Diffuse share of the global light of every interval; 1 where there is no sun or no light. */
export type SplitModel = (intervals: LitIntervals, shares: Float64Array) => void;

const clearnessOf = ({ global, above }: LitIntervals, i: number): number =>
  above[i] > 0 ? Math.min(1, Math.max(0, global[i] / above[i])) : 0;

const erbs: SplitModel = (intervals, shares) => {
  for (let i = 0; i < intervals.length; i += 1) shares[i] = erbsHourly(clearnessOf(intervals, i));
};

const engerer: SplitModel = (intervals, shares) => {
  const { length, above, clear, sine, solarHour } = intervals;
  for (let i = 0; i < length; i += 1) {
    shares[i] =
      above[i] > 0
        ? engererShare(
            clearnessOf(intervals, i),
            clear[i] / above[i],
            solarHour[i],
            90 - toDegrees(clampedAsin(sine[i])),
          )
        : 1;
  }
};

const ridley: SplitModel = (intervals, shares) => {
  const { length, global, above, sine, solarHour, day } = intervals;
  for (let first = 0, end = 0; first < length; first = end) {
    let light = 0;
    let sun = 0;
    for (end = first; end < length && day[end] === day[first]; end += 1) {
      light += global[end];
      sun += above[end];
    }
    const dayClearness = sun > 0 ? light / sun : 0;
    for (let i = first; i < end; i += 1) {
      if (!(above[i] > 0)) {
        shares[i] = 1;
        continue;
      }
      const before = i > first && above[i - 1] > 0 ? clearnessOf(intervals, i - 1) : Number.NaN;
      const after = i + 1 < end && above[i + 1] > 0 ? clearnessOf(intervals, i + 1) : Number.NaN;
      const clearness = clearnessOf(intervals, i);
      const neighbours = Number.isNaN(before) ? after : Number.isNaN(after) ? before : (before + after) / 2;
      shares[i] = ridleyShare(
        clearness,
        dayClearness,
        Number.isNaN(neighbours) ? clearness : neighbours,
        solarHour[i],
        toDegrees(clampedAsin(sine[i])),
      );
    }
  }
};

const reindl: SplitModel = (intervals, shares) => {
  for (let i = 0; i < intervals.length; i += 1) {
    shares[i] = reindlShare(clearnessOf(intervals, i), intervals.sine[i]);
  }
};

/** The published splits by name. */
export const SPLITS: Readonly<Record<DiffuseSplit, SplitModel>> = { engerer, erbs, ridley, reindl };
