import { describe, expect, test } from "vitest";
import { NO_UNCERTAINTY } from "../../../lib/sky/climate/climate.ts";
import { dailyRangeK, MEAN_SHARE, warmthAt } from "../../../lib/sky/climate/day-temperature.ts";
import { fillClimateAir } from "../../../lib/sky/climate/days/climate-air.ts";
import { windShareAtHeight } from "../../../lib/sky/climate/wind-height.ts";
import { emptySkyColumns } from "../../../lib/sky/columns.ts";
import { sunColumns } from "../../../lib/sun/index.ts";

describe("warmthAt", () => {
  const minutes = Array.from({ length: 1440 }, (_, minute) => minute / 60);

  test("runs from 0 before dawn to 1 in mid-afternoon, every day alike", () => {
    const heights = minutes.map(warmthAt);
    expect(Math.min(...heights)).toBeCloseTo(0, 6);
    expect(Math.max(...heights)).toBeCloseTo(1, 6);
    // The published curve's own extremes (Erbs et al. 1983): lowest about 5:30, highest about 15.
    expect(minutes[heights.indexOf(Math.min(...heights))]).toBeCloseTo(5.5, 0);
    expect(minutes[heights.indexOf(Math.max(...heights))]).toBeCloseTo(15.1, 0);
    expect(warmthAt(27)).toBeCloseTo(warmthAt(3), 12);
  });

  test("has the day's mean where MEAN_SHARE says", () => {
    const mean = minutes.map(warmthAt).reduce((sum, height) => sum + height, 0) / 1440;
    expect(mean).toBeCloseTo(MEAN_SHARE, 9);
  });
});

describe("dailyRangeK", () => {
  test("is 25.8 K - 5.21 (Erbs, Klein & Beckman 1983, from memory), never below 2", () => {
    expect(dailyRangeK(0.5)).toBeCloseTo(7.69, 10);
    expect(dailyRangeK(0.2)).toBe(2);
  });
});

describe("windShareAtHeight", () => {
  test("brings 3.2 m/s at 10 m to 2.4 at 2 m (FAO-56, example 14, from memory)", () => {
    expect(3.2 * windShareAtHeight(10, 2)).toBeCloseTo(2.4, 1);
  });

  test("grows with height, is 1 at the anemometer, and holds at grass height", () => {
    expect(windShareAtHeight(10, 10)).toBe(1);
    expect(windShareAtHeight(10, 0.5)).toBeLessThan(windShareAtHeight(10, 1));
    expect(windShareAtHeight(10, 0)).toBe(windShareAtHeight(10, 0.2));
    expect(() => windShareAtHeight(0.1, 1)).toThrow("windShareAtHeight: expected a height of at least 0.2 m");
  });
});

describe("fillClimateAir", () => {
  const site = { latitudeDeg: 52, longitudeDeg: 5, timeZone: "Europe/Amsterdam" };
  const sun = sunColumns(site, { from: "2027-07-01", to: "2027-07-31" }, 30);
  const lowC = Array(12).fill(12);
  const highC = Array(12).fill(22);

  test("keeps the air between the low and the high, warmest about 15 h sun time", () => {
    const sky = emptySkyColumns(sun.length);
    const climate = {
      globalKWhM2: [],
      air: { lowC, highC },
      wind: { ms: Array(12).fill(4), heightM: 10 },
      uncertainty: NO_UNCERTAINTY,
    };
    fillClimateAir(sun, climate, sky);
    expect(Math.min(...sky.airC)).toBeGreaterThanOrEqual(12 - 1e-9);
    expect(Math.max(...sky.airC)).toBeLessThanOrEqual(22 + 1e-9);
    const { first, end, noonMs } = sun.days[10];
    const own = sky.airC.subarray(first, end);
    const warmest = sun.timeMs[first + own.indexOf(Math.max(...own))];
    expect((warmest - noonMs) / 3_600_000).toBeCloseTo(3.1, 0);
    // 4 m/s at 10 m comes to 2.06 at the panel's half metre.
    expect(sky.windMs[0]).toBeCloseTo(4 * 0.5144, 2);
  });

  test("leaves alone what the climate does not know", () => {
    const sky = emptySkyColumns(sun.length);
    sky.airC.fill(15);
    sky.windMs.fill(2);
    fillClimateAir(sun, { air: null, wind: null }, sky);
    expect(new Set([...sky.airC, ...sky.windMs])).toEqual(new Set([15, 2]));
  });
});
