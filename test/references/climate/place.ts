/** A place whose own twelve months are known: its climate laid over a whole year, as the library does it. */

import { sunZone } from "../../../lib/plan/site.ts";
import { domeColumns, emptyPlaneColumns, martinRuizGlass, planeColumns } from "../../../lib/plane/index.ts";
import { clearSkyColumns } from "../../../lib/sky/clear-sky-columns.ts";
import { NO_UNCERTAINTY } from "../../../lib/sky/climate/climate.ts";
import { clearYear } from "../../../lib/sky/climate/days/clear-year.ts";
import { cloudSeason } from "../../../lib/sky/climate/days/cloud-season.ts";
import { climateSkies } from "../../../lib/sky/climate/days/cloud-skies.ts";
import type { SkyColumns } from "../../../lib/sky/columns.ts";
import type { Monthly } from "../../../lib/sky/monthly.ts";
import { clearAirOf } from "../../../lib/sky/turbidity.ts";
import { type SunColumns, sunColumns } from "../../../lib/sun/index.ts";
import type { Aim } from "../../../lib/units/angle.ts";
import { waterAt } from "./anywhere.ts";

export interface Place {
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number;
  /** Year laid over the climate. */
  readonly year: number;
  /** Ground that brightens the clear sky; on the planes it is 0.2 throughout. */
  readonly ground: Monthly;
}

/** Ground reflectance in front of the planes compared here. */
export const PLANE_GROUND = 0.2;

const STEP_MINUTES = 20;
const GLASS = martinRuizGlass();

/** The standard haze and the water of the place and month, with its sun and clear sky through its year. */
export const yearOver = (place: Place) => {
  const site = { ...place, timeZone: sunZone(place.longitudeDeg) };
  const air = clearAirOf({ turbidity: "standard", ozoneCm: 0.32 }, place.elevationM);
  const sun = sunColumns(site, { from: `${place.year}-01-01`, to: `${place.year}-12-31` }, STEP_MINUTES);
  const waterCm = waterAt(site);
  const clear = clearSkyColumns(sun, air, place.ground, { airC: 10, windMs: 1, waterCm });
  return { sun, clear, days: clearYear(site, air, place.ground, waterCm) };
};

export type YearOver = ReturnType<typeof yearOver>;

/** Sums of a column by month, kWh/m2. */
export const monthSums = (sun: SunColumns, column: Float64Array): Float64Array => {
  const sums = new Float64Array(12);
  for (const { month, first, end } of sun.days) {
    for (let row = first; row < end; row++) sums[month - 1] += (column[row] * sun.hours[row]) / 1000;
  }
  return sums;
};

/** Monthly light on planes under one sky, kWh/m2. */
export const monthsOnPlanes = (
  sun: SunColumns,
  sky: SkyColumns,
  aims: readonly Aim[],
): readonly Float64Array[] => {
  const dome = domeColumns(sun, { ...sky, albedo: new Float64Array(sky.length).fill(PLANE_GROUND) });
  const light = emptyPlaneColumns(sun.length);
  return aims.map((aim) => monthSums(sun, planeColumns(sun, dome, aim, GLASS, light).plane));
};

/** Skies of a place's year under its twelve months (kWh/m2 a day). */
export const skiesOfMonths = (
  { sun, clear, days }: YearOver,
  place: Place,
  globalKWhM2: readonly number[],
) => {
  const climate = { globalKWhM2, uncertainty: NO_UNCERTAINTY };
  const cloud = cloudSeason(sun, clear, days, climate, place.latitudeDeg);
  return { cloud, skies: climateSkies(sun, clear, cloud) };
};

/** Monthly light on planes from twelve months alone, kWh/m2: the mean over the equally likely skies. */
export const expectedOnPlanes = (
  over: YearOver,
  place: Place,
  globalKWhM2: readonly number[],
  aims: readonly Aim[],
): readonly Float64Array[] => {
  const out = aims.map(() => new Float64Array(12));
  for (const { weight, sky } of skiesOfMonths(over, place, globalKWhM2).skies) {
    for (const [index, months] of monthsOnPlanes(over.sun, sky, aims).entries()) {
      for (let month = 0; month < 12; month++) out[index][month] += weight * months[month];
    }
  }
  return out;
};

/** Errors of a row of months: the worst, the root-mean-square, the year's; per cent. */
export interface MonthErrors {
  readonly worstPct: number;
  readonly rmsPct: number;
  readonly yearPct: number;
}

/** Ours against theirs by month, both sums. */
export const monthErrors = (ours: ArrayLike<number>, theirs: ArrayLike<number>): MonthErrors => {
  let [worst, squares, sum, sumTheirs, months] = [0, 0, 0, 0, 0];
  for (let month = 0; month < 12; month++) {
    if (Number.isNaN(theirs[month])) continue;
    sum += ours[month];
    sumTheirs += theirs[month];
    const error = ours[month] / theirs[month] - 1;
    worst = Math.max(worst, Math.abs(error));
    squares += error * error;
    months++;
  }
  return {
    worstPct: 100 * worst,
    rmsPct: 100 * Math.sqrt(squares / months),
    yearPct: 100 * (sum / sumTheirs - 1),
  };
};
