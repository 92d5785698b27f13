/**
 * Global radiation from hours of bright sunshine: the relation of Angstrom 1924 and Prescott 1940,
 * G = G0 (a + b s), with s the sunshine hours over the hours from sunrise to sunset.
 */
import type { SunshineRelation } from "../../plan/climate.ts";
import { LEAST_EXTRATERRESTRIAL_KWH_M2, type MonthSun } from "./month-sun.ts";

/** FAO-56, Allen et al. 1998, eq. 35: the values recommended where nothing has been calibrated. */
const FAO56 = { a: 0.25, b: 0.5 } as const;

/**
 * A fit, not a publication: made for this kind of table on German stations and one near Schleswig, checked on 30 US and
 * German places that it had not seen (bias +3 %, FAO-56 +7 %). The term in the noon height takes the excess of the
 * published constants out of dark winters. Hardly tested in the tropics, the south, and over snow.
 */
const FITTED = { a: 0.176, b: 0.431, noon: 0.119 } as const;

/**
 * Clearness index (global over extraterrestrial) from a sunshine share.
 *
 * @param share sunshine hours over day length, 0..1
 * @param noonSine sine of the noon altitude; only `fitted` looks at it
 * @example clearnessOfSunshine("fao56", 0.5, 0.9) // 0.5
 */
export const clearnessOfSunshine = (relation: SunshineRelation, share: number, noonSine: number): number =>
  relation === "fao56" ? FAO56.a + FAO56.b * share : FITTED.a + FITTED.b * share + FITTED.noon * noonSine;

/** Share of the possible sunshine of a month; recorders may say a little more than the day is long, so at most 1. */
export const sunshineShare = (hours: number, sun: MonthSun): number =>
  Math.min(1, hours / (sun.days * sun.dayHours));

/**
 * Mean daily global radiation (kWh/m2) of a month from its bright-sunshine hours. 0 in polar night.
 *
 * @param hours sunshine hours in the whole month
 */
export const globalOfSunshine = (relation: SunshineRelation, hours: number, sun: MonthSun): number =>
  sun.extraterrestrialKWhM2 < LEAST_EXTRATERRESTRIAL_KWH_M2
    ? 0
    : sun.extraterrestrialKWhM2 * clearnessOfSunshine(relation, sunshineShare(hours, sun), sun.noonSine);

/** Beyond this latitude the dark half of the year is harder to read; degrees. */
const HIGH_LATITUDE_DEG = 45;

/** November to February in the north, May to August in the south; months 0..11. */
const isDeepWinter = (latitudeDeg: number, month: number): boolean =>
  Math.abs(latitudeDeg) > HIGH_LATITUDE_DEG &&
  (latitudeDeg > 0 ? month <= 1 || month >= 10 : month >= 4 && month <= 7);

/**
 * One standard deviation of a month's estimate from sunshine, as a share of it: 0.11, and 0.15 from November to February
 * (May to August in the south) beyond 45 degrees. Measured with the fitted relation on the places it had not seen.
 *
 * @param month 0 (January) to 11
 */
export const sunshineMonthSpread = (latitudeDeg: number, month: number): number =>
  isDeepWinter(latitudeDeg, month) ? 0.15 : 0.11;

/** One standard deviation of a whole year's estimate from sunshine, as a share of it; measured like the months'. */
export const SUNSHINE_YEAR_SPREAD = 0.07;
