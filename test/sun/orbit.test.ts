import { Body, Equator, GeoVector, Observer } from "astronomy-engine";
import { describe, expect, test } from "vitest";
import {
  cooperDeclinationDeg,
  dayAngle,
  equationOfTimeMinutes,
  spencerDeclinationDeg,
  sunDistanceFactor,
} from "../../lib/sun/orbit.ts";

const DAY_MS = 86_400_000;
const CENTRE = new Observer(0, 0, 0);

/** The largest difference over every noon of four years, so that the leap day's slip is in it. */
const worst = (difference: (dayOfYear: number, date: Date) => number): number => {
  let most = 0;
  for (const year of [2025, 2026, 2027, 2028])
    for (let day = 1; day <= (year === 2028 ? 366 : 365); day++)
      most = Math.max(most, Math.abs(difference(day, new Date(Date.UTC(year, 0, 0, 12) + day * DAY_MS))));
  return most;
};

describe("the orbit's series against astronomy-engine, 2025 to 2028", () => {
  test("distance factor within 0.0011", () => {
    expect(
      worst((day, date) => sunDistanceFactor(day) - 1 / GeoVector(Body.Sun, date, true).Length() ** 2),
    ).toBeLessThan(0.0011);
  });

  test("Spencer's declination within 0.6 degrees, Cooper's within 1.6", () => {
    const declination = (date: Date) => Equator(Body.Sun, date, CENTRE, true, true).dec;
    expect(worst((day, date) => spencerDeclinationDeg(day) - declination(date))).toBeLessThan(0.6);
    expect(worst((day, date) => cooperDeclinationDeg(day) - declination(date))).toBeLessThan(1.6);
  });
});

test("the docstrings' examples", () => {
  expect(dayAngle(1)).toBe(0);
  expect(sunDistanceFactor(3)).toBeCloseTo(1.0351, 4);
  expect(spencerDeclinationDeg(172)).toBeCloseTo(23.45, 2);
  expect(cooperDeclinationDeg(172)).toBeCloseTo(23.45, 2);
  expect(equationOfTimeMinutes(34)).toBeCloseTo(-13.5, 1);
});
