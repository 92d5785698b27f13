import { expect, it } from "vitest";
import {
  latitudeTilt,
  lorenzoRelativeLight,
  lorenzoTilt,
  noonTilt,
  summerTilt,
  winterTilt,
} from "../../lib/stand/angle-rules.ts";

it("the rules that go by latitude are the same in both hemispheres and stay between flat and upright", () => {
  for (const side of [1, -1]) {
    expect([50, 10, 80].map((latitude) => latitudeTilt(side * latitude))).toEqual([50, 10, 80]);
    expect([50, 10, 80].map((latitude) => summerTilt(side * latitude))).toEqual([35, 0, 65]);
    expect([50, 10, 80].map((latitude) => winterTilt(side * latitude))).toEqual([65, 25, 90]);
    // 3.7 + 0.69 x 50
    expect(lorenzoTilt(side * 50)).toBeCloseTo(38.2, 12);
  }
});

it("square to the noon sun: latitude less declination, seen from the equator's side", () => {
  expect(noonTilt(45, 23.44)).toBeCloseTo(21.56, 12);
  expect(noonTilt(45, -23.44)).toBeCloseTo(68.44, 12);
  expect(noonTilt(-45, 23.44)).toBeCloseTo(68.44, 12);
  expect(noonTilt(-45, -23.44)).toBeCloseTo(21.56, 12);
  expect(noonTilt(0, -10)).toBe(10);
  // The noon sun stands on the far side of the zenith.
  expect(noonTilt(10, 20)).toBe(0);
});

it("light lost away from the optimum", () => {
  expect(lorenzoRelativeLight(30, 30)).toBe(1);
  // 1 + 4.46e-4 x 20 - 1.19e-4 x 400 = 1 + 0.00892 - 0.0476; below: 1 - 0.00892 - 0.0476
  expect(lorenzoRelativeLight(50, 30)).toBeCloseTo(0.96132, 12);
  expect(lorenzoRelativeLight(10, 30)).toBeCloseTo(0.94348, 12);
});
