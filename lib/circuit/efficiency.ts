import type { MpptController } from "../plan/circuit.ts";

/** A charger's efficiency against its load, made once: watts in to watts out. */
export interface EfficiencyCurve {
  /** Watts out for watts in. Never falls as more goes in; 0 for 0. */
  readonly outW: (inW: number) => number;
}

/**
 * The efficiency curve of a charger: straight lines between the points stated, level before the first and after the
 * last. Where a falling efficiency would give less out for more in, the output is held level: a charger does not
 * throw away what it already has.
 *
 * @param points Load in % of the rated power, rising, with its efficiency in %.
 * @param ratedW Rated power, W, above 0.
 * @throws RangeError when there is no point or the rated power is not above 0
 * @example efficiencyCurve([{ loadPct: 100, efficiencyPct: 96 }], 200).outW(100) // 96
 */
export const efficiencyCurve = (points: MpptController["efficiency"], ratedW: number): EfficiencyCurve => {
  if (points.length === 0)
    throw new RangeError("efficiencyCurve: expected at least one point, received none");
  if (!(ratedW > 0))
    throw new RangeError(`efficiencyCurve: expected a rated power above 0 W, received ${ratedW}`);
  const inAt = Float64Array.from(points, ({ loadPct }) => (loadPct / 100) * ratedW);
  const shareAt = Float64Array.from(points, ({ efficiencyPct }) => efficiencyPct / 100);
  const last = inAt.length - 1;
  // The most that any lesser load gives out, at each point.
  const bestBefore = new Float64Array(inAt.length);
  const within = (span: number, inW: number): number => {
    const slope = (shareAt[span + 1] - shareAt[span]) / (inAt[span + 1] - inAt[span]);
    const peak = slope < 0 ? (inAt[span] - shareAt[span] / slope) / 2 : Number.POSITIVE_INFINITY;
    const held = Math.max(inAt[span], Math.min(inW, peak));
    return held * (shareAt[span] + slope * (held - inAt[span]));
  };
  bestBefore[0] = inAt[0] * shareAt[0];
  for (let span = 0; span < last; span += 1) {
    bestBefore[span + 1] = Math.max(bestBefore[span], within(span, inAt[span + 1]));
  }
  return {
    outW: (inW) => {
      if (inW <= inAt[0]) return Math.max(0, inW) * shareAt[0];
      if (inW >= inAt[last]) return Math.max(bestBefore[last], inW * shareAt[last]);
      let span = 0;
      while (inW > inAt[span + 1]) span += 1;
      return Math.max(bestBefore[span], within(span, inW));
    },
  };
};
