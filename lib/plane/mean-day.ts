/**
 * The handbook's short way from a month's mean light to a tilted plane: one mean day, an even sky. Kept to compare with; it
 * knows no cloud but the month's mean, and is far off where the sun hardly rises.
 * Liu & Jordan 1963; Klein 1977, Solar Energy 19, 325; Duffie & Beckman sections 2.13 and 2.19.
 */

import { sunsetHourAngleDeg } from "../sun/hour-angle.ts";
import { clampedAcos, toRadians } from "../units/angle.ts";

const PER_HOUR = Math.PI / 24;

/** sin(ws) - ws cos(ws): what a day's extraterrestrial light is proportional to. */
const dayMeasure = (sunset: number): number => Math.sin(sunset) - sunset * Math.cos(sunset);

/**
 * An hour's share of a day's global light, Collares-Pereira & Rabl 1979, Solar Energy 22, 155:
 * rt = (pi/24) (a + b cos w) (cos w - cos ws) / (sin ws - ws cos ws). A day sums to 0.991 to 1.013 for sunsets of 60 to 150 degrees.
 *
 * @param hourAngleDeg of the hour's middle, degrees from solar noon
 * @param sunsetDeg sunset hour angle, degrees
 * @returns 0 with the sun down
 * @example hourOfDayGlobal(22.5, 100.4) // 0.118
 */
export const hourOfDayGlobal = (hourAngleDeg: number, sunsetDeg: number): number => {
  const bend = Math.sin(toRadians(sunsetDeg - 60));
  const a = 0.409 + 0.5016 * bend;
  const b = 0.6609 - 0.4767 * bend;
  return (a + b * Math.cos(toRadians(hourAngleDeg))) * hourOfDayDiffuse(hourAngleDeg, sunsetDeg);
};

/**
 * An hour's share of a day's diffuse light, which is that of the extraterrestrial light, Liu & Jordan 1960, Solar Energy 4, 1:
 * rd = (pi/24) (cos w - cos ws) / (sin ws - ws cos ws).
 *
 * @returns 0 with the sun down
 * @example hourOfDayDiffuse(7.5, 90) // 0.1298
 */
export const hourOfDayDiffuse = (hourAngleDeg: number, sunsetDeg: number): number => {
  const sunset = toRadians(sunsetDeg);
  const above = Math.cos(toRadians(hourAngleDeg)) - Math.cos(sunset);
  return above <= 0 ? 0 : (PER_HOUR * above) / dayMeasure(sunset);
};

/**
 * A month's mean beam on a plane that faces the equator over that on the horizontal, Rb: Klein 1977,
 * Duffie & Beckman eq. 2.19.3a. Positive; NaN where the sun does not rise.
 *
 * @param latitudeDeg south negative; the plane faces the equator from there
 * @example meanBeamRatio(43, -20.9, 60) // 2.79
 */
export const meanBeamRatio = (latitudeDeg: number, declinationDeg: number, tiltDeg: number): number => {
  // South of the equator the year is turned round.
  const south = latitudeDeg < 0 ? -1 : 1;
  const latitude = toRadians(latitudeDeg * south);
  const declination = toRadians(declinationDeg * south);
  const seen = latitude - toRadians(tiltDeg);
  const sunset = toRadians(sunsetHourAngleDeg(latitudeDeg, declinationDeg));
  const seenSunset = Math.min(sunset, clampedAcos(-Math.tan(seen) * Math.tan(declination)));
  const light = (angle: number, until: number): number =>
    Math.cos(angle) * Math.cos(declination) * Math.sin(until) +
    until * Math.sin(angle) * Math.sin(declination);
  return light(seen, seenSunset) / light(latitude, sunset);
};

/** A month's mean day, for the handbook's way. */
export interface MeanDay {
  readonly latitudeDeg: number;
  /** Declination of the month's mean day, degrees. */
  readonly declinationDeg: number;
  /** Mean daily global light on the horizontal, in any unit. */
  readonly global: number;
  /** Share of it that is diffuse. */
  readonly diffuseShare: number;
  readonly albedo: number;
}

/**
 * A month's mean daily light on a plane that faces the equator, in the unit of `global`:
 * H (1 - d) Rb + H d (1 + cos b) / 2 + H albedo (1 - cos b) / 2. Duffie & Beckman eq. 2.19.1.
 *
 * @example
 * const january = { latitudeDeg: 43, declinationDeg: -20.9, global: 6.44, diffuseShare: 0.41, albedo: 0.7 };
 * meanDayOnPlane(january, 60) // 13.7
 */
export const meanDayOnPlane = (
  { latitudeDeg, declinationDeg, global, diffuseShare, albedo }: MeanDay,
  tiltDeg: number,
): number => {
  const cosTilt = Math.cos(toRadians(tiltDeg));
  const beam = (1 - diffuseShare) * meanBeamRatio(latitudeDeg, declinationDeg, tiltDeg);
  return global * (beam + diffuseShare * 0.5 * (1 + cosTilt) + albedo * 0.5 * (1 - cosTilt));
};
