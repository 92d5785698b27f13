import { expect, test } from "vitest";
import { meanOver, totalOver, totalWh } from "../../../lib/season/light/day-sums.ts";
import { bestEachDayWh } from "../../../lib/season/light/season-yield.ts";

const days = Float64Array.of(400, 500, 60, 7);

test("sums over a stretch, over all days, and their mean", () => {
  expect(totalOver(days, { first: 1, end: 3 })).toBe(560);
  expect(totalOver(days, { first: 2, end: 2 })).toBe(0);
  expect(totalWh(days)).toBe(967);
  expect(meanOver(days, { first: 1, end: 3 })).toBe(280);
  expect(meanOver(days, { first: 2, end: 2 })).toBeNaN();
});

test("a NaN among the days is not passed over", () => {
  const holed = Float64Array.of(400, Number.NaN, 60);
  expect(totalWh(holed)).toBeNaN();
  const setting = {
    setting: { name: "flat", legMm: null, tiltDeg: 0, bearingDeg: 180 },
    clearWh: holed,
    expectedWh: null,
    band: null,
    underEachSky: [],
  };
  expect(bestEachDayWh({ days: [], settings: [setting], best: new Uint8Array(3), weights: [] })).toBeNaN();
});
