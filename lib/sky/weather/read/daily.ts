/**
 * Files of whole days: one row a civil date, the sum of its global light.
 */

import { SOLAR_CONSTANT, spencerDeclinationDeg, sunDistanceFactor } from "../../../sun/orbit.ts";
import { isoDate } from "../../../units/dates.ts";
import { PlanError, type Problem } from "../../../units/problem.ts";
import { DAY_MS } from "../../../units/time.ts";
import { dailyExtraterrestrial } from "../../extraterrestrial.ts";
import { bridgeHoles } from "./bridge.ts";
import type { WeatherPlace } from "./interval-sun.ts";
import type { RowProblems } from "./row-problems.ts";
import type { DailySeries } from "./series.ts";
import { MOST_ROWS, type WeatherTable } from "./table.ts";

/** Longest hole that is filled, days; common practice, no source. */
export const LONGEST_GAP_DAYS = 3;

/** A day's light can't exceed what arrives above the air; readings get 5 % and 100 Wh/m2 (common practice, no source). */
const MOST_SHARE = 1.05;
const ALLOWANCE_WH = 100;

const dayOfYear = (day: number): number => {
  const date = new Date(day * DAY_MS);
  return 1 + Math.round((day * DAY_MS - Date.UTC(date.getUTCFullYear(), 0, 1)) / DAY_MS);
};

/** Extraterrestrial irradiation of a date (days since 1970) at a latitude, Wh/m2. */
export const dailyAbove = (day: number, latitudeDeg: number): number => {
  const n = dayOfYear(day);
  return dailyExtraterrestrial(latitudeDeg, spencerDeclinationDeg(n), SOLAR_CONSTANT * sunDistanceFactor(n));
};

const dateOf = (day: number): string => isoDate(day * DAY_MS);

/**
 * The days of a table that is stamped by dates.
 *
 * @throws PlanError with every fault: dates out of order or doubled, sums that can't be, holes of more than 3 days
 */
export const dailySeriesOf = (
  table: WeatherTable,
  { latitudeDeg }: WeatherPlace,
  file: string,
  faults: RowProblems,
): DailySeries => {
  const known = table.stamp.filter((day) => !Number.isNaN(day));
  const firstDay = known.reduce((least, day) => Math.min(least, day), Number.POSITIVE_INFINITY);
  const lastDay = known.reduce((most, day) => Math.max(most, day), Number.NEGATIVE_INFINITY);
  const length = lastDay - firstDay + 1;
  if (known.length === 0 || length > MOST_ROWS || length > 20 * known.length + 366) {
    const span = known.length === 0 ? "no date" : `${dateOf(firstDay)} to ${dateOf(lastDay)}`;
    throw new PlanError([
      { path: `${file} date`, value: span, allowed: "must be dates that follow each other" },
      ...faults.problems(),
    ]);
  }
  const row = new Int32Array(length);
  const globalWh = new Float64Array(length).fill(Number.NaN);
  const airC = new Float64Array(length).fill(Number.NaN);
  const windMs = new Float64Array(length).fill(Number.NaN);
  const light = table.columns.get("global");
  // A day's mean irradiance over 24 hours is its sum.
  const scale = light?.of === "energy" ? 1 : 24;
  let before = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < table.length; i += 1) {
    const day = table.stamp[i];
    const fileRow = table.row[i];
    if (Number.isNaN(day)) continue;
    const at = day - firstDay;
    if (row[at] > 0) {
      faults.add(fileRow, dateOf(day), {
        column: "date",
        allowed: "must not stand twice",
        hint: `it stands in row ${row[at]} too`,
      });
      continue;
    }
    if (day < before) {
      faults.add(fileRow, dateOf(day), {
        column: "date",
        allowed: "must come after the row before",
        hint: "sort the rows by date",
      });
    }
    before = day;
    row[at] = fileRow;
    airC[at] = table.columns.get("airC")?.values[i] ?? Number.NaN;
    windMs[at] = table.columns.get("windMs")?.values[i] ?? Number.NaN;
    const sum = (light?.values[i] ?? Number.NaN) * scale;
    const most = MOST_SHARE * dailyAbove(day, latitudeDeg) + ALLOWANCE_WH;
    if (sum < 0 || sum > most) {
      faults.add(fileRow, Math.round(sum), {
        column: "ghi",
        kind: sum < 0 ? "negative" : "most",
        allowed: `must be 0 to ${Math.round(most)} Wh/m2, what the sun gives that day`,
        hint: "is the unit in the header right: ghi_Wh_m2, ghi_kWh_m2 or ghi_MJ_m2?",
      });
    }
    globalWh[at] = sum;
  }
  // Holes are filled by clearness, so that a hole near a solstice does not bend the course of the year.
  const clearness = globalWh.map((sum, at) => sum / Math.max(1, dailyAbove(firstDay + at, latitudeDeg)));
  const { filled, open } = bridgeHoles(clearness, LONGEST_GAP_DAYS);
  const problems: Problem[] = [...faults.problems()];
  for (const [first, end] of open) {
    problems.push({
      path: `${file} ghi`,
      value: `missing from ${dateOf(firstDay + first)} to ${dateOf(firstDay + end - 1)}`,
      allowed: `must have no hole of more than ${LONGEST_GAP_DAYS} days`,
      hint: "take another year or station, or put its days in for that time",
    });
  }
  if (problems.length > 0) throw new PlanError(problems);
  bridgeHoles(airC, LONGEST_GAP_DAYS);
  bridgeHoles(windMs, LONGEST_GAP_DAYS);
  const remarks = filled > 0 ? [`${filled} of ${length} days had no sum and were filled in`] : [];
  return {
    kind: "days",
    firstDay,
    length,
    globalWh: clearness.map((share, at) => share * Math.max(1, dailyAbove(firstDay + at, latitudeDeg))),
    ...(airC.every(Number.isNaN) ? {} : { airC }),
    ...(windMs.every(Number.isNaN) ? {} : { windMs }),
    mending: { filled, zeroed: 0, ignoredColumns: table.ignoredColumns, remarks },
  };
};
