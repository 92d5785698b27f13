import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { directionOf, normalOf, otherReading, turnBetween, wrapBearing } from "../../lib/plan/index.ts";
import { clampedAcos, clampedAsin, toDegrees, toRadians } from "../../lib/units/angle.ts";

const degrees = fc.double({ min: -1e4, max: 1e4, noNaN: true });

describe("wrapBearing", () => {
  test.each([
    [-90, 270],
    [360, 0],
    [725, 5],
    [-1e-20, 0],
    [-360, 0],
  ])("%d becomes %d", (given, wrapped) => {
    expect(wrapBearing(given)).toBe(wrapped);
  });

  test("always lands in [0, 360)", () => {
    fc.assert(fc.property(degrees, (b) => wrapBearing(b) >= 0 && wrapBearing(b) < 360));
  });
});

test("turnBetween is the shortest way round", () => {
  expect(turnBetween(350, 10)).toBe(20);
  expect(turnBetween(10, 350)).toBe(-20);
  expect(turnBetween(0, 180)).toBe(180);
});

test("directions are unit vectors, and a flat plane looks straight up whatever its bearing", () => {
  fc.assert(
    fc.property(fc.double({ min: -90, max: 90, noNaN: true }), degrees, (altitude, bearing) => {
      const { east, north, up } = directionOf(altitude, bearing);
      expect(Math.hypot(east, north, up)).toBeCloseTo(1, 12);
      expect(normalOf({ tiltDeg: 0, bearingDeg: bearing }).up).toBeCloseTo(1, 12);
    }),
  );
  expect(directionOf(0, 90).east).toBeCloseTo(1, 12);
  expect(normalOf({ tiltDeg: 90, bearingDeg: 180 }).north).toBeCloseTo(-1, 12);
});

test("a half circle is pi radians", () => {
  expect(toRadians(180)).toBe(Math.PI);
  expect(toDegrees(Math.PI)).toBe(180);
});

test("a reading from the ground and one from the post sum to 90", () => {
  expect(otherReading(30) + 30).toBe(90);
});

test("inverse functions are clamped against rounding and let NaN through", () => {
  expect(clampedAcos(1 + 1e-15)).toBe(0);
  expect(clampedAcos(-1 - 1e-15)).toBe(Math.PI);
  expect(clampedAsin(1 + 1e-15)).toBe(Math.PI / 2);
  expect(clampedAsin(-2)).toBe(-Math.PI / 2);
  expect(clampedAcos(Number.NaN)).toBeNaN();
});
