import { readFileSync } from "node:fs";
import { sum } from "d3";
import { airMassOfSine } from "../../lib/sky/air-mass.ts";
import { birdClearLight } from "../../lib/sky/bird.ts";
import { clearSkyColumns } from "../../lib/sky/clear-sky-columns.ts";
import { emptySkyColumns, type SkyColumns } from "../../lib/sky/columns.ts";
import { engererShare } from "../../lib/sky/diffuse-share/engerer.ts";
import { extraterrestrialNormal } from "../../lib/sky/extraterrestrial.ts";
import { clearAirOf } from "../../lib/sky/turbidity.ts";
import { weatherSkyColumns } from "../../lib/sky/weather/lay/weather-columns.ts";
import { parseWeather } from "../../lib/sky/weather/read/parse-weather.ts";
import type { IntervalSeries } from "../../lib/sky/weather/read/series.ts";
import { type SunColumns, sunColumns } from "../../lib/sun/index.ts";
import { measure, measuredLine, ratioLine } from "./measure.ts";

const DENVER = { latitudeDeg: 39.83, longitudeDeg: -104.65 } as const;
const AIR = clearAirOf({ turbidity: "standard", ozoneCm: 0.32 }, 1650);
const WEATHER = { airC: 15, windMs: 2 } as const;
const HOUR_MS = 3_600_000;

const dayOfYear = (timeMs: number): number =>
  1 + Math.floor((timeMs - Date.UTC(new Date(timeMs).getUTCFullYear(), 0, 1)) / (24 * HOUR_MS));

/** The clear sky as one would write it down first: each row on its own, an object for each answer. */
const straightforwardClear = (sun: SunColumns): number =>
  sum(Array.from(sun.timeMs.keys()), (row) => {
    const up = sun.up[row];
    const above = extraterrestrialNormal(dayOfYear(sun.timeMs[row]));
    return birdClearLight(above, up, airMassOfSine(up), AIR, 0.2).global;
  });

/** Hours of global light onto rows, as one would write it down first: for each row, its hour's rows are looked for. */
const straightforwardWeather = (sun: SunColumns, series: IntervalSeries, clear: SkyColumns): number => {
  const rowsOfHour = new Map<number, number[]>();
  sun.timeMs.forEach((timeMs, row) => {
    const hour = Math.floor(timeMs / HOUR_MS);
    rowsOfHour.set(hour, [...(rowsOfHour.get(hour) ?? []), row]);
  });
  const mean = (rows: readonly number[], of: (row: number) => number): number =>
    sum(rows, (row) => of(row) * sun.hours[row]) / sum(rows, (row) => sun.hours[row]);
  return sum(Array.from(sun.timeMs.keys()), (row) => {
    const timeMs = sun.timeMs[row];
    const rows = rowsOfHour.get(Math.floor(timeMs / HOUR_MS)) ?? [];
    const date = new Date(timeMs);
    const inFile = Date.UTC(2001, date.getUTCMonth(), date.getUTCDate(), date.getUTCHours());
    const at = ((((inFile - series.startMs) / HOUR_MS) % series.length) + series.length) % series.length;
    const global = series.global[at] / sum(rows, (each) => sun.hours[each]);
    const above = mean(rows, (each) => clear.extraterrestrial[each] * sun.up[each]);
    const clearGlobal = mean(rows, (each) => clear.global[each]);
    const sine = mean(rows, (each) => sun.up[each]);
    const solarHour = 12 + (timeMs - sun.days[sun.day[row]].noonMs) / HOUR_MS;
    const zenithDeg = 90 - (Math.asin(sine) * 180) / Math.PI;
    const share = engererShare(Math.min(1, global / above), clearGlobal / above, solarHour, zenithDeg);
    return (global * (1 - share)) / sine + share * global;
  });
};

/** Clear sky and weather file over a year of 10-minute rows, against the straightforward version of each. */
export const benchSky = (): readonly string[] => {
  const sun = sunColumns({ ...DENVER, timeZone: "America/Denver" }, { from: "2027-01-01", to: "2027-12-31" });
  const text = readFileSync(new URL("../../data/weather/denver-typical-year.csv", import.meta.url), "utf8");
  const clear = clearSkyColumns(sun, AIR, 0.2, WEATHER);
  const out = emptySkyColumns(sun.length);
  const whole = parseWeather(text, { place: DENVER });
  if (whole.kind !== "intervals") throw new Error("expected a file of hours");
  const { beamNormal, diffuse, ...global } = whole;
  const options = { latitudeDeg: DENVER.latitudeDeg } as const;
  const runs = measure([
    { name: "clear sky, straightforward", run: () => straightforwardClear(sun) },
    { name: "clear sky columns", run: () => sum(clearSkyColumns(sun, AIR, 0.2, WEATHER, out).global) },
    { name: "global from hours, straightforward", run: () => straightforwardWeather(sun, global, clear) },
    {
      name: "weather columns from global alone, Engerer",
      run: () => sum(weatherSkyColumns(sun, global, clear, options, out).global),
    },
    {
      name: "weather columns from beam, diffuse and global",
      run: () => sum(weatherSkyColumns(sun, whole, clear, options, out).global),
    },
    {
      name: "reading and checking the file, 8760 rows",
      run: () => parseWeather(text, { place: DENVER }).length,
    },
  ]);
  const [plainClear, fastClear, plainWeather, fastWeather, , reading] = runs.map(({ leastMs }) => leastMs);
  return [
    `A year of sky, 10-minute steps, ${sun.length} daylight rows:`,
    ...runs.map(measuredLine),
    ratioLine("clear sky, straightforward / columns", plainClear / fastClear, 1.5, "at least"),
    ratioLine("weather, straightforward / columns", plainWeather / fastWeather, 3, "at least"),
    `  clear sky, one row: ${((fastClear * 1e6) / sun.length).toFixed(0)} ns; weather, one row: ${((fastWeather * 1e6) / sun.length).toFixed(0)} ns; reading, one row: ${((reading * 1e6) / 8760).toFixed(0)} ns`,
  ];
};
