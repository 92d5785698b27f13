import { describe, expect, test } from "vitest";
import { clockProblem, clockSlip } from "../../../lib/sky/weather/read/clock.ts";
import type { WeatherGrid } from "../../../lib/sky/weather/read/grid.ts";
import { equationOfTimeMinutes } from "../../../lib/sun/orbit.ts";

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

interface Made {
  readonly days?: number;
  readonly intervalMinutes?: number;
  /** Minutes after solar noon at which the light of every day has its middle. */
  readonly late?: number;
  readonly longitudeDeg?: number;
  /** Light of a day's middle interval, W/m2, by day. */
  readonly peak?: (day: number) => number;
}

/** Light as a triangle of twelve hours about noon: its middle is known by making. */
const gridOf = ({
  days = 30,
  intervalMinutes = 60,
  late = 0,
  longitudeDeg = 0,
  peak = () => 700,
}: Made): WeatherGrid => {
  const startMs = Date.UTC(2027, 5, 1);
  const length = (days * 1440) / intervalMinutes;
  const global = Float64Array.from({ length }, (_, i) => {
    const middleMs = startMs + (i + 0.5) * intervalMinutes * 60_000;
    const day = Math.floor((middleMs - startMs) / DAY_MS);
    const dayOfYear = 152 + day;
    const solarMs =
      middleMs + (longitudeDeg / 360) * DAY_MS + (equationOfTimeMinutes(dayOfYear) - late) * 60_000;
    const hour = (((solarMs % DAY_MS) + DAY_MS) % DAY_MS) / HOUR_MS;
    return Math.max(0, peak(day) * (1 - Math.abs(hour - 12) / 6));
  });
  return {
    intervalMinutes,
    startMs,
    length,
    row: new Int32Array(length),
    columns: new Map([["global", global]]),
  };
};

const PLACE = { latitudeDeg: 50, longitudeDeg: 0 };

describe("clockSlip", () => {
  test.each([0, -15, 25, 60, 200, -300, 600])("finds the middle of the light %d min late", (late) => {
    const slip = clockSlip(gridOf({ late }), PLACE);
    // A third of thirty days; the equation of time is taken for the day, not the hour.
    expect(slip?.days).toBe(10);
    expect(Math.abs((slip?.minutes ?? Number.NaN) - late)).toBeLessThan(1);
  });

  test.each([10, 30])("in intervals of %d min and at any longitude", (intervalMinutes) => {
    for (const longitudeDeg of [-120, 45, 170]) {
      const slip = clockSlip(gridOf({ intervalMinutes, longitudeDeg, late: 40 }), {
        latitudeDeg: 50,
        longitudeDeg,
      });
      expect(Math.abs((slip?.minutes ?? Number.NaN) - 40)).toBeLessThan(1);
    }
  });

  test("goes by the clearest third of the days", () => {
    // Every third day is bright and right; the others are dull with their light an hour late.
    const right = gridOf({ peak: (day) => (day % 3 === 0 ? 700 : 0) });
    const late = gridOf({ late: 60, peak: (day) => (day % 3 === 0 ? 0 : 200) });
    const both = right.columns
      .get("global")
      ?.map((light, i) => light + (late.columns.get("global")?.[i] ?? 0));
    if (both === undefined) throw new Error("expected light");
    const slip = clockSlip({ ...right, columns: new Map([["global", both]]) }, PLACE);
    expect(slip?.days).toBe(10);
    expect(Math.abs(slip?.minutes ?? Number.NaN)).toBeLessThan(1);
  });

  test("says nothing of a fortnight, of the dark, of days with holes, or of a file without light", () => {
    // Eight days are enough, and a third of 22 days is eight; of 21, seven.
    expect(clockSlip(gridOf({ days: 22 }), PLACE)?.days).toBe(8);
    expect(clockSlip(gridOf({ days: 21 }), PLACE)).toBeNull();
    expect(clockSlip(gridOf({ peak: () => 0 }), PLACE)).toBeNull();
    // No sun to speak of: June in the far south.
    expect(clockSlip(gridOf({}), { latitudeDeg: -75, longitudeDeg: 0 })).toBeNull();
    const holed = gridOf({});
    const light = holed.columns.get("global");
    for (let day = 0; day < 30; day += 1) light?.fill(Number.NaN, 24 * day + 10, 24 * day + 12);
    expect(clockSlip(holed, PLACE)).toBeNull();
    expect(clockSlip({ ...holed, columns: new Map() }, PLACE)).toBeNull();
  });

  test("a day may lack one reading", () => {
    const holed = gridOf({});
    const light = holed.columns.get("global");
    for (let day = 0; day < 30; day += 1) light?.fill(Number.NaN, 24 * day, 24 * day + 1);
    expect(clockSlip(holed, PLACE)?.days).toBe(10);
  });

  test("is the median of the days, also of an even count", () => {
    // Ten clearest days, five with the light right and five with it 20 min late: half-way between.
    const right = gridOf({ peak: (day) => (day < 5 ? 700 : 100) });
    const late = gridOf({ late: 20, peak: (day) => (day < 5 ? 700 : 100) });
    const [a, b] = [right, late].map(({ columns }) => columns.get("global") ?? new Float64Array());
    const mixed = a.map((light, i) => (Math.floor(i / 24) >= 25 ? b[i - 25 * 24] : light));
    const slip = clockSlip({ ...right, columns: new Map([["global", mixed]]) }, PLACE);
    expect(slip?.days).toBe(10);
    expect(slip?.minutes).toBeGreaterThan(5);
    expect(slip?.minutes).toBeLessThan(15);
  });
});

describe("clockProblem", () => {
  const hintOf = (
    late: number,
    stamps: "start" | "centre" | "end" = "end",
    intervalMinutes = 60,
    longitudeDeg = 0,
  ) =>
    clockProblem(
      gridOf({ late, intervalMinutes, longitudeDeg }),
      { latitudeDeg: 50, longitudeDeg },
      stamps,
      "w.csv",
    )?.hint?.split("; or ");
  const HILLS = "hills may hide the morning or evening sun: if the stamps are right, set checkClock to false";

  test("is none up to twenty minutes", () => {
    expect(clockProblem(gridOf({ late: 18 }), PLACE, "end", "w.csv")).toBeNull();
    expect(clockProblem(gridOf({ late: -18 }), PLACE, "end", "w.csv")).toBeNull();
    expect(clockProblem(gridOf({ days: 5, late: 90 }), PLACE, "end", "w.csv")).toBeNull();
  });

  test("is one from twenty minutes on: 24 minutes of light come from a wrong stamp, not from a hill", () => {
    expect(clockProblem(gridOf({ late: 24 }), PLACE, "end", "w.csv")).not.toBeNull();
    expect(clockProblem(gridOf({ late: -24 }), PLACE, "end", "w.csv")).not.toBeNull();
  });

  test("says by how much, and where the stamps are taken to stand", () => {
    expect(clockProblem(gridOf({ late: 45 }), PLACE, "end", "w.csv")).toMatchObject({
      path: "w.csv stamp",
      value: "light comes 45 min late against the sun on 10 clear days",
      allowed: "must be UTC, the end of each interval, at the site's longitude",
    });
    expect(clockProblem(gridOf({ late: -45 }), PLACE, "start", "w.csv")).toMatchObject({
      value: "light comes 45 min early against the sun on 10 clear days",
      allowed: "must be UTC, the start of each interval, at the site's longitude",
    });
  });

  test("names what would explain it, the closest first, and the hills last", () => {
    // Taken for ends, an hour early: they are starts, or an hour behind UTC.
    expect(hintOf(-60)).toEqual([
      'stamps look like interval starts: set stamps to "start"',
      "stamps look like local time, UTC-1: turn them into UTC",
      HILLS,
    ]);
    expect(hintOf(-30)).toEqual([
      'stamps look like interval centres: set stamps to "centre"',
      "stamps look like local time, UTC-0.5: turn them into UTC",
      HILLS,
    ]);
    expect(hintOf(60, "start")?.[0]).toBe('stamps look like interval ends: set stamps to "end"');
    // An hour and a half: no place of a stamp is so far off.
    expect(hintOf(90)).toEqual(["stamps look like local time, UTC+1.5: turn them into UTC", HILLS]);
    expect(hintOf(120, "end", 10)).toEqual(["stamps look like local time, UTC+2: turn them into UTC", HILLS]);
  });

  test("the wrong side of Greenwich: four minutes a degree, twice over", () => {
    // At 20 E light comes 160 min late by a clock that is right when the longitude is given as 20 W.
    expect(hintOf(160, "end", 60, 20)).toEqual([
      "the site's longitude may have the wrong sign: west is negative",
      "stamps look like local time, UTC+2.5: turn them into UTC",
      HILLS,
    ]);
    // Round the far side: 8 x 150 = 1200 min late is 240 min early.
    expect(hintOf(-240, "end", 60, 150)?.slice(0, 2)).toContain(
      "the site's longitude may have the wrong sign: west is negative",
    );
  });
});
