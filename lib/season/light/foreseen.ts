import { blur } from "d3";
import type { SkyColumns } from "../../sky/columns.ts";
import type { SunColumns } from "../../sun/columns.ts";
import { totalWh } from "./day-sums.ts";

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
 * Light that a clear day holds for a panel of any tilt: beam and diffuse added up, Wh/m2. It grows and shrinks with the
 * season as yields do, and is nothing in the polar night.
 */
export const clearLightOf = (sun: SunColumns, clear: SkyColumns): Float64Array =>
  Float64Array.from(sun.days, ({ first, end }) => {
    let sum = 0;
    for (let row = first; row < end; row += 1) {
      sum += (clear.beamNormal[row] + clear.diffuse[row]) * sun.hours[row];
    }
    return sum;
  });

/**
 * What each day can be foreseen to bring: the light of a clear day of its date times what the weeks around it make of
 * such light. The season's total stays what it was.
 *
 * @param expectedWh Wh of each day under the weather of one year, or the mean of a few
 * @param clearLight light of each day under a clear sky, as {@link clearLightOf}
 */
export const foreseen = (expectedWh: Float64Array, clearLight: Float64Array): Float64Array => {
  const brought = blur(Array.from(expectedWh), BLUR_DAYS);
  const held = blur(Array.from(clearLight), BLUR_DAYS);
  const smooth = clearLight.map((light, day) => (held[day] > 0 ? (light * brought[day]) / held[day] : 0));
  const before = totalWh(expectedWh);
  const after = totalWh(smooth);
  return after > 0 ? smooth.map((wh) => (wh * before) / after) : smooth;
};
