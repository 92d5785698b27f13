/** The spread of a day's harvest between skies: one value a day, Wh. Nine days in ten lie above p10, one above p90. */
export interface DayBand {
  readonly p10Wh: Float64Array;
  readonly p50Wh: Float64Array;
  readonly p90Wh: Float64Array;
}

/** Skies or seasons below which a p10 would only repeat the worst one. */
export const FEWEST_FOR_A_BAND = 5;

/** The weighted mean over skies of each day's harvest. */
export const meanOfSkies = (
  underEachSky: readonly Float64Array[],
  weights: readonly number[],
): Float64Array => {
  const mean = new Float64Array(underEachSky[0]?.length ?? 0);
  underEachSky.forEach((dayWh, sky) => {
    for (let day = 0; day < mean.length; day += 1) mean[day] += weights[sky] * dayWh[day];
  });
  return mean;
};

/**
 * The value below which a share of the weight lies. Each value stands at the middle of its own weight, with straight
 * lines between (Hazen's plotting position, which has no bias at the median); beyond the ends, the end value.
 *
 * @param order indices of `values`, smallest value first
 */
const weightedQuantile = (
  values: Float64Array,
  weights: readonly number[],
  order: readonly number[],
  share: number,
): number => {
  let below = 0;
  let lastAt = 0;
  let lastValue = values[order[0]];
  for (const index of order) {
    const at = below + weights[index] / 2;
    if (at >= share) {
      return lastValue + ((share - lastAt) / (at - lastAt)) * (values[index] - lastValue);
    }
    below += weights[index];
    lastAt = at;
    lastValue = values[index];
  }
  return lastValue;
};

/** p10, p50 and p90 of each day over skies, or `null` when there are fewer than five. */
export const bandOfSkies = (
  underEachSky: readonly Float64Array[],
  weights: readonly number[],
): DayBand | null => {
  if (underEachSky.length < FEWEST_FOR_A_BAND) return null;
  const days = underEachSky[0].length;
  const band = {
    p10Wh: new Float64Array(days),
    p50Wh: new Float64Array(days),
    p90Wh: new Float64Array(days),
  };
  const values = new Float64Array(underEachSky.length);
  const order = underEachSky.map((_, sky) => sky);
  for (let day = 0; day < days; day += 1) {
    underEachSky.forEach((dayWh, sky) => {
      values[sky] = dayWh[day];
    });
    order.sort((a, b) => values[a] - values[b]);
    band.p10Wh[day] = weightedQuantile(values, weights, order, 0.1);
    band.p50Wh[day] = weightedQuantile(values, weights, order, 0.5);
    band.p90Wh[day] = weightedQuantile(values, weights, order, 0.9);
  }
  return band;
};
