/**
 * A weather file laid onto the rows of a season: what light and air the file says there were.
 */

import type { DiffuseSplit } from "../../../plan/sky.ts";
import type { SunColumns } from "../../../sun/columns.ts";
import { wholeDays } from "../../../sun/whole-days.ts";
import { DAY_MS, MINUTE_MS } from "../../../units/time.ts";
import { PANEL_HEIGHT_M, windShareAtHeight } from "../../climate/wind-height.ts";
import { emptySkyColumns, type SkyColumns } from "../../columns.ts";
import { fileShift } from "../read/calendar.ts";
import type { WeatherSeries } from "../read/series.ts";
import { fillFromDays } from "./daily-columns.ts";
import { fillFromIntervals } from "./interval-columns.ts";

/** How a weather file is laid onto a season. */
export interface WeatherColumnsOptions {
  /** Degrees, south negative; only files of whole days look at it. */
  readonly latitudeDeg: number;
  /** How global light is split where the file gives nothing else [engerer, the best by measurement]. */
  readonly split?: DiffuseSplit;
  /** Height above ground at which the file's wind was measured, m; it is brought down to the panel [the panel's own]. */
  readonly windHeightM?: number;
  /** Year of the file that stands for the season's first year [the same year, else the first of `weatherYears`]. */
  readonly fileYear?: number;
}

const spanOf = (series: WeatherSeries): readonly [number, number] =>
  series.kind === "days"
    ? [series.firstDay * DAY_MS, (series.firstDay + series.length) * DAY_MS]
    : [series.startMs, series.startMs + series.length * series.intervalMinutes * MINUTE_MS];

const yearOf = (ms: number): number => new Date(ms).getUTCFullYear();

/** The instants of a season that a file must know: first and last row of every day, or its date for files of days. */
const neededInstants = (sun: SunColumns, series: WeatherSeries): readonly number[] =>
  sun.days
    .filter(({ first, end }) => end > first)
    .flatMap(({ first, end, date }) =>
      series.kind === "days" ? [Date.parse(date)] : [sun.timeMs[first], sun.timeMs[end - 1]],
    );

/**
 * The years of a file that hold a whole season, oldest first: each is one season that really was, and the spread of
 * their answers is the band over years. A typical year (or any file that holds the season only when the turn of the
 * year is stepped over) gives its one year. Empty when days of the season are missing in every year.
 */
export const weatherYears = (series: WeatherSeries, sun: SunColumns): readonly number[] => {
  const [startMs, endMs] = spanOf(series);
  const instants = neededInstants(sun, series);
  const seasonYear = yearOf(Date.parse(sun.days[0]?.date ?? ""));
  const years = Array.from({ length: yearOf(endMs) - yearOf(startMs) + 1 }, (_, i) => yearOf(startMs) + i);
  const holds = (year: number, longestMs: number): boolean => {
    const shiftAt = fileShift(startMs, endMs, year - seasonYear);
    const shifts = instants.map(shiftAt);
    const wanted = (year - seasonYear) * 365.25 * DAY_MS;
    return shifts.every((shift) => Math.abs(shift - wanted) <= longestMs);
  };
  // A leap day moves a date by up to two days from the mean year; another year would be 365 off.
  const whole = years.filter((year) => holds(year, 3 * DAY_MS));
  if (whole.length > 0) return whole;
  return years.filter((year) => holds(year, Number.POSITIVE_INFINITY)).slice(0, 1);
};

/** Years from the season's calendar to the file's: to the year asked for, the same year, or the first that holds the season. */
const yearsToFile = (sun: SunColumns, series: WeatherSeries, fileYear: number | undefined): number => {
  const seasonYear = yearOf(Date.parse(sun.days[0]?.date ?? ""));
  const years = fileYear === undefined ? weatherYears(series, sun) : [fileYear];
  const year = years.includes(seasonYear) ? seasonYear : (years[0] ?? yearOf(spanOf(series)[0]));
  return year - seasonYear;
};

/**
 * The file's air on every step of the season's whole days, night and day, degC: straight between the middles of its
 * intervals, or of its days.
 *
 * @returns `null` for a file without air; NaN where the file has a hole or does not reach
 */
export const weatherStepAir = (
  sun: SunColumns,
  series: WeatherSeries,
  fileYear?: number,
): Float64Array | null => {
  const { airC } = series;
  if (airC === undefined) return null;
  const [startMs, endMs] = spanOf(series);
  const everyMs = (endMs - startMs) / series.length;
  const shiftAt = fileShift(startMs, endMs, yearsToFile(sun, series, fileYear));
  const { startsMs, perDay, stepMinutes } = wholeDays(sun);
  const out = new Float64Array(startsMs.length * perDay);
  for (let step = 0; step < out.length; step += 1) {
    const timeMs = startsMs[Math.floor(step / perDay)] + ((step % perDay) + 0.5) * stepMinutes * MINUTE_MS;
    const at = (timeMs + shiftAt(timeMs) - startMs) / everyMs - 0.5;
    const lower = Math.max(0, Math.min(series.length - 1, Math.floor(at)));
    const upper = Math.min(series.length - 1, lower + 1);
    const share = Math.max(0, at - lower);
    out[step] = (1 - share) * airC[lower] + share * airC[upper];
  }
  return out;
};

/**
 * Beam, diffuse, global, air temperature and wind of a weather file for every row of the sun columns.
 *
 * Each interval's energy is spread evenly over the rows that lie in it with the sun up, and none is lost: an interval
 * without such a row (light before the sun's centre is in sight) is dropped. Beam never exceeds the extraterrestrial.
 * Where the file has no beam or diffuse, global is split by a published correlation. `global` stays the file's own, so
 * it may differ from beam x sin(altitude) + diffuse by the sensors' disagreement.
 *
 * The file's year need not be the season's: month, day and hour (UTC) are matched, 29 February by the 28th where the
 * file has none. Where air temperature or wind is missing, the clear columns' value stands in.
 *
 * @param clear the clear-sky columns of the same season: extraterrestrial, air mass, albedo and stand-ins are theirs
 * @param out columns of the same length to fill instead of new ones
 * @throws PlanError when days of the season are not in the file; RangeError when `clear` or `out` has another length
 */
export const weatherSkyColumns = (
  sun: SunColumns,
  series: WeatherSeries,
  clear: SkyColumns,
  { latitudeDeg, split = "engerer", windHeightM = PANEL_HEIGHT_M, fileYear }: WeatherColumnsOptions,
  out: SkyColumns = emptySkyColumns(sun.length),
): SkyColumns => {
  for (const [name, columns] of [
    ["clear", clear],
    ["out", out],
  ] as const) {
    if (columns.length !== sun.length) {
      throw new RangeError(
        `weatherSkyColumns: expected ${name} of ${sun.length} rows, received ${columns.length}`,
      );
    }
  }
  out.extraterrestrial.set(clear.extraterrestrial);
  out.airMass.set(clear.airMass);
  out.albedo.set(clear.albedo);
  if (sun.length === 0) return out;
  const yearsOn = yearsToFile(sun, series, fileYear);
  const windShare = windShareAtHeight(windHeightM, PANEL_HEIGHT_M);
  if (series.kind === "days") fillFromDays(sun, latitudeDeg, series, clear, yearsOn, windShare, out);
  else fillFromIntervals(sun, series, clear, split, yearsOn, windShare, out);
  return out;
};
