import { between } from "../../../units/interpolation.ts";

/** What became of the holes in a column. */
export interface Bridged {
  /** Values that were filled in. */
  readonly filled: number;
  /** Holes left open because they are too long, or because there is nothing else: first index, and the one after the last. */
  readonly open: readonly (readonly [number, number])[];
}

/**
 * Fills short holes (NaN) of a column in place, along a straight line between the values on either side; a hole at an end
 * takes the value beside it.
 *
 * @param longest length of the longest hole that is filled
 * @example
 * const airC = Float64Array.of(4, Number.NaN, Number.NaN, 10);
 * bridgeHoles(airC, 3).filled // 2
 */
export const bridgeHoles = (values: Float64Array, longest: number): Bridged => {
  const open: (readonly [number, number])[] = [];
  let filled = 0;
  let i = 0;
  while (i < values.length) {
    if (!Number.isNaN(values[i])) {
      i += 1;
      continue;
    }
    const first = i;
    while (i < values.length && Number.isNaN(values[i])) i += 1;
    const before = values[first - 1] ?? values[i] ?? Number.NaN;
    const after = values[i] ?? before;
    if (i - first > longest || Number.isNaN(before)) {
      open.push([first, i]);
      continue;
    }
    for (let at = first; at < i; at += 1) {
      values[at] = between(before, after, (at - first + 1) / (i - first + 1));
    }
    filled += i - first;
  }
  return { filled, open };
};
