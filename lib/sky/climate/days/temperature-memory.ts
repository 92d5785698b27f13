/**
 * How a day's lowest and highest temperature follow those of the day before, and its light.
 *
 * Richardson 1981 (Water Resour. Res. 17, 182); Richardson & Wright 1984 (WGEN, USDA ARS-8), 31 stations of the USA: standard
 * scores x of (highest, lowest, radiation) follow x = A x(the day before) + B e. Its rows for the temperatures are taken as
 * printed. The light's own scores are drawn before and by another memory, so the share of e that they have in common
 * (from B B', conditional on the light's) goes to the light's fresh part:
 * c = (0.186, -0.139) / sqrt(0.935), and L L' = Q - c c'. Variances come out as 1.00 for any memory of the light from 0.2 to 0.4.
 */
const FROM_YESTERDAY = {
  high: { high: 0.567, low: 0.086, light: -0.002 },
  low: { high: 0.253, low: 0.504, light: -0.05 },
} as const;

const FROM_LIGHT = { high: 0.1922, low: -0.1439 } as const;

const OWN = { high: 0.757, lowWithHigh: 0.375, low: 0.5933 } as const;

/** On the first day: correlations of the same source (M0, from memory), 0.633 between them, 0.186 and -0.193 with the light. */
const FIRST = {
  highFromLight: 0.186,
  high: 0.9825,
  lowFromLight: -0.193,
  lowWithHigh: 0.6808,
  low: 0.7066,
} as const;

/** Standard scores of many seasons' temperatures on one day, changed in place from day to day. */
export interface TemperatureScores {
  readonly high: Float64Array;
  readonly low: Float64Array;
}

/** Draws the first day's scores, given its light's. */
export const firstTemperatures = (light: Float64Array, draw: () => number): TemperatureScores => {
  const high = new Float64Array(light.length);
  const low = new Float64Array(light.length);
  for (let season = 0; season < light.length; season += 1) {
    const [own, other] = [draw(), draw()];
    high[season] = FIRST.highFromLight * light[season] + FIRST.high * own;
    low[season] = FIRST.lowFromLight * light[season] + FIRST.lowWithHigh * own + FIRST.low * other;
  }
  return { high, low };
};

/**
 * Draws the next day of one season.
 *
 * @param lightBefore the light's score of the day before
 * @param freshLight the fresh part of the day's own score, standard normal
 */
export const nextTemperature = (
  { high, low }: TemperatureScores,
  season: number,
  lightBefore: number,
  freshLight: number,
  draw: () => number,
): void => {
  const [own, other] = [draw(), draw()];
  const [wasHigh, wasLow] = [high[season], low[season]];
  const { high: toHigh, low: toLow } = FROM_YESTERDAY;
  high[season] =
    toHigh.high * wasHigh +
    toHigh.low * wasLow +
    toHigh.light * lightBefore +
    FROM_LIGHT.high * freshLight +
    OWN.high * own;
  low[season] =
    toLow.high * wasHigh +
    toLow.low * wasLow +
    toLow.light * lightBefore +
    FROM_LIGHT.low * freshLight +
    OWN.lowWithHigh * own +
    OWN.low * other;
};
