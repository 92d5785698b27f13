import { greatest, least } from "d3";

/**
 * The course of a day's air temperature between its low and its high.
 *
 * Erbs, Klein & Beckman 1983 (ASHRAE Journal 25, June, 60-65), coefficients from memory:
 * (T - mean) / (high - low) = 0.4632 cos(t - 3.805) + 0.0984 cos(2t - 0.360) + 0.0168 cos(3t - 0.822)
 * + 0.0138 cos(4t - 3.513), with t = 2 pi (hour - 1) / 24 and the hour in solar time.
 */
const HARMONICS = [
  [0.4632, 3.805],
  [0.0984, 0.36],
  [0.0168, 0.822],
  [0.0138, 3.513],
] as const;

/** The published curve: -0.4545 at its lowest before dawn, 0.5251 in mid-afternoon; a whole day's mean is 0. */
const publishedCurve = (solarHour: number): number => {
  const turn = (2 * Math.PI * (solarHour - 1)) / 24;
  let height = 0;
  for (const [index, [amplitude, phase]] of HARMONICS.entries()) {
    height += amplitude * Math.cos((index + 1) * turn - phase);
  }
  return height;
};

const MINUTES = Array.from({ length: 24 * 60 }, (_, minute) => minute);

/** The solar hours at which the curve turns: coldest before dawn, warmest in mid-afternoon. To the minute. */
export const [COLDEST_HOUR, WARMEST_HOUR] = [least, greatest].map(
  (turning) => (turning(MINUTES, (minute) => publishedCurve(minute / 60)) ?? 0) / 60,
);

// The printed curve spans 0.965, not quite 1.
const [LOWEST, HIGHEST] = [publishedCurve(COLDEST_HOUR), publishedCurve(WARMEST_HOUR)];

/** Where the whole day's mean stands between the low (0) and the high (1): about 0.46. */
export const MEAN_SHARE = -LOWEST / (HIGHEST - LOWEST);

/**
 * How far the air has warmed from the day's low (0) to its high (1) at a solar hour.
 *
 * The published daily curve, stretched so that low and high are met exactly.
 *
 * @param solarHour hours after solar midnight; 12 is solar noon. Any number; the day repeats.
 * @returns 0 to 1; NaN for NaN.
 * @example warmthAt(15) // 0.999
 */
export const warmthAt = (solarHour: number): number =>
  (publishedCurve(solarHour) - LOWEST) / (HIGHEST - LOWEST);

/**
 * The usual span between a month's mean daily low and high, kelvin, from its clearness index.
 *
 * Erbs, Klein & Beckman 1983: A = 25.8 K - 5.21 (from memory). Clear months have wide days.
 * Used only where a table gives mean temperatures alone. Never below 2 K.
 *
 * @example dailyRangeK(0.5) // 7.69
 */
export const dailyRangeK = (clearness: number): number => Math.max(2, 25.8 * clearness - 5.21);
