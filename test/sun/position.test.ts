import { Body, Equator, Horizon, Observer } from "astronomy-engine";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sunVector } from "../../lib/sun/position.ts";
import { turnBetween } from "../../lib/units/angle.ts";
import { altitudeDegOf, bearingDegOf } from "./unrefracted.ts";

const DAY_MS = 86_400_000;

/** Degrees of great circle between ours and astronomy-engine's refracted topocentric sun. */
const errorDeg = (timeMs: number, latitudeDeg: number, longitudeDeg: number) => {
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const date = new Date(timeMs);
  const { ra, dec } = Equator(Body.Sun, date, observer, true, true);
  const theirs = Horizon(date, observer, ra, dec, "normal");
  const ours = sunVector(timeMs, latitudeDeg, longitudeDeg);
  const altitudeDeg = altitudeDegOf(ours);
  const acrossDeg =
    turnBetween(theirs.azimuth, bearingDegOf(ours)) * Math.cos((theirs.altitude * Math.PI) / 180);
  return { altitudeDeg: theirs.altitude, errorDeg: Math.hypot(acrossDeg, altitudeDeg - theirs.altitude) };
};

describe("sunVector", () => {
  // Series 0.01, refraction formula 0.003 above 5 degrees, the sun's own parallax 0.0024 that suncalc leaves out.
  test.each([-78, -66, -52, -35, -12, 0, 12, 35, 52, 66, 78])(
    "is within 0.02 degrees of astronomy-engine on every day of 2026 at latitude %i, above 5 degrees",
    (latitudeDeg) => {
      let worst = 0;
      let compared = 0;
      for (let day = 0; day < 365; day++) {
        for (let hour = day % 3; hour < 24; hour += 3) {
          const found = errorDeg(Date.UTC(2026, 0, 1) + day * DAY_MS + hour * 3_600_000, latitudeDeg, 17);
          if (found.altitudeDeg < 5) continue;
          compared++;
          worst = Math.max(worst, found.errorDeg);
        }
      }
      expect(compared).toBeGreaterThan(800);
      expect(worst).toBeLessThan(0.02);
    },
  );

  test("is a unit vector anywhere, any time, poles included", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -90, max: 90, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.integer({ min: Date.UTC(1950, 0, 1), max: Date.UTC(2100, 0, 1) }),
        (latitude, longitude, time) => {
          const { east, north, up } = sunVector(time, latitude, longitude);
          expect(Math.hypot(east, north, up)).toBeCloseTo(1, 12);
        },
      ),
    );
  });

  test("lets NaN through", () => {
    expect(sunVector(Number.NaN, 0, 0).up).toBeNaN();
    expect(sunVector(0, Number.NaN, 0).up).toBeNaN();
  });

  test("gives its example", () => {
    expect(sunVector(Date.UTC(2027, 5, 21, 12), 51.5, 0).up).toBeCloseTo(0.882, 3);
  });
});
