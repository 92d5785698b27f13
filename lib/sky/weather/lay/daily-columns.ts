/**
 * Files of whole days onto the rows of a season: the sum is the file's, the course within the day the clear sky's.
 */

import type { SeasonDay, SunColumns } from "../../../sun/columns.ts";
import { sunsetHourAngleDeg } from "../../../sun/hour-angle.ts";
import { spencerDeclinationDeg } from "../../../sun/orbit.ts";
import { isoDate } from "../../../units/dates.ts";
import { PlanError } from "../../../units/problem.ts";
import { DAY_MS } from "../../../units/time.ts";
import type { SkyColumns } from "../../columns.ts";
import { erbsDaily } from "../../diffuse-share/erbs.ts";
import { fileShift } from "../read/calendar.ts";
import type { DailySeries } from "../read/series.ts";

/** Rounds in which the diffuse light is brought to its sum; each shrinks what is missing to a tenth or less. */
const ROUNDS = 4;

/** Index into the file for every day of a season that has light; -1 for polar nights. */
const fileDays = (days: readonly SeasonDay[], series: DailySeries, yearsOn: number): Int32Array => {
  const shiftAt = fileShift(series.firstDay * DAY_MS, (series.firstDay + series.length) * DAY_MS, yearsOn);
  const missing: string[] = [];
  const index = Int32Array.from(days, ({ date, first, end }) => {
    if (first === end) return -1;
    const dateMs = Date.parse(date);
    const shift = shiftAt(dateMs);
    if (Number.isNaN(shift)) missing.push(date);
    return Number.isNaN(shift) ? -1 : (dateMs + shift) / DAY_MS - series.firstDay;
  });
  if (missing.length > 0) {
    const dateOf = (day: number) => isoDate(day * DAY_MS);
    throw new PlanError([
      {
        path: "weather file",
        value: `no sums for ${missing[0]} to ${missing.at(-1)}`,
        allowed: `must hold every day of the season; it runs from ${dateOf(series.firstDay)} to ${dateOf(series.firstDay + series.length - 1)}`,
        hint: "shorten the season, or take a file of a whole year",
      },
    ]);
  }
  return index;
};

/**
 * Spreads one day's sum over its rows: global along the clear sky, diffuse (Erbs, Klein & Duffie 1982, daily) along the
 * extraterrestrial light (Liu & Jordan 1960), never more than the global; the rest is beam.
 */
const spreadDay = (
  { up, hours }: SunColumns,
  { first, end, dayOfYear }: SeasonDay,
  latitudeDeg: number,
  sumWh: number,
  clear: SkyColumns,
  out: SkyColumns,
): void => {
  let clearWh = 0;
  let aboveWh = 0;
  for (let row = first; row < end; row += 1) {
    clearWh += clear.global[row] * hours[row];
    aboveWh += clear.extraterrestrial[row] * up[row] * hours[row];
  }
  const clearness = Math.min(1, sumWh / aboveWh);
  const sunset = sunsetHourAngleDeg(latitudeDeg, spencerDeclinationDeg(dayOfYear));
  const diffuseWh = Math.min(1, erbsDaily(clearness, sunset)) * sumWh;
  const scale = sumWh / clearWh;
  for (let row = first; row < end; row += 1) out.global[row] = scale * clear.global[row];
  let share = diffuseWh / aboveWh;
  for (let round = 0; round < ROUNDS; round += 1) {
    let spreadWh = 0;
    for (let row = first; row < end; row += 1) {
      out.diffuse[row] = Math.min(out.global[row], share * clear.extraterrestrial[row] * up[row]);
      spreadWh += out.diffuse[row] * hours[row];
    }
    if (spreadWh > 0) share *= diffuseWh / spreadWh;
  }
  for (let row = first; row < end; row += 1) {
    out.beamNormal[row] = Math.min(
      clear.extraterrestrial[row],
      Math.max(0, out.global[row] - out.diffuse[row]) / up[row],
    );
  }
};

/**
 * Fills the sky columns of a season from a file of days. See `weatherSkyColumns`.
 *
 * @param yearsOn years from the season's calendar to the file's
 * @param windShare what part of the file's wind blows at the panel
 */
export const fillFromDays = (
  sun: SunColumns,
  latitudeDeg: number,
  series: DailySeries,
  clear: SkyColumns,
  yearsOn: number,
  windShare: number,
  out: SkyColumns,
): void => {
  const index = fileDays(sun.days, series, yearsOn);
  sun.days.forEach((day, i) => {
    const at = index[i];
    if (at < 0) return;
    spreadDay(sun, day, latitudeDeg, series.globalWh[at], clear, out);
    for (let row = day.first; row < day.end; row += 1) {
      const air = series.airC?.[at] ?? Number.NaN;
      const wind = series.windMs?.[at] ?? Number.NaN;
      out.airC[row] = Number.isNaN(air) ? clear.airC[row] : air;
      out.windMs[row] = Number.isNaN(wind) ? clear.windMs[row] : wind * windShare;
    }
  });
};
