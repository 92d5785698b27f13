/** A value on the straight line from `low` (share 0) to `high` (share 1). @example between(4, 10, 0.5) // 7 */
export const between = (low: number, high: number, share: number): number => low + share * (high - low);

/** Where a point falls among rising nodes: the node below, and the share of the way from there to the next. */
export interface Place {
  readonly below: number;
  readonly share: number;
}

/**
 * The place of a point among rising nodes; before the first and beyond the last it is that node's own.
 *
 * @param nodes rising, one at least
 * @returns NaN as the share for a NaN
 * @example placeAmong([0, 10, 30], 15) // { below: 1, share: 0.25 }
 */
export const placeAmong = (nodes: readonly number[], at: number): Place => {
  const last = nodes.length - 1;
  if (at <= nodes[0]) return { below: 0, share: 0 };
  if (at >= nodes[last]) return { below: last, share: 0 };
  let below = 0;
  while (below < last - 1 && nodes[below + 1] <= at) below += 1;
  return { below, share: (at - nodes[below]) / (nodes[below + 1] - nodes[below]) };
};

/** A curve given by points of rising x, joined by straight lines. */
export type Curve = readonly (readonly [x: number, y: number])[];

/**
 * A curve read at a point; before the first point and beyond the last it keeps their values. NaN in, NaN out.
 *
 * @example readCurve([[0, 1], [10, 3]], 5) // 2
 */
export const readCurve = (curve: Curve, at: number): number => {
  if (Number.isNaN(at)) return Number.NaN;
  const above = curve.findIndex(([x]) => x >= at);
  if (above === 0) return curve[0][1];
  if (above === -1) return curve[curve.length - 1][1];
  const [[x0, y0], [x1, y1]] = [curve[above - 1], curve[above]];
  return between(y0, y1, (at - x0) / (x1 - x0));
};
