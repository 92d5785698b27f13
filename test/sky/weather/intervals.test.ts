import { describe, expect, test } from "vitest";
import { clearSkyColumns } from "../../../lib/sky/clear-sky-columns.ts";
import type { SkyColumns } from "../../../lib/sky/columns.ts";
import { erbsHourly } from "../../../lib/sky/diffuse-share/erbs.ts";
import { clearAirOf } from "../../../lib/sky/turbidity.ts";
import { weatherSkyColumns, weatherYears } from "../../../lib/sky/weather/lay/weather-columns.ts";
import type { IntervalSeries } from "../../../lib/sky/weather/read/series.ts";
import { type SunColumns, sunColumns } from "../../../lib/sun/index.ts";
import { complaintsOf } from "./problems.ts";

const HOUR_MS = 3_600_000;

const sunOf = (from: string, to: string, stepMinutes = 30, latitudeDeg = 52): SunColumns =>
  sunColumns({ latitudeDeg, longitudeDeg: 5, timeZone: "Etc/UTC" }, { from, to }, stepMinutes);

const clearOf = (sun: SunColumns): SkyColumns =>
  clearSkyColumns(sun, clearAirOf({ turbidity: "standard", ozoneCm: 0.32 }, 0), 0.2, { airC: 15, windMs: 2 });

/** Hours of light from midnight UTC of a date on. */
const series = (
  from: string,
  light: ArrayLike<number>,
  over: Partial<IntervalSeries> = {},
): IntervalSeries => ({
  kind: "intervals",
  intervalMinutes: 60,
  startMs: Date.parse(`${from}T00:00Z`),
  length: light.length,
  global: Float64Array.from(light),
  mending: { filled: 0, zeroed: 0, ignoredColumns: [], remarks: [] },
  ...over,
});

const filled = (hours: number, value: number): Float64Array => new Float64Array(hours).fill(value);

const lay = (sun: SunColumns, one: IntervalSeries, over = {}): SkyColumns =>
  weatherSkyColumns(sun, one, clearOf(sun), { latitudeDeg: 52, ...over });

describe("intervals laid onto a season", () => {
  const sun = sunOf("2027-06-20", "2027-06-21");
  /** Light that tells its hour. */
  const told = series(
    "2027-06-19",
    Array.from({ length: 96 }, (_, hour) => 100 + (hour % 24)),
  );

  test("a row wholly inside an interval has its light, one across two the mean of both by time", () => {
    const { global } = lay(sun, told);
    for (let row = 0; row < sun.length; row += 1) {
      const half = (sun.hours[row] * HOUR_MS) / 2;
      const [from, to] = [sun.timeMs[row] - half, sun.timeMs[row] + half];
      const [first, last] = [Math.floor(from / HOUR_MS), Math.floor((to - 1) / HOUR_MS)];
      const lit = (hour: number): boolean => {
        // Sunrise and sunset hours hold their light in the part that is lit; whole ones as it is.
        const day = sun.days[sun.day[row]];
        const rise = sun.timeMs[day.first] - (sun.hours[day.first] * HOUR_MS) / 2;
        const set = sun.timeMs[day.end - 1] + (sun.hours[day.end - 1] * HOUR_MS) / 2;
        return hour * HOUR_MS >= rise && (hour + 1) * HOUR_MS <= set;
      };
      if (!lit(first) || !lit(last)) continue;
      const edge = last * HOUR_MS;
      const light = (hour: number): number => 100 + (hour % 24);
      const expected =
        first === last
          ? light(first)
          : (light(first) * (edge - from) + light(last) * (to - edge)) / (to - from);
      expect(global[row]).toBeCloseTo(expected, 6);
    }
  });

  test("an interval cut by sunrise keeps its energy in the part that is lit", () => {
    const { global } = lay(sun, told);
    const day = sun.days[0];
    const rise = sun.timeMs[day.first] - (sun.hours[day.first] * HOUR_MS) / 2;
    const edge = Math.ceil(rise / HOUR_MS) * HOUR_MS;
    let wh = 0;
    for (let row = day.first; row < day.end; row += 1) {
      const half = (sun.hours[row] * HOUR_MS) / 2;
      const until = Math.min(edge, sun.timeMs[row] + half);
      const from = sun.timeMs[row] - half;
      if (from < edge && until === sun.timeMs[row] + half) wh += global[row] * sun.hours[row];
    }
    const hour = Math.floor(rise / HOUR_MS) % 24;
    // Rows that lie across the edge are left out of the sum: it holds at most the hour's energy and most of it.
    expect(wh).toBeLessThanOrEqual(100 + hour + 1e-6);
  });

  test("beam and diffuse: the file's own, what two of three leave over, or a published split", () => {
    const noon = (sun.days[0].first + sun.days[0].end) >> 1;
    const all = filled(96, 400);
    const base = series("2027-06-19", all);
    const both = lay(sun, { ...base, beamNormal: filled(96, 350), diffuse: filled(96, 150) });
    expect([both.beamNormal[noon], both.diffuse[noon], both.global[noon]].map(Math.round)).toEqual([
      350, 150, 400,
    ]);
    const level = lay(sun, { ...base, beamHorizontal: filled(96, 250) });
    expect(level.diffuse[noon]).toBeCloseTo(150, 9);
    expect((level.beamNormal[noon] * sun.up[noon]) / 250).toBeCloseTo(1, 1);
    const more = lay(sun, { ...base, beamHorizontal: filled(96, 450) });
    expect(more.diffuse[noon]).toBe(0);
    const normal = lay(sun, { ...base, beamNormal: filled(96, 200) });
    expect(normal.beamNormal[noon]).toBeCloseTo(200, 9);
    expect((normal.diffuse[noon] + 200 * sun.up[noon]) / 400).toBeCloseTo(1, 1);
    const diffuse = lay(sun, { ...base, diffuse: filled(96, 150) });
    expect((diffuse.beamNormal[noon] * sun.up[noon]) / 250).toBeCloseTo(1, 1);
    const allDiffuse = lay(sun, { ...base, diffuse: filled(96, 450) });
    expect(allDiffuse.beamNormal[noon]).toBe(0);
    const horizontal = lay(sun, { ...base, beamHorizontal: filled(96, 100), diffuse: filled(96, 250) });
    expect(horizontal.diffuse[noon]).toBeCloseTo(250, 9);
    expect((horizontal.beamNormal[noon] * sun.up[noon]) / 100).toBeCloseTo(1, 1);
    // Erbs's share of the light by its clearness, 400 W/m2 of some 1150 above the air.
    const split = lay(sun, base, { split: "erbs" });
    const clear = clearOf(sun);
    const clearness = 400 / (clear.extraterrestrial[noon] * sun.up[noon]);
    expect(split.diffuse[noon] / 400).toBeCloseTo(erbsHourly(clearness), 2);
    expect((split.beamNormal[noon] * sun.up[noon] + split.diffuse[noon]) / 400).toBeCloseTo(1, 1);
    expect(lay(sun, base).diffuse[noon]).not.toBeCloseTo(split.diffuse[noon], 1);
    expect([...lay(sun, base).diffuse]).toEqual([...lay(sun, base, { split: "engerer" }).diffuse]);
  });

  test("beam is never more than what arrives above the air", () => {
    const { beamNormal, extraterrestrial } = lay(sun, {
      ...series("2027-06-19", filled(96, 900)),
      beamNormal: filled(96, 1400),
    });
    for (let row = 0; row < sun.length; row += 1)
      expect(beamNormal[row]).toBeLessThanOrEqual(extraterrestrial[row]);
    expect(beamNormal[20]).toBe(extraterrestrial[20]);
  });

  test("air and wind of the interval; holes take the clear columns', wind comes down to the panel", () => {
    const holed = (value: number): Float64Array =>
      filled(96, value).map((one, hour) => (hour < 48 ? one : Number.NaN));
    const one = { ...series("2027-06-19", filled(96, 400)), airC: holed(21), windMs: holed(6) };
    const [a, b] = sun.days.map(({ first, end }) => (first + end) >> 1);
    const plain = lay(sun, one);
    expect([plain.airC[a], plain.airC[b]].map((value) => Math.round(value * 1e4) / 1e4)).toEqual([21, 15]);
    expect([plain.windMs[a], plain.windMs[b]].map((value) => Math.round(value * 1e4) / 1e4)).toEqual([6, 2]);
    const mast = lay(sun, one, { windHeightM: 10 });
    // FAO-56 eq. 47.
    expect(mast.windMs[a]).toBeCloseTo((6 * Math.log(28.48)) / Math.log(672.58), 6);
    expect(mast.windMs[b]).toBeCloseTo(2, 6);
  });

  test("what surrounds the light is the clear sky's, and a given sky is filled afresh", () => {
    const clear = clearOf(sun);
    const out = clearOf(sun);
    const filledSky = weatherSkyColumns(sun, told, clear, { latitudeDeg: 52 }, out);
    expect(filledSky).toBe(out);
    expect([...out.global]).toEqual([...lay(sun, told).global]);
    for (const column of ["extraterrestrial", "airMass", "albedo"] as const)
      expect([...out[column]]).toEqual([...clear[column]]);
    const dark = sunOf("2027-12-20", "2027-12-21", 60, 85);
    expect(weatherSkyColumns(dark, told, clearOf(dark), { latitudeDeg: 85 }).length).toBe(0);
  });
});

describe("a file of other years", () => {
  /** Two years and a half of daily changing light: 100 x year of the file + month. */
  const from = Date.UTC(2001, 0, 1);
  const long = series(
    "2001-01-01",
    Array.from({ length: 24 * 912 }, (_, hour) => {
      const date = new Date(from + hour * HOUR_MS);
      return 100 * (date.getUTCFullYear() - 2000) + date.getUTCMonth() + 1;
    }),
  );
  const noonLight = (season: readonly [string, string], over = {}): number => {
    const sun = sunOf(...season, 60);
    const { first, end } = sun.days[0];
    return Math.round(lay(sun, long, over).global[(first + end) >> 1]);
  };

  test("its whole years that hold the season, oldest first", () => {
    expect(weatherYears(long, sunOf("2027-02-01", "2027-02-03", 60))).toEqual([2001, 2002, 2003]);
    expect(weatherYears(long, sunOf("2027-08-01", "2027-08-03", 60))).toEqual([2001, 2002]);
    expect(weatherYears(long, sunOf("2027-12-30", "2028-01-02", 60))).toEqual([2001, 2002]);
    // The season's own year where the file has it.
    expect(noonLight(["2002-08-01", "2002-08-02"])).toBe(208);
    expect(noonLight(["2027-08-01", "2027-08-02"])).toBe(108);
    expect(noonLight(["2027-08-01", "2027-08-02"], { fileYear: 2002 })).toBe(208);
  });

  test("a single year serves a season over the new year by stepping over its edge", () => {
    const year = { ...long, length: 24 * 365, global: long.global.slice(0, 24 * 365) };
    const winter = sunOf("2027-12-30", "2028-01-02", 60);
    expect(weatherYears(year, winter)).toEqual([2001]);
    const light = lay(winter, year).global;
    const noons = winter.days.map(({ first, end }) => Math.round(light[(first + end) >> 1]));
    expect(noons).toEqual([112, 112, 101, 101]);
  });

  test("days that no year has are told with what the file holds", () => {
    const week = series("2001-06-01", filled(24 * 7, 300));
    expect(weatherYears(week, sunOf("2027-06-10", "2027-06-11", 60))).toEqual([]);
    const found = complaintsOf(() => lay(sunOf("2027-06-10", "2027-06-11", 60), week));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({
      path: "weather file",
      allowed: "must hold every day of the season; it runs from 2001-06-01T00:00Z to 2001-06-08T00:00Z",
      hint: "shorten the season, or take a file of a whole year",
    });
    expect(found[0].value).toMatch(/^no light for 2027-06-10T03:30Z to 2027-06-11T19:30Z$/);
    // The first and the last day are asked for as well as those between.
    expect(weatherYears(week, sunOf("2027-06-07", "2027-06-08", 60))).toEqual([]);
    expect(weatherYears(week, sunOf("2027-06-06", "2027-06-07", 60))).toEqual([2001]);
  });
});
