/**
 * The Earth's orbit as short series of the day of the year: distance, declination, equation of time.
 * Where the sun stands in the sky comes from `position.ts`; the declinations here serve handbook formulas
 * and the rules of thumb built on them.
 */
import { toDegrees, toRadians } from "../units/angle.ts";

/** Total solar irradiance at the mean distance, W/m2: 1360.8 +- 0.5, Kopp & Lean 2011, Geophys. Res. Lett. 38, L01706. */
export const SOLAR_CONSTANT = 1361;

/** Angle through the year in radians, 0 on 1 January: B = 2 pi (n - 1) / 365 (Spencer 1971). */
export const dayAngle = (dayOfYear: number): number => (2 * Math.PI * (dayOfYear - 1)) / 365;

/**
 * Mean over actual sun distance, squared: what the solar constant is multiplied with on a day, 0.966 to 1.035.
 *
 * Spencer 1971, Search 2(5), 172. Within 0.0011 of the true distance in any year, leap years included.
 *
 * @example sunDistanceFactor(3) // 1.0351
 */
export const sunDistanceFactor = (dayOfYear: number): number => {
  const b = dayAngle(dayOfYear);
  return (
    1.00011 +
    0.034221 * Math.cos(b) +
    0.00128 * Math.sin(b) +
    0.000719 * Math.cos(2 * b) +
    0.000077 * Math.sin(2 * b)
  );
};

/**
 * Declination by the Fourier series of Spencer 1971, degrees, north positive; within 0.6 degrees of the true sun
 * in any year, mostly for want of the leap day.
 *
 * @example spencerDeclinationDeg(172) // 23.45
 */
export const spencerDeclinationDeg = (dayOfYear: number): number => {
  const b = dayAngle(dayOfYear);
  return toDegrees(
    0.006918 -
      0.399912 * Math.cos(b) +
      0.070257 * Math.sin(b) -
      0.006758 * Math.cos(2 * b) +
      0.000907 * Math.sin(2 * b) -
      0.002697 * Math.cos(3 * b) +
      0.00148 * Math.sin(3 * b),
  );
};

/**
 * Declination by the single sine of Cooper 1969, Solar Energy 12, 333, degrees, north positive; up to 1.6 degrees
 * off in autumn, kept because textbook tables rest on it.
 *
 * @example cooperDeclinationDeg(172) // 23.45
 */
export const cooperDeclinationDeg = (dayOfYear: number): number =>
  23.45 * Math.sin(toRadians((360 * (284 + dayOfYear)) / 365));

/**
 * Equation of time, minutes that a sundial runs ahead of mean solar time: -14.3 in February, 16.4 in November.
 *
 * Spencer 1971, with the factor 229.18 minutes a radian.
 *
 * @example equationOfTimeMinutes(34) // -13.5
 */
export const equationOfTimeMinutes = (dayOfYear: number): number => {
  const b = dayAngle(dayOfYear);
  return (
    229.18 *
    (0.000075 +
      0.001868 * Math.cos(b) -
      0.032077 * Math.sin(b) -
      0.014615 * Math.cos(2 * b) -
      0.04089 * Math.sin(2 * b))
  );
};
