import { describe, expect, test } from "vitest";
import {
  hourOfDayDiffuse,
  hourOfDayGlobal,
  meanBeamRatio,
  meanDayOnPlane,
} from "../../lib/plane/mean-day.ts";

/** Hours of a day added up, a minute at a time. */
const wholeDay = (share: (hourAngleDeg: number) => number): number => {
  let sum = 0;
  for (let minute = 0.5; minute < 1440; minute += 1) sum += share((minute - 720) / 4) / 60;
  return sum;
};

describe("an hour's share of a day", () => {
  test.each([60, 75, 90, 105, 120, 150])(
    "adds up to the whole day with sunset at %d degrees",
    (sunsetDeg) => {
      // The diffuse form is the integral's own; the global one is a fit.
      expect(wholeDay((hour) => hourOfDayDiffuse(hour, sunsetDeg))).toBeCloseTo(1, 4);
      const global = wholeDay((hour) => hourOfDayGlobal(hour, sunsetDeg));
      expect(global).toBeGreaterThan(0.991);
      expect(global).toBeLessThan(1.013);
    },
  );

  test("is none with the sun down, and even about noon", () => {
    expect(hourOfDayDiffuse(91, 90)).toBe(0);
    expect(hourOfDayGlobal(91, 90)).toBe(0);
    expect(hourOfDayGlobal(-30, 100)).toBeCloseTo(hourOfDayGlobal(30, 100), 12);
  });

  test("at noon of an equinox, by hand", () => {
    // (pi / 24) (cos 0 - cos 90) / (sin 90 - (pi / 2) cos 90) = pi / 24
    expect(hourOfDayDiffuse(0, 90)).toBeCloseTo(0.1309, 5);
    // a = 0.409 + 0.5016 sin 30 = 0.6598; b = 0.6609 - 0.4767 sin 30 = 0.42255; (a + b) pi / 24
    expect(hourOfDayGlobal(0, 90)).toBeCloseTo(0.141679, 6);
  });
});

describe("meanBeamRatio", () => {
  test("is 1 on the flat, and 1 / cos(latitude) on an equinox at the latitude's tilt", () => {
    expect(meanBeamRatio(45, 13, 0)).toBeCloseTo(1, 12);
    expect(meanBeamRatio(45, 0, 45)).toBeCloseTo(Math.SQRT2, 9);
    expect(meanBeamRatio(-60, 0, 60)).toBeCloseTo(2, 9);
  });

  test("ends the plane's day when the sun goes behind it in summer", () => {
    // 40 N, declination 23.45, tilt 40: the plane lies as at the equator, its day 90 degrees to either side of noon.
    // Flat: sunset 111.345 = 1.943330 rad; 0.766044 x 0.917408 x 0.931406 + 1.943330 x 0.642788 x 0.397949 = 1.151670.
    expect(meanBeamRatio(40, 23.45, 40)).toBeCloseTo(0.917408 / 1.15167, 5);
  });

  test("is the same south of the equator half a year on", () => {
    expect(meanBeamRatio(-43, 20.9, 60)).toBeCloseTo(meanBeamRatio(43, -20.9, 60), 12);
    expect(meanBeamRatio(43, -20.9, 60)).toBeCloseTo(2.79, 2);
  });
});

test("a mean day on a plane: beam, dome and ground by hand", () => {
  const day = { latitudeDeg: 45, declinationDeg: 0, global: 10, diffuseShare: 0.4, albedo: 0.2 };
  expect(meanDayOnPlane(day, 0)).toBeCloseTo(10, 12);
  // 10 (0.6 x 1.414214 + 0.4 x (1 + 0.707107) / 2 + 0.2 x (1 - 0.707107) / 2)
  expect(meanDayOnPlane(day, 45)).toBeCloseTo(8.485281 + 3.414214 + 0.292893, 5);
  // All diffuse: half the dome and half the ground when upright.
  expect(meanDayOnPlane({ ...day, diffuseShare: 1 }, 90)).toBeCloseTo(5 + 1, 12);
});
