import { describe, expect, test } from "vitest";
import type { WeatherGrid } from "../../../lib/sky/weather/read/grid.ts";
import type { Quantity } from "../../../lib/sky/weather/read/headers.ts";
import { type IntervalSun, intervalSun } from "../../../lib/sky/weather/read/interval-sun.ts";
import { checkAir, checkLimits, faintProblem } from "../../../lib/sky/weather/read/limits.ts";
import { RowProblems } from "../../../lib/sky/weather/read/row-problems.ts";
import { sunVector } from "../../../lib/sun/position.ts";

const gridOf = (columns: Partial<Record<Quantity, readonly number[]>>, intervalMinutes = 60): WeatherGrid => {
  const entries = Object.entries(columns) as [Quantity, readonly number[]][];
  const length = entries[0][1].length;
  return {
    intervalMinutes,
    startMs: Date.UTC(2027, 5, 1),
    length,
    // Every second row of the file, so that neighbours do not join into one complaint.
    row: Int32Array.from({ length }, (_, i) => 2 * i + 2),
    columns: new Map(entries.map(([quantity, values]) => [quantity, Float64Array.from(values)])),
  };
};

/** A sun by the base of its limits, W/m2; below 0 the sine of a sun that is down. */
const sunOf = (base: readonly number[]): IntervalSun => ({
  lit: Float64Array.from(base, (each) => (each > 0 ? 1 : 0)),
  highest: Float64Array.from(base, (each) => (each > 0 ? 0.5 : each)),
  above: Float64Array.from(base, (each) => Math.max(0, each)),
  limitBase: Float64Array.from(base, (each) => Math.max(0, each)),
});

const checked = (grid: WeatherGrid, sun: IntervalSun) => {
  const faults = new RowProblems("w.csv");
  return { zeroed: checkLimits(grid, sun, faults), problems: faults.problems() };
};

describe("checkLimits (Long & Dutton 2002)", () => {
  test("global light up to 1.5 x the base + 100 W/m2, diffuse to 0.95 x + 50, beam on the level as the global", () => {
    const sun = sunOf([400, 400, 400]);
    for (const [quantity, most, name] of [
      ["global", 700, "ghi"],
      ["diffuse", 430, "dhi"],
      ["beamHorizontal", 700, "beam_horizontal"],
    ] as const) {
      const { problems } = checked(gridOf({ [quantity]: [most, most + 0.1, most - 0.1] }), sun);
      expect(problems).toEqual([
        {
          path: `w.csv row 4 ${name}`,
          value: most + 0.1,
          allowed: `must be at most ${most} W/m2, for the sun in that interval`,
          hint: "is the unit W/m2, are the stamps UTC, and is the site the file's?",
        },
      ]);
    }
  });

  test("normal beam up to what arrives above the air in January", () => {
    const { problems } = checked(gridOf({ beamNormal: [1409, 1409.5] }), sunOf([10, 10]));
    expect(problems).toMatchObject([
      {
        path: "w.csv row 4 dni",
        allowed: "must be at most 1409 W/m2, for the sun in that interval",
      },
    ]);
  });

  test("small negative readings are a sensor's offset and become zero; below -4 W/m2 nothing is light", () => {
    const grid = gridOf({ global: [-4, -0.1, 0, -4.1] });
    const { zeroed, problems } = checked(grid, sunOf([-0.5, -0.5, 400, 400]));
    expect(zeroed).toBe(2);
    expect([...(grid.columns.get("global") ?? [])]).toEqual([0, 0, 0, -4.1]);
    expect(problems).toEqual([
      {
        path: "w.csv row 8 ghi",
        value: -4.1,
        allowed: "must not be below -4 W/m2",
        hint: "leave the field empty where nothing was measured",
      },
    ]);
  });

  test("at night, with the sun 3 degrees down, a sound sensor shows no more than 10 W/m2", () => {
    const { problems } = checked(gridOf({ global: [10, 10.5, 50] }), sunOf([-0.053, -0.053, -0.05]));
    expect(problems).toEqual([
      {
        path: "w.csv row 4 ghi",
        value: 10.5,
        allowed: "must be at most 10 W/m2 with the sun down",
        hint: "are the stamps UTC, and is the site the file's?",
      },
    ]);
  });

  test("holes are passed over, and each column is looked at", () => {
    const { zeroed, problems } = checked(
      gridOf({ global: [Number.NaN, -1], airC: [Number.NaN, 61], windMs: [76, Number.NaN] }),
      sunOf([400, 400]),
    );
    expect(zeroed).toBe(1);
    expect(problems).toEqual([
      {
        path: "w.csv row 2 wind",
        value: 76,
        allowed: "must be 0 to 75 m/s",
        hint: "km/h needs a header that says so: wind_km_h",
      },
      {
        path: "w.csv row 4 air",
        value: 61,
        allowed: "must be -90 to 60 degC",
        hint: "kelvin needs a header that says so: air_K",
      },
    ]);
  });
});

describe("checkAir", () => {
  test("takes the extremes on record and nothing beyond them", () => {
    const problemsOf = (airC: readonly number[], windMs: readonly number[]) => {
      const faults = new RowProblems("air.csv");
      checkAir(Float64Array.from(airC), Float64Array.from(windMs), Int32Array.of(2, 4), faults);
      return faults.problems().map(({ path }) => path);
    };
    expect(problemsOf([-90, 60], [0, 75])).toEqual([]);
    expect(problemsOf([-90.1, 60.1], [-0.1, 75.1])).toEqual([
      "air.csv row 2 air",
      "air.csv row 2 wind",
      "air.csv row 4 air",
      "air.csv row 4 wind",
    ]);
    const faults = new RowProblems("air.csv");
    checkAir(undefined, undefined, Int32Array.of(2), faults);
    expect(faults.problems()).toEqual([]);
  });
});

describe("faintProblem", () => {
  const faint = (share: number, hours: number, above = 500, intervalMinutes = 60) =>
    faintProblem(
      gridOf({ global: new Array<number>(hours).fill(share * above) }, intervalMinutes),
      sunOf(new Array<number>(hours).fill(above)),
      "w.csv",
    );

  test("thirty hours of fair sun with light below 5 % of what is above the air are no weather", () => {
    expect(faint(0.049, 30)).toEqual({
      path: "w.csv ghi",
      value: 24.5,
      allowed: "must somewhere be brighter than 5 % of the light above the air",
      hint: "is the unit right? kilowatts need a header that says so: ghi_kW_m2",
    });
    expect(faint(0.05, 30)).toBeNull();
    expect(faint(0.049, 29)).toBeNull();
    // Half hours count as such.
    expect(faint(0.049, 59, 500, 30)).toBeNull();
    expect(faint(0.049, 60, 500, 30)).not.toBeNull();
  });

  test("a low sun tells nothing, nor does a hole, and one bright hour is enough", () => {
    expect(faint(0.01, 100, 199)).toBeNull();
    expect(faint(0.01, 100, 200)).not.toBeNull();
    const global = new Array<number>(40).fill(5);
    const sun = sunOf(new Array<number>(40).fill(500));
    expect(faintProblem(gridOf({ global: global.with(7, 400) }), sun, "w.csv")).toBeNull();
    const holed = gridOf({ global: global.map((watts, i) => (i < 11 ? Number.NaN : watts)) });
    expect(faintProblem(holed, sun, "w.csv")).toBeNull();
    expect(faintProblem(gridOf({ diffuse: global }), sun, "w.csv")).toBeNull();
  });
});

describe("intervalSun", () => {
  const place = { latitudeDeg: 52, longitudeDeg: 5 };

  test("is the mean of looks every ten minutes, plainly worked out", () => {
    for (const intervalMinutes of [5, 10, 30, 60]) {
      const grid = { intervalMinutes, startMs: Date.UTC(2027, 2, 1), length: (24 * 60) / intervalMinutes };
      const sun = intervalSun(grid, place);
      const looks = Math.max(1, intervalMinutes / 10);
      for (let i = 0; i < grid.length; i += 1) {
        const ups = Array.from(
          { length: looks },
          (_, look) =>
            sunVector(
              grid.startMs + (i + (look + 0.5) / looks) * intervalMinutes * 60_000,
              place.latitudeDeg,
              place.longitudeDeg,
            ).up,
        );
        const lit = ups.filter((up) => up > 0);
        // 1 March: 1361 W/m2 x 1.0185 by Spencer 1971, day 60.
        const normal = 1386.2;
        const mean = (of: (up: number) => number): number =>
          lit.reduce((sum, up) => sum + normal * of(up), 0) / looks;
        expect(sun.lit[i]).toBeCloseTo(lit.length / looks, 12);
        expect(Math.abs(sun.above[i] - mean((up) => up))).toBeLessThan(0.5);
        expect(Math.abs(sun.limitBase[i] - mean((up) => up ** 1.2))).toBeLessThan(0.5);
        const highest = Math.max(...ups);
        // Deep night is told as such, not looked at in full.
        if (highest > -0.06) expect(sun.highest[i]).toBeCloseTo(highest, 12);
        else expect(sun.highest[i]).toBeLessThan(-0.06);
      }
    }
  });
});
