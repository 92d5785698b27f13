import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { directionAtHourAngle, geometricDayHours, sunsetHourAngleDeg } from "../../lib/sun/hour-angle.ts";
import { sunVector } from "../../lib/sun/position.ts";
import { solarDays } from "../../lib/sun/solar-day.ts";
import { altitudeDegOf, bearingDegOf, declinationDegOf, unrefracted } from "./unrefracted.ts";

const latitude = fc.double({ min: -89, max: 89, noNaN: true });
const declination = fc.double({ min: -23.5, max: 23.5, noNaN: true });

describe("directionAtHourAngle", () => {
  test("is a unit vector, on the horizon at the sunset hour angle", () => {
    fc.assert(
      fc.property(
        latitude,
        declination,
        fc.double({ min: -180, max: 180, noNaN: true }),
        (lat, dec, hour) => {
          const { east, north, up } = directionAtHourAngle(lat, dec, hour);
          expect(Math.hypot(east, north, up)).toBeCloseTo(1, 12);
          const sunset = sunsetHourAngleDeg(lat, dec);
          if (sunset > 0 && sunset < 180) expect(directionAtHourAngle(lat, dec, sunset).up).toBeCloseTo(0, 6);
        },
      ),
    );
  });

  test("goes through the sun's own places, given its declination", () => {
    const place = { latitudeDeg: -34, longitudeDeg: 18.5, timeZone: "Africa/Johannesburg" };
    const [day] = solarDays(place, { from: "2027-02-10", to: "2027-02-10" });
    const noonMs = day?.noonMs ?? Number.NaN;
    for (const hours of [-5, -2, 0, 3, 6]) {
      const sun = unrefracted(sunVector(noonMs + hours * 3_600_000, place.latitudeDeg, place.longitudeDeg));
      const found = directionAtHourAngle(
        place.latitudeDeg,
        declinationDegOf(sun, place.latitudeDeg),
        15 * hours,
      );
      expect(found.up).toBeCloseTo(sun.up, 4); // the equation of time drifts by 1 s in 6 hours: 7e-5
      expect(found.east).toBeCloseTo(sun.east, 3);
    }
  });

  test("on an equinox at 60 N: rises due east, culminates 30 degrees up in the south, sets due west", () => {
    for (const [hourAngleDeg, direction] of [
      [-90, { east: 1, north: 0, up: 0 }],
      [0, { east: 0, north: -0.866025, up: 0.5 }],
      [90, { east: -1, north: 0, up: 0 }],
    ] as const) {
      const sun = directionAtHourAngle(60, 0, hourAngleDeg);
      expect(sun.east).toBeCloseTo(direction.east, 6);
      expect(sun.north).toBeCloseTo(direction.north, 6);
      expect(sun.up).toBeCloseTo(direction.up, 6);
    }
    // A star at 30 N seen from the pole stays 30 degrees up.
    expect(directionAtHourAngle(90, 30, 77).up).toBeCloseTo(0.5, 12);
  });

  test("gives its example", () => {
    const sun = directionAtHourAngle(43, -14, -37.5);
    expect(90 - altitudeDegOf(sun)).toBeCloseTo(66.5, 1);
    expect(bearingDegOf(sun)).toBeCloseTo(139.9, 1);
  });
});

describe("sunset and day length", () => {
  test("polar night has none, polar day the whole of it, the equator half", () => {
    expect(geometricDayHours(80, -20)).toBe(0);
    expect(geometricDayHours(80, 20)).toBeCloseTo(24, 12);
    expect(geometricDayHours(0, 13)).toBeCloseTo(12, 12);
  });

  test("give their examples", () => {
    expect(sunsetHourAngleDeg(43, 9.4)).toBeCloseTo(98.9, 1);
    expect(geometricDayHours(-22.9, 18.8)).toBeCloseTo(10.9, 1);
  });
});
