import { blur } from "d3";

/**
 * Nobody knows the weather of a day months ahead: legs are cut and changed by what a date usually brings. A single
 * year of weather says that only when its days are averaged with their neighbours.
 */

/** Fewer skies than this are weather; more are a climate, whose mean day is smooth already. */
const FEWEST_FOR_A_CLIMATE = 5;

/** Radius of d3's three-fold moving mean, days: a spread of 7.5 days, about that of a 31-day mean (common practice). */
const BLUR_DAYS = 7;

/** Whether a mean over that many skies still holds the weather of single days. */
export const holdsWeather = (skies: number): boolean => skies > 0 && skies < FEWEST_FOR_A_CLIMATE;

/**
 * What each day can be foreseen to bring: the clear-sky energy of the day times the share of it that the weeks around
 * the date let through. The season's total stays what it was.
 *
 * @param expectedWh Wh of each day under the weather of one year, or the mean of a few
 * @param clearWh Wh of each day under a clear sky
 */
export const foreseen = (expectedWh: Float64Array, clearWh: Float64Array): Float64Array => {
  const through = blur(Array.from(expectedWh), BLUR_DAYS);
  const most = blur(Array.from(clearWh), BLUR_DAYS);
  const smooth = clearWh.map((wh, day) => (most[day] > 0 ? (wh * through[day]) / most[day] : 0));
  const before = expectedWh.reduce((sum, wh) => sum + wh, 0);
  const after = smooth.reduce((sum, wh) => sum + wh, 0);
  return after > 0 ? smooth.map((wh) => (wh * before) / after) : smooth;
};
