/**
 * Sunlight above the air: the most that any sky can hand down.
 */

import { sunsetHourAngleDeg } from "../sun/hour-angle.ts";
import { SOLAR_CONSTANT, sunDistanceFactor } from "../sun/orbit.ts";
import { toRadians } from "../units/angle.ts";
import { DAY_MS } from "../units/time.ts";

const HOURS_PER_RADIAN = 12 / Math.PI;

/**
 * Extraterrestrial irradiance on a surface facing the sun, W/m2: 1361 times Spencer's distance factor.
 * Day of the year 1..366, UTC; 1316 (July) to 1409 (January).
 *
 * @example extraterrestrialNormal(1) // 1408.7
 */
export const extraterrestrialNormal = (dayOfYear: number): number =>
  SOLAR_CONSTANT * sunDistanceFactor(dayOfYear);

/**
 * Extraterrestrial irradiation on the horizontal between two hour angles (degrees from solar noon, morning negative),
 * Wh/m2, for a normal irradiance in W/m2 that is constant over the time. The part with the sun down counts nothing.
 * Duffie & Beckman eq. 1.10.4.
 *
 * @example extraterrestrialBetween(40, -11.6, -45, -30, 1397) // 649
 */
export const extraterrestrialBetween = (
  latitudeDeg: number,
  declinationDeg: number,
  fromHourAngleDeg: number,
  toHourAngleDeg: number,
  normalWm2: number,
): number => {
  const sunset = sunsetHourAngleDeg(latitudeDeg, declinationDeg);
  const from = toRadians(Math.max(fromHourAngleDeg, -sunset));
  const to = toRadians(Math.min(toHourAngleDeg, sunset));
  if (to <= from) return 0;
  const latitude = toRadians(latitudeDeg);
  const declination = toRadians(declinationDeg);
  const level = Math.cos(latitude) * Math.cos(declination) * (Math.sin(to) - Math.sin(from));
  const upright = Math.sin(latitude) * Math.sin(declination) * (to - from);
  return HOURS_PER_RADIAN * normalWm2 * (level + upright);
};

/**
 * Extraterrestrial irradiation on the horizontal over a whole day, Wh/m2. Duffie & Beckman eq. 1.10.3; FAO-56 eq. 21.
 * 0 in polar night.
 *
 * @example dailyExtraterrestrial(43, 9.4, 1357) // 9383
 */
export const dailyExtraterrestrial = (
  latitudeDeg: number,
  declinationDeg: number,
  normalWm2: number,
): number => extraterrestrialBetween(latitudeDeg, declinationDeg, -180, 180, normalWm2);

/**
 * A reader of the extraterrestrial normal irradiance (W/m2) by UTC instant, for walking through time:
 * it works the day out once and remembers it until the day changes.
 */
export const extraterrestrialClock = (): ((timeMs: number) => number) => {
  let today = Number.NaN;
  let normal = Number.NaN;
  return (timeMs) => {
    const day = Math.floor(timeMs / DAY_MS);
    if (day !== today) {
      today = day;
      const yearStart = Date.UTC(new Date(timeMs).getUTCFullYear(), 0, 1);
      normal = extraterrestrialNormal(1 + Math.floor((timeMs - yearStart) / DAY_MS));
    }
    return normal;
  };
};
