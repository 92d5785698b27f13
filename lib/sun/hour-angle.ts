/**
 * The sun's daily circle for a declination that is given: the textbook triangle, no refraction, no orbit.
 * Hour angle: degrees past solar noon, 15 an hour, negative in the morning.
 * Duffie & Beckman, Solar Engineering of Thermal Processes, sections 1.6 and 1.7.
 */
import { clampedAcos, type Direction, toDegrees, toRadians } from "../units/angle.ts";

/**
 * Where a body of that declination stands at an hour angle, as a unit vector in the local frame.
 *
 * @example directionAtHourAngle(43, -14, -37.5) // { east: 0.5907, north: -0.7019, up: 0.3980 }
 */
export const directionAtHourAngle = (
  latitudeDeg: number,
  declinationDeg: number,
  hourAngleDeg: number,
): Direction => {
  const latitude = toRadians(latitudeDeg);
  const declination = toRadians(declinationDeg);
  const hourAngle = toRadians(hourAngleDeg);
  // Along the equator towards the meridian, and along the pole.
  const meridian = Math.cos(declination) * Math.cos(hourAngle);
  const pole = Math.sin(declination);
  return {
    east: -Math.cos(declination) * Math.sin(hourAngle),
    north: pole * Math.cos(latitude) - meridian * Math.sin(latitude),
    up: pole * Math.sin(latitude) + meridian * Math.cos(latitude),
  };
};

/**
 * Hour angle of sunset without refraction, degrees 0 to 180: acos(-tan(latitude) tan(declination)), eq. 1.6.10.
 * 0 in polar night, 180 in polar day; at a pole the half-lit equinox reads 90.
 *
 * @example sunsetHourAngleDeg(43, 9.4) // 98.9
 */
export const sunsetHourAngleDeg = (latitudeDeg: number, declinationDeg: number): number =>
  toDegrees(clampedAcos(-Math.tan(toRadians(latitudeDeg)) * Math.tan(toRadians(declinationDeg))));

/**
 * Hours from geometric sunrise to sunset: 2/15 of the sunset hour angle, eq. 1.6.11.
 *
 * @example geometricDayHours(-22.9, 18.8) // 10.9
 */
export const geometricDayHours = (latitudeDeg: number, declinationDeg: number): number =>
  (2 / 15) * sunsetHourAngleDeg(latitudeDeg, declinationDeg);
