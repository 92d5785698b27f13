import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clearSkyColumns } from "../../../lib/sky/clear-sky-columns.ts";
import { emptySkyColumns, type SkyColumns } from "../../../lib/sky/columns.ts";
import { clearAirOf } from "../../../lib/sky/turbidity.ts";
import {
  weatherSkyColumns,
  weatherStepAir,
  weatherYears,
} from "../../../lib/sky/weather/lay/weather-columns.ts";
import type { DailySeries, IntervalSeries } from "../../../lib/sky/weather/read/series.ts";
import { type SunColumns, sunColumns } from "../../../lib/sun/index.ts";
import { PlanError } from "../../../lib/units/problem.ts";

const NOTHING_MENDED = { filled: 0, zeroed: 0, ignoredColumns: [], remarks: [] };
const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

const sunOf = (latitudeDeg: number, longitudeDeg: number, from: string, to: string, stepMinutes: number) =>
  sunColumns({ latitudeDeg, longitudeDeg, timeZone: "Etc/UTC" }, { from, to }, stepMinutes);

const clearOf = (sun: SunColumns): SkyColumns =>
  clearSkyColumns(sun, clearAirOf({ turbidity: "standard", ozoneCm: 0.32 }, 0), 0.2, { airC: 15, windMs: 2 });

const seriesOf = (from: string, intervalMinutes: number, global: Float64Array): IntervalSeries => ({
  kind: "intervals",
  intervalMinutes,
  startMs: Date.parse(from),
  length: global.length,
  global,
  mending: NOTHING_MENDED,
});

const energy = (sun: SunColumns, watts: Float64Array): number =>
  watts.reduce((sum, each, row) => sum + each * sun.hours[row], 0);

/** A file's energy in the intervals that some row of the season lies in, plainly worked out. */
const litEnergy = (sun: SunColumns, series: IntervalSeries): number => {
  let sum = 0;
  for (let i = 0; i < series.length; i += 1) {
    const from = series.startMs + i * series.intervalMinutes * 60_000;
    const to = from + series.intervalMinutes * 60_000;
    const lit = sun.timeMs.some((ms, row) => {
      const half = (sun.hours[row] * HOUR_MS) / 2;
      return ms - half < to && ms + half > from;
    });
    if (lit) sum += (series.global[i] * series.intervalMinutes) / 60;
  }
  return sum;
};

const splits = fc.constantFrom("engerer", "erbs", "ridley", "reindl");

describe("weatherSkyColumns", () => {
  test("keeps the energy of every interval that has daylight, for any step, interval, place and sky", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -65, max: 65 }),
        fc.integer({ min: -180, max: 180 }),
        fc.constantFrom(1, 5, 10, 15, 30, 60),
        fc.constantFrom(5, 6, 10, 15, 20, 30, 60),
        fc.array(fc.double({ min: 0, max: 900, noNaN: true }), { minLength: 48, maxLength: 48 }),
        splits,
        (latitudeDeg, longitudeDeg, step, interval, light, split) => {
          const sun = sunOf(latitudeDeg, longitudeDeg, "2027-04-10", "2027-04-11", step);
          const perDay = 1440 / interval;
          const global = Float64Array.from({ length: 5 * perDay }, (_, i) => light[i % light.length]);
          const series = seriesOf("2027-04-08T00:00:00Z", interval, global);
          const sky = weatherSkyColumns(sun, series, clearOf(sun), { latitudeDeg, split });
          // 1e-9: sums of thousands of rounded products.
          expect(energy(sun, sky.global) / litEnergy(sun, series)).toBeCloseTo(1, 9);
          for (let row = 0; row < sun.length; row += 1) {
            expect(sun.up[row]).toBeGreaterThan(0);
            expect(sky.beamNormal[row]).toBeGreaterThanOrEqual(0);
            expect(sky.beamNormal[row]).toBeLessThanOrEqual(sky.extraterrestrial[row]);
            expect(sky.diffuse[row]).toBeGreaterThanOrEqual(0);
            expect(sky.diffuse[row]).toBeLessThanOrEqual(sky.global[row] * (1 + 1e-12));
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  test("in midnight sun the hours outside the season stay outside", () => {
    const sun = sunOf(78, 15.5, "2027-06-20", "2027-06-22", 10);
    const series = seriesOf("2027-06-01T00:00:00Z", 60, new Float64Array(24 * 40).fill(100));
    const sky = weatherSkyColumns(sun, series, clearOf(sun), { latitudeDeg: 78 });
    // Three whole solar days of 100 W/m2; the seam between two days is 13 s in June.
    expect(energy(sun, sky.global)).toBeGreaterThan(7200 - 3);
    expect(energy(sun, sky.global)).toBeLessThan(7200 + 3);
  });

  test("beam and diffuse that a file states are kept, each by its own energy", () => {
    const sun = sunOf(52, 5, "2027-06-20", "2027-06-20", 10);
    const hours = 72;
    const all = (value: number) => new Float64Array(hours).fill(value);
    const series = {
      ...seriesOf("2027-06-19T00:00:00Z", 60, all(400)),
      beamNormal: all(350),
      diffuse: all(150),
    };
    const sky = weatherSkyColumns(sun, series, clearOf(sun), { latitudeDeg: 52 });
    const noon = sun.length >> 1;
    expect([sky.global[noon], sky.beamNormal[noon], sky.diffuse[noon]]).toEqual([
      expect.closeTo(400, 9),
      expect.closeTo(350, 9),
      expect.closeTo(150, 9),
    ]);
  });

  test("beam on the horizontal is turned towards the sun; global and beam alone leave the diffuse", () => {
    const sun = sunOf(52, 5, "2027-06-20", "2027-06-20", 10);
    const all = (value: number) => new Float64Array(72).fill(value);
    const base = seriesOf("2027-06-19T00:00:00Z", 60, all(400));
    const noon = sun.length >> 1;
    const level = weatherSkyColumns(sun, { ...base, beamHorizontal: all(250) }, clearOf(sun), {
      latitudeDeg: 52,
    });
    expect(level.diffuse[noon]).toBeCloseTo(150, 9);
    // The hour's mean sine stands for each row's: half a per cent at noon.
    expect((level.beamNormal[noon] * sun.up[noon]) / 250).toBeCloseTo(1, 2);
    const normal = weatherSkyColumns(sun, { ...base, beamNormal: all(200) }, clearOf(sun), {
      latitudeDeg: 52,
    });
    expect(normal.diffuse[noon] + 200 * sun.up[noon]).toBeCloseTo(400, -1);
    const diffuse = weatherSkyColumns(sun, { ...base, diffuse: all(150) }, clearOf(sun), { latitudeDeg: 52 });
    expect((diffuse.beamNormal[noon] * sun.up[noon]) / 250).toBeCloseTo(1, 2);
  });

  test("holes in beam, air or wind are stood in for", () => {
    const sun = sunOf(52, 5, "2027-06-20", "2027-06-20", 10);
    const holes = new Float64Array(72).fill(Number.NaN);
    const base = seriesOf("2027-06-19T00:00:00Z", 60, new Float64Array(72).fill(300));
    const plain = weatherSkyColumns(sun, base, clearOf(sun), { latitudeDeg: 52 });
    const holed = { ...base, beamNormal: holes, diffuse: holes, airC: holes, windMs: holes };
    const sky = weatherSkyColumns(sun, holed, clearOf(sun), { latitudeDeg: 52 });
    expect(sky.beamNormal).toEqual(plain.beamNormal);
    // Milliseconds since 1970 leave a row of half a minute its length to 1e-8.
    expect(sky.airC.every((value) => Math.abs(value - 15) < 1e-6)).toBe(true);
    expect(sky.windMs.every((value) => Math.abs(value - 2) < 1e-6)).toBe(true);
  });

  test("wind from a mast is brought down to the panel (FAO-56 eq. 47: 0.514 of the wind at 10 m blows at half a metre)", () => {
    const sun = sunOf(52, 5, "2027-06-20", "2027-06-20", 10);
    const base = seriesOf("2027-06-19T00:00:00Z", 60, new Float64Array(72).fill(300));
    const series = { ...base, windMs: new Float64Array(72).fill(5) };
    const atPanel = weatherSkyColumns(sun, series, clearOf(sun), { latitudeDeg: 52 });
    expect(atPanel.windMs[40]).toBeCloseTo(5, 6);
    const onMast = weatherSkyColumns(sun, series, clearOf(sun), { latitudeDeg: 52, windHeightM: 10 });
    // ln(67.8 x 0.5 - 5.42) / ln(67.8 x 10 - 5.42)
    expect(onMast.windMs[40] / 5).toBeCloseTo(Math.log(28.48) / Math.log(672.58), 6);
  });

  test("albedo, air mass and extraterrestrial light are the clear sky's", () => {
    const sun = sunOf(52, 5, "2027-06-20", "2027-06-20", 10);
    const clear = clearOf(sun);
    const series = seriesOf("2027-06-19T00:00:00Z", 60, new Float64Array(72).fill(300));
    const sky = weatherSkyColumns(sun, series, clear, { latitudeDeg: 52 });
    expect(sky.albedo).toEqual(clear.albedo);
    expect(sky.airMass).toEqual(clear.airMass);
    expect(sky.extraterrestrial).toEqual(clear.extraterrestrial);
    const out = emptySkyColumns(sun.length);
    expect(weatherSkyColumns(sun, series, clear, { latitudeDeg: 52 }, out)).toBe(out);
    expect(out.global).toEqual(sky.global);
    expect(() => weatherSkyColumns(sun, series, emptySkyColumns(2), { latitudeDeg: 52 })).toThrow(RangeError);
  });
});

describe("a file of another year", () => {
  /** Light that tells its month and day: 100 x month + day. */
  const dated = (from: string, days: number, intervalMinutes = 60): IntervalSeries => {
    const startMs = Date.parse(from);
    const global = Float64Array.from({ length: (days * 1440) / intervalMinutes }, (_, i) => {
      const date = new Date(startMs + i * intervalMinutes * 60_000);
      return 100 * (date.getUTCMonth() + 1) + date.getUTCDate();
    });
    return seriesOf(from, intervalMinutes, global);
  };

  const datesSeen = (series: IntervalSeries, from: string, to: string, fileYear?: number): Set<number> => {
    const sun = sunOf(52, 5, from, to, 60);
    const slots = weatherSkyColumns(sun, series, clearOf(sun), {
      latitudeDeg: 52,
      ...(fileYear === undefined ? {} : { fileYear }),
    });
    // Rows well inside an interval with full light.
    return new Set(sun.days.map(({ first, end }) => Math.round(slots.global[(first + end) >> 1])));
  };

  test("is read by month, day and hour", () => {
    expect(datesSeen(dated("2001-01-01T00:00:00Z", 365), "2027-06-20", "2027-06-22")).toEqual(
      new Set([620, 621, 622]),
    );
  });

  test("29 February is read from the 28th where the file has none, and passed over where the season has none", () => {
    const common = dated("2001-01-01T00:00:00Z", 365);
    expect(datesSeen(common, "2028-02-28", "2028-03-01")).toEqual(new Set([228, 301]));
    const leap = dated("2000-01-01T00:00:00Z", 366);
    expect(datesSeen(leap, "2027-02-28", "2027-03-01")).toEqual(new Set([228, 301]));
    expect(datesSeen(leap, "2028-02-28", "2028-03-01")).toEqual(new Set([228, 229, 301]));
  });

  test("a year that starts in the local zone is stepped over its edge, either way", () => {
    for (const from of ["2001-01-01T07:00:00Z", "2000-12-31T14:00:00Z"]) {
      const sun = sunOf(40, -105, "2027-01-01", "2027-12-31", 60);
      const series = dated(from, 365);
      expect(weatherYears(series, sun)).toHaveLength(1);
      const sky = weatherSkyColumns(sun, series, clearOf(sun), { latitudeDeg: 40 });
      expect(sky.global.every((value) => value > 0)).toBe(true);
    }
  });

  test("a season over the new year", () => {
    expect(datesSeen(dated("2001-01-01T00:00:00Z", 365), "2027-12-30", "2028-01-02")).toEqual(
      new Set([1230, 1231, 101, 102]),
    );
  });

  test("several years give several seasons, each from its own year", () => {
    const startMs = Date.parse("2015-01-01T00:00:00Z");
    const days = 365 + 366 + 365;
    const global = Float64Array.from(
      { length: days * 24 },
      (_, i) => new Date(startMs + i * HOUR_MS).getUTCFullYear() - 1000,
    );
    const series = seriesOf("2015-01-01T00:00:00Z", 60, global);
    const summer = sunOf(52, 5, "2027-05-01", "2027-09-30", 60);
    expect(weatherYears(series, summer)).toEqual([2015, 2016, 2017]);
    // A winter season needs the year after, too.
    expect(weatherYears(series, sunOf(52, 5, "2027-10-01", "2028-03-31", 60))).toEqual([2015, 2016]);
    const clear = clearOf(summer);
    for (const fileYear of [2015, 2016, 2017]) {
      const sky = weatherSkyColumns(summer, series, clear, { latitudeDeg: 52, fileYear });
      expect(Math.round(sky.global[summer.length >> 1])).toBe(fileYear - 1000);
    }
    // The season's own year is taken where the file has it.
    const own = sunOf(52, 5, "2016-05-01", "2016-09-30", 60);
    const sky = weatherSkyColumns(own, series, clearOf(own), { latitudeDeg: 52 });
    expect(Math.round(sky.global[own.length >> 1])).toBe(1016);
  });

  test("days that no year of the file has are named", () => {
    const sun = sunOf(52, 5, "2027-04-01", "2027-06-30", 60);
    const series = dated("2001-05-01T00:00:00Z", 61);
    expect(weatherYears(series, sun)).toEqual([]);
    try {
      weatherSkyColumns(sun, series, clearOf(sun), { latitudeDeg: 52 });
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(PlanError);
      expect(String(error)).toContain("no light for 2027-04-01T");
      expect(String(error)).toContain("it runs from 2001-05-01T00:00Z to 2001-07-01T00:00Z");
    }
  });

  test("a polar night needs no light from the file", () => {
    const sun = sunOf(78, 15, "2027-12-01", "2027-12-31", 60);
    const series = dated("2001-05-01T00:00:00Z", 61);
    expect(weatherSkyColumns(sun, series, clearOf(sun), { latitudeDeg: 78 }).length).toBe(0);
  });
});

describe("a file of whole days", () => {
  const series: DailySeries = {
    kind: "days",
    firstDay: Date.UTC(2001, 0, 1) / DAY_MS,
    length: 365,
    globalWh: Float64Array.from({ length: 365 }, (_, i) => 500 + 6 * i),
    airC: new Float64Array(365).fill(8),
    mending: NOTHING_MENDED,
  };

  test("each day's sum is kept, and shared between beam and diffuse", () => {
    fc.assert(
      fc.property(fc.integer({ min: -60, max: 60 }), fc.constantFrom(5, 10, 60), (latitudeDeg, step) => {
        const sun = sunOf(latitudeDeg, 0, "2027-03-01", "2027-03-10", step);
        const sky = weatherSkyColumns(sun, series, clearOf(sun), { latitudeDeg });
        sun.days.forEach(({ first, end, dayOfYear }) => {
          let sum = 0;
          let parts = 0;
          for (let row = first; row < end; row += 1) {
            sum += sky.global[row] * sun.hours[row];
            parts += (sky.diffuse[row] + sky.beamNormal[row] * sun.up[row]) * sun.hours[row];
            expect(sky.beamNormal[row]).toBeLessThanOrEqual(sky.extraterrestrial[row]);
            expect(sky.diffuse[row]).toBeLessThanOrEqual(sky.global[row]);
            expect(sky.airC[row]).toBe(8);
            expect(sky.windMs[row]).toBe(2);
          }
          expect(sum).toBeCloseTo(series.globalWh[dayOfYear - 1], 6);
          expect(parts).toBeCloseTo(sum, 6);
        });
      }),
      { numRuns: 20 },
    );
  });

  test("missing days are named", () => {
    const sun = sunOf(52, 0, "2027-03-01", "2027-03-10", 60);
    const short = { ...series, length: 20, globalWh: series.globalWh.slice(0, 20) };
    expect(() => weatherSkyColumns(sun, short, clearOf(sun), { latitudeDeg: 52 })).toThrow(
      "no sums for 2027-03-01 to 2027-03-10",
    );
  });
});

describe("weatherStepAir", () => {
  const sun = sunOf(50, 0, "2027-01-10", "2027-01-11", 60);
  const hourly: IntervalSeries = {
    ...seriesOf("2027-01-01T00:00Z", 60, new Float64Array(24 * 31)),
    airC: Float64Array.from({ length: 24 * 31 }, (_, hour) => hour / 10),
  };

  test("knows the nights: every hour of every day, straight between the middles of the file's intervals", () => {
    const air = weatherStepAir(sun, hourly) ?? new Float64Array();
    expect(air).toHaveLength(48);
    const [{ startMs }] = sun.days;
    // The first step begins a quarter of an hour after solar midnight; its middle is 45 minutes after it.
    const hours = (startMs + 0.75 * HOUR_MS - Date.parse("2027-01-01T00:00Z")) / HOUR_MS;
    expect(air[0]).toBeCloseTo((hours - 0.5) / 10, 9);
    // The next solar day begins some seconds later by the clock.
    expect(air[30]).toBeCloseTo((hours + 30 - 0.5) / 10, 2);
  });

  test("a file without air knows none, a hole is a hole, and another year is read by month and day", () => {
    expect(weatherStepAir(sun, seriesOf("2027-01-01T00:00Z", 60, new Float64Array(24 * 31)))).toBeNull();
    const holed = {
      ...hourly,
      airC: hourly.airC?.map((c, hour) => (hour > 230 ? Number.NaN : c)) ?? new Float64Array(),
    };
    expect(Number.isNaN(weatherStepAir(sun, holed)?.[47])).toBe(true);
    const older = { ...hourly, startMs: Date.parse("2019-01-01T00:00Z") };
    expect(weatherStepAir(sun, older)).toEqual(weatherStepAir(sun, hourly));
  });

  test("a file of days gives each day's mean at its middle", () => {
    const days: DailySeries = {
      kind: "days",
      firstDay: Date.parse("2027-01-01") / DAY_MS,
      length: 31,
      globalWh: new Float64Array(31),
      airC: Float64Array.from({ length: 31 }, (_, day) => day),
      mending: NOTHING_MENDED,
    };
    const air = weatherStepAir(sun, days) ?? new Float64Array();
    const noon = 11;
    expect(air[noon]).toBeGreaterThan(8.9);
    expect(air[noon]).toBeLessThan(9.1);
    expect(air[noon + 24] - air[noon]).toBeCloseTo(1, 3);
  });
});
