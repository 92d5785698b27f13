/**
 * What the sun offers a latitude month by month, above any air: the yardstick of every climate table.
 */

import { geometricDayHours } from "../../sun/hour-angle.ts";
import { spencerDeclinationDeg } from "../../sun/orbit.ts";
import { toRadians } from "../../units/angle.ts";
import { dailyExtraterrestrial, extraterrestrialNormal } from "../extraterrestrial.ts";
import { MONTH_DAYS } from "./month-to-date.ts";

/** The sun of one calendar month at a latitude; means over all its days, without refraction. */
export interface MonthSun {
  /** Days of the month; February has 28.25. */
  readonly days: number;
  /** Mean daily extraterrestrial radiation on the horizontal, kWh/m2. */
  readonly extraterrestrialKWhM2: number;
  /** Mean hours from sunrise to sunset. */
  readonly dayHours: number;
  /** Sine of the noon altitude on the month's middle day; 0 when the sun stays down. */
  readonly noonSine: number;
}

/** Declination (degrees) and extraterrestrial normal irradiance (W/m2) of each day of a common year. */
const YEAR = Array.from({ length: 365 }, (_, index) => ({
  declinationDeg: spencerDeclinationDeg(index + 1),
  normalWm2: extraterrestrialNormal(index + 1),
}));

/** Days of each calendar month over the years, January first. */
export const MEAN_MONTH_DAYS: readonly number[] = MONTH_DAYS.map((days) => (days === 28 ? 28.25 : days));

/**
 * The twelve months of sun at a latitude, January first.
 *
 * Daily extraterrestrial radiation (Duffie & Beckman eq. 1.10.3, 1361 W/m2) and day length with Spencer's
 * declination, averaged over every day of the month: in months of polar twilight no single day stands for the rest.
 *
 * @param latitudeDeg -90 to 90, south negative; NaN gives NaN
 * @example monthSuns(40)[5]?.extraterrestrialKWhM2 // 11.6
 */
export const monthSuns = (latitudeDeg: number): readonly MonthSun[] => {
  let dayOfYear = 0;
  return MONTH_DAYS.map((count, month) => {
    let radiation = 0;
    let hours = 0;
    const middle = dayOfYear + (count + 1) / 2;
    for (const { declinationDeg, normalWm2 } of YEAR.slice(dayOfYear, dayOfYear + count)) {
      radiation += dailyExtraterrestrial(latitudeDeg, declinationDeg, normalWm2);
      hours += geometricDayHours(latitudeDeg, declinationDeg);
    }
    dayOfYear += count;
    const noonAltitude = 90 - Math.abs(latitudeDeg - spencerDeclinationDeg(middle));
    return {
      days: MEAN_MONTH_DAYS[month] ?? count,
      extraterrestrialKWhM2: radiation / count / 1000,
      dayHours: hours / count,
      noonSine: Math.max(0, Math.sin(toRadians(noonAltitude))),
    };
  });
};

/**
 * Below this the month is polar night and its clearness has no meaning: 2 Wh/m2 a day of extraterrestrial light,
 * less than a sun that grazes the horizon for a quarter of an hour.
 */
export const LEAST_EXTRATERRESTRIAL_KWH_M2 = 0.002;
