/** The open weather that travels with the project, read as a user's own file would be. */
import { readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { clearSkyColumns } from "../../../lib/sky/clear-sky-columns.ts";
import { clearAirOf } from "../../../lib/sky/turbidity.ts";
import { weatherSkyColumns, weatherYears } from "../../../lib/sky/weather/lay/weather-columns.ts";
import { clockSlip } from "../../../lib/sky/weather/read/clock.ts";
import { parseWeather } from "../../../lib/sky/weather/read/parse-weather.ts";
import type { IntervalSeries } from "../../../lib/sky/weather/read/series.ts";
import { sunColumns } from "../../../lib/sun/index.ts";

const textOf = (path: string): string => {
  const bytes = readFileSync(new URL(`../../../${path}`, import.meta.url));
  return (path.endsWith(".gz") ? gunzipSync(bytes) : bytes).toString("utf8");
};

const read = (
  path: string,
  place: { readonly latitudeDeg: number; readonly longitudeDeg: number },
): IntervalSeries => {
  const series = parseWeather(textOf(path), { place, file: path });
  if (series.kind !== "intervals") throw new Error("expected intervals");
  return series;
};

const yearKWh = ({ global, intervalMinutes }: IntervalSeries): number =>
  (global.reduce((sum, watts) => sum + watts, 0) * intervalMinutes) / 60_000;

const slipOf = (
  series: IntervalSeries,
  place: { readonly latitudeDeg: number; readonly longitudeDeg: number },
) =>
  clockSlip(
    { ...series, row: new Int32Array(series.length), columns: new Map([["global", series.global]]) },
    place,
  );

/** Mean global light, W/m2, worked out from the source files by an independent program (two printed decimals). */
const SHIPPED = [
  ["data/weather/north-sea-coast-reference-year", 115.94],
  ["data/weather/denver-typical-year", 190.66],
] as const;

describe.each(SHIPPED)("%s", (path, meanWm2) => {
  const { place, rows, timeConvention } = JSON.parse(textOf(`${path}.json`));
  const series = read(`${path}.csv`, place);
  const fileKWh = yearKWh(series);

  test("is read without a fault, as its sidecar says it is", () => {
    expect(series).toMatchObject({ length: rows, intervalMinutes: timeConvention.intervalMinutes });
    expect(series.mending).toEqual({ filled: 0, zeroed: 0, ignoredColumns: [], remarks: [] });
    expect(Math.abs(fileKWh - 8.76 * meanWm2)).toBeLessThanOrEqual(8.76 * 0.005);
  });

  test("has a clock that agrees with the sun", () => {
    // Clear days are symmetrical about noon within the weather of some forty days.
    expect(Math.abs(slipOf(series, place)?.minutes ?? Number.NaN)).toBeLessThan(3);
  });

  test("gives a whole year of any calendar its whole sum", () => {
    for (const year of [2027, 2028]) {
      const sun = sunColumns(
        { ...place, timeZone: "Etc/UTC" },
        { from: `${year}-01-01`, to: `${year}-12-31` },
      );
      const air = clearAirOf({ turbidity: "standard", ozoneCm: 0.32 }, place.elevationM);
      const clear = clearSkyColumns(sun, air, 0.2, { airC: 10, windMs: 2 });
      expect(weatherYears(series, sun)).toEqual([2001]);
      const sky = weatherSkyColumns(sun, series, clear, { latitudeDeg: place.latitudeDeg });
      const sum = sky.global.reduce((total, watts, row) => total + watts * sun.hours[row], 0) / 1000;
      // A leap year has one day more; light in hours when the sun's centre is down is 0.05 % and dropped.
      expect(sum / fileKWh).toBeGreaterThan(0.999);
      expect(sum / fileKWh).toBeLessThan(year === 2028 ? 1.004 : 1.0005);
      // The file's own parts make its whole.
      const parts = sky.diffuse.reduce(
        (total, watts, row) => total + (watts + sky.beamNormal[row] * sun.up[row]) * sun.hours[row],
        0,
      );
      expect(parts / 1000 / sum).toBeGreaterThan(0.99);
      expect(parts / 1000 / sum).toBeLessThan(1.01);
    }
  });
});

describe("measured files without their nights", () => {
  test("have the nights filled with nothing", () => {
    const place = { latitudeDeg: 55.79064, longitudeDeg: 12.52505 };
    const series = read("test/references/measured/lyngby-2016.csv.gz", place);
    // 1010 kWh/m2 by the source's own sanity figures, which leave 0.26 % of missing steps out.
    expect(Math.abs(yearKWh(series) / 1010 - 1)).toBeLessThan(0.005);
    expect(Math.abs(slipOf(series, place)?.minutes ?? Number.NaN)).toBeLessThan(3);
  });
});
