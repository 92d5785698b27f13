import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkAim, cosIncidence, groundView, incidenceDeg, skyView } from "../../lib/plane/incidence.ts";
import { directionOf, normalOf } from "../../lib/units/angle.ts";
import { anyAim, anySun } from "./any-light.ts";

describe("incidenceDeg", () => {
  test("is 0 when the plane faces the sun, 90 on edge, 180 from behind", () => {
    expect(incidenceDeg(directionOf(60, 180), { tiltDeg: 30, bearingDeg: 180 })).toBeCloseTo(0, 5);
    expect(incidenceDeg(directionOf(0, 90), { tiltDeg: 90, bearingDeg: 180 })).toBeCloseTo(90, 10);
    expect(incidenceDeg(directionOf(0, 0), { tiltDeg: 90, bearingDeg: 180 })).toBeCloseTo(180, 5);
  });

  test("is the zenith angle on a flat plane, whatever its bearing", () => {
    fc.assert(
      fc.property(anySun, fc.double({ min: -720, max: 720, noNaN: true }), (sun, bearingDeg) => {
        expect(cosIncidence(sun, normalOf({ tiltDeg: 0, bearingDeg }))).toBeCloseTo(sun.up, 12);
      }),
    );
  });

  test("is the same for a bearing and a bearing turned once round", () => {
    fc.assert(
      fc.property(anySun, anyAim, (sun, { tiltDeg, bearingDeg }) => {
        const once = incidenceDeg(sun, { tiltDeg, bearingDeg });
        expect(incidenceDeg(sun, { tiltDeg, bearingDeg: bearingDeg + 360 })).toBeCloseTo(once, 5);
      }),
    );
  });

  test("lets NaN through", () => {
    expect(incidenceDeg({ east: Number.NaN, north: 0, up: 0 }, { tiltDeg: 30, bearingDeg: 180 })).toBeNaN();
  });
});

describe("views of sky and ground", () => {
  test("are the whole and nothing when flat, halves when upright, and sum to 1", () => {
    expect(skyView(0)).toBe(1);
    expect(groundView(0)).toBe(0);
    expect(skyView(90)).toBeCloseTo(0.5, 15);
    expect(skyView(60)).toBeCloseTo(0.75, 15);
    expect(groundView(60)).toBeCloseTo(0.25, 15);
    for (let tiltDeg = 0; tiltDeg <= 180; tiltDeg += 7.5) {
      expect(skyView(tiltDeg) + groundView(tiltDeg)).toBeCloseTo(1, 15);
    }
  });
});

describe("checkAim", () => {
  test("names the caller, what it expected and what it got", () => {
    expect(() => checkAim("here", { tiltDeg: 120, bearingDeg: 0 })).toThrow(
      new RangeError("here: expected tilt 0 to 90 degrees, received 120"),
    );
    expect(() => checkAim("here", { tiltDeg: -0.1, bearingDeg: 0 })).toThrow("received -0.1");
    expect(() => checkAim("here", { tiltDeg: Number.NaN, bearingDeg: 0 })).toThrow("received NaN");
    expect(() => checkAim("here", { tiltDeg: 30, bearingDeg: Number.POSITIVE_INFINITY })).toThrow(
      new RangeError("here: expected a finite bearing in degrees, received Infinity"),
    );
  });

  test("lets both ends of the range pass", () => {
    expect(() => checkAim("here", { tiltDeg: 0, bearingDeg: -90 })).not.toThrow();
    expect(() => checkAim("here", { tiltDeg: 90, bearingDeg: 720 })).not.toThrow();
  });
});
