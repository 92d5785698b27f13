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

describe("Spencer's Fourier series, recovered from a year of days", () => {
  /** Mean, then cosine and sine of one, two and three turns a year: exact over 365 even steps. */
  const fourier = (series: (dayOfYear: number) => number): readonly number[] => {
    const days = Array.from({ length: 365 }, (_, i) => i + 1);
    const mean = (of: (day: number) => number) => days.reduce((sum, day) => sum + of(day), 0) / days.length;
    const turns = [1, 2, 3].flatMap((turn) =>
      [Math.cos, Math.sin].map(
        (wave) => 2 * mean((day) => series(day) * wave((turn * 2 * Math.PI * (day - 1)) / 365)),
      ),
    );
    return [mean(series), ...turns].map((coefficient) => Number(coefficient.toFixed(9)) + 0);
  };

  // Spencer 1971, Search 2(5), 172, as printed; the declination in radians, the equation of time over 229.18.
  test("distance factor", () => {
    expect(fourier(sunDistanceFactor)).toEqual([1.00011, 0.034221, 0.00128, 0.000719, 0.000077, 0, 0]);
  });

  test("declination", () => {
    expect(fourier((day) => (spencerDeclinationDeg(day) * Math.PI) / 180)).toEqual([
      0.006918, -0.399912, 0.070257, -0.006758, 0.000907, -0.002697, 0.00148,
    ]);
  });

  test("equation of time", () => {
    expect(fourier((day) => equationOfTimeMinutes(day) / 229.18)).toEqual([
      0.000075, 0.001868, -0.032077, -0.014615, -0.04089, 0, 0,
    ]);
  });
});

test("Cooper's sine is nought 284 days before the year's end and highest a quarter of a year on", () => {
  // sin(360 (284 + 81) / 365) = sin 360; (284 + 172.25) / 365 is a turn and a quarter.
  expect(cooperDeclinationDeg(81)).toBeCloseTo(0, 12);
  expect(cooperDeclinationDeg(172.25)).toBeCloseTo(23.45, 12);
  expect(cooperDeclinationDeg(354.75)).toBeCloseTo(-23.45, 12);
});

test("the docstrings' examples", () => {
  expect(dayAngle(1)).toBe(0);
  expect(sunDistanceFactor(3)).toBeCloseTo(1.0351, 4);
  expect(spencerDeclinationDeg(172)).toBeCloseTo(23.45, 2);
  expect(cooperDeclinationDeg(172)).toBeCloseTo(23.45, 2);
  expect(equationOfTimeMinutes(34)).toBeCloseTo(-13.5, 1);
});
