/**
 * Diffuse share of global light from clearness alone: Erbs, Klein & Duffie 1982, Solar Energy 28, 293.
 * Coefficients from memory; the branches join, and the textbook's examples come out.
 */

/**
 * Diffuse share (0..1) of an hour's global horizontal light from its clearness (GHI over extraterrestrial horizontal).
 * A clearness above 1 or below 0 is treated as the nearest end. NaN stays NaN.
 *
 * @example erbsHourly(0.445) // 0.766
 */
export const erbsHourly = (clearness: number): number => {
  const k = Math.max(0, clearness);
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k <= 0.8) return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + 12.336 * k)));
  return Number.isNaN(k) ? k : 0.165;
};

/** Sunset hour angle that parts the winter branch from the rest, degrees. */
const WINTER_SUNSET_DEG = 81.4;

/**
 * Diffuse share of a day's global horizontal light from its clearness and the sunset hour angle in degrees.
 * As published: the branch of longer days steps from 0.190 to 0.175 at a clearness of 0.722, and between 0 and 0.115 it
 * exceeds 1 by up to 0.8 %; hold it at 1 before taking beam light from it.
 *
 * @example erbsDaily(0.69, 95.6) // 0.256
 */
export const erbsDaily = (clearness: number, sunsetHourAngleDeg: number): number => {
  const k = Math.max(0, clearness);
  if (sunsetHourAngleDeg <= WINTER_SUNSET_DEG) {
    return k < 0.715 ? 1 + k * (-0.2727 + k * (2.4495 + k * (-11.9514 + 9.3879 * k))) : 0.143;
  }
  return k < 0.722 ? 1 + k * (0.2832 + k * (-2.5557 + 0.8448 * k)) : Number.isNaN(k) ? k : 0.175;
};

/**
 * Diffuse share (0..1) of a month's mean daily global horizontal light from the monthly mean clearness, which the paper
 * gives for 0.3 to 0.8; beyond, the nearest end is used.
 *
 * @example erbsMonthly(0.5, 100) // 0.429
 */
export const erbsMonthly = (clearness: number, sunsetHourAngleDeg: number): number => {
  const k = Math.min(0.8, Math.max(0.3, clearness));
  return sunsetHourAngleDeg <= WINTER_SUNSET_DEG
    ? 1.391 + k * (-3.56 + k * (4.189 - 2.137 * k))
    : 1.311 + k * (-3.022 + k * (3.427 - 1.821 * k));
};
