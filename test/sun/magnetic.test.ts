import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compassBearing, magneticDeclination, trueBearing } from "../../lib/sun/magnetic.ts";
import { turnBetween } from "../../lib/units/angle.ts";

describe("magneticDeclination", () => {
  test("names its edition and the dates it is valid for", () => {
    const north = magneticDeclination(52, 5, 0, Date.UTC(2027, 0, 1));
    expect(north.declinationDeg).toBeCloseTo(2.82, 2);
    expect(north).toMatchObject({ model: "WMM-2025", dateCovered: true, needle: "steady" });
    expect(new Date(north.validFromMs).getUTCFullYear()).toBe(2024);
    expect(new Date(north.validToMs).getUTCFullYear()).toBe(2029);
  });

  test("takes the nearest covered date outside every edition, and says so", () => {
    const late = magneticDeclination(52, 5, 0, Date.UTC(2040, 0, 1));
    expect(late.dateCovered).toBe(false);
    expect(late.declinationDeg).toBe(magneticDeclination(52, 5, 0, late.validToMs).declinationDeg);
    const early = magneticDeclination(52, 5, 0, Date.UTC(1990, 0, 1));
    expect(early.dateCovered).toBe(false);
    expect(early.declinationDeg).toBe(magneticDeclination(52, 5, 0, early.validFromMs).declinationDeg);
  });

  test("answers on every day between the first edition and the last", () => {
    fc.assert(
      fc.property(fc.integer({ min: Date.UTC(2014, 11, 16), max: Date.UTC(2029, 10, 12) }), (time) => {
        const north = magneticDeclination(-40, 175, 100, time);
        expect(north.dateCovered).toBe(true);
        expect(north.validFromMs).toBeLessThanOrEqual(time);
        expect(north.validToMs).toBeGreaterThanOrEqual(time);
      }),
    );
  });

  test("warns where a needle has too little to go by", () => {
    expect(magneticDeclination(86, 150, 0, Date.UTC(2027, 0, 1)).needle).toBe("useless");
    expect(magneticDeclination(78, -105, 0, Date.UTC(2027, 0, 1)).needle).not.toBe("steady");
  });

  test("is useless under 2000 nT of level field, unsteady under 6000, steady above", () => {
    // On a line towards the north magnetic pole the level part of the field falls to nothing.
    const at = (latitudeDeg: number) =>
      magneticDeclination(latitudeDeg, -100, 0, Date.UTC(2027, 0, 1)).needle;
    expect([50, 60, 72, 78].map(at)).toEqual(["steady", "steady", "unsteady", "unsteady"]);
  });

  test("covers both ends of its editions and nothing beyond", () => {
    const covered = (ms: number) => magneticDeclination(52, 5, 0, ms).dateCovered;
    const { validToMs } = magneticDeclination(52, 5, 0, Date.UTC(2040, 0, 1));
    expect([covered(validToMs - 1), covered(Date.UTC(2040, 0, 1))]).toEqual([true, false]);
    expect([covered(Date.UTC(2014, 11, 15, 7)), covered(Date.UTC(2014, 11, 15, 7) - 1)]).toEqual([
      true,
      false,
    ]);
  });

  test("counts height above the sea in metres", () => {
    // The field's source lies thousands of kilometres below: 5 km up changes the needle by hundredths of a degree.
    const [sea, high] = [0, 5000].map(
      (m) => magneticDeclination(60, -100, m, Date.UTC(2027, 0, 1)).declinationDeg,
    );
    expect(Math.abs(high - sea)).toBeGreaterThan(1e-4);
    expect(Math.abs(high - sea)).toBeLessThan(0.2);
  });

  test("refuses a time that is none", () => {
    expect(() => magneticDeclination(0, 0, 0, Number.POSITIVE_INFINITY)).toThrow(
      "magneticDeclination: expected UTC milliseconds, received Infinity",
    );
    expect(() => magneticDeclination(0, 0, 0, Number.NaN)).toThrow(RangeError);
  });
});

test("compass and true bearings undo each other", () => {
  expect(compassBearing(180, 10)).toBe(170);
  expect(trueBearing(355, 10)).toBe(5);
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 360, noNaN: true }),
      fc.double({ min: -180, max: 180, noNaN: true }),
      (bearing, declination) => {
        expect(
          turnBetween(bearing, trueBearing(compassBearing(bearing, declination), declination)),
        ).toBeCloseTo(0, 9);
      },
    ),
  );
});
