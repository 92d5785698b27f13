import { Body, Equator, Observer } from "astronomy-engine";
import { describe, expect, test } from "vitest";
import { meridianOf, meridianSun, solarNoonMs } from "../../lib/sun/meridian.ts";
import { sunVector } from "../../lib/sun/position.ts";
import { refraction, tabledRefraction } from "../../lib/sun/refraction.ts";
import { solarDays } from "../../lib/sun/solar-day.ts";
import { sunColumns } from "../../lib/sun/sun-columns.ts";
import { sunPathOver } from "../../lib/sun/sun-path.ts";
import { toDegrees, toRadians } from "../../lib/units/angle.ts";
import { DAY_MS, HOUR_MS } from "../../lib/units/time.ts";

const LATITUDES = [-89, -52, -23, 0, 36, 58, 78];

describe("the sun's drift over the meridian", () => {
  test("is within 0.001 degrees of the step-by-step sun on every day of 1950 to 2100 at seven latitudes", () => {
    const longitudeDeg = 11;
    const meridian = meridianOf(longitudeDeg);
    const paths = LATITUDES.map((latitudeDeg) => sunPathOver(latitudeDeg, new Float64Array(0)));
    let greatest = 0;
    for (
      let dayNumber = Date.UTC(1950, 0, 1) / DAY_MS;
      dayNumber <= Date.UTC(2100, 11, 31) / DAY_MS;
      dayNumber += 1
    ) {
      const day = meridian(dayNumber);
      // Another time of the day each day, near its ends and at noon among them; the latitudes take turns with it.
      const hour = ((dayNumber * 7) % 25) - 12;
      const timeMs = day.meanNoonMs + hour * HOUR_MS;
      paths.forEach((path, index) => {
        if ((dayNumber + index) % 3 !== 0 && Math.abs(hour) < 12) return;
        const ours = path.at(day, timeMs);
        const theirs = sunVector(timeMs, LATITUDES[index], longitudeDeg);
        if (theirs.up < -0.01) return;
        greatest = Math.max(
          greatest,
          Math.hypot(ours.east - theirs.east, ours.north - theirs.north, ours.up - theirs.up),
        );
      });
    }
    expect(toDegrees(greatest)).toBeLessThan(0.001);
  });

  test("through a whole day the rotation from instant to instant agrees with the plain form", () => {
    const hourAngles = Float64Array.from({ length: 49 }, (_, i) => (i / 24 - 1) * Math.PI);
    const meridian = meridianOf(-70);
    for (const latitudeDeg of LATITUDES) {
      const path = sunPathOver(latitudeDeg, hourAngles);
      for (const dayNumber of [20_000, 20_100, 20_200, 20_300]) {
        const day = meridian(dayNumber);
        const noonMs = solarNoonMs(day);
        const { east, north, up } = path.through(day, noonMs);
        hourAngles.forEach((angle, i) => {
          const plain = path.at(day, noonMs + (angle / (2 * Math.PI)) * DAY_MS);
          if (plain.up < 0) {
            expect(up[i]).toBeLessThan(0.001);
            return;
          }
          expect(Math.hypot(east[i] - plain.east, north[i] - plain.north, up[i] - plain.up)).toBeLessThan(
            1e-7,
          );
        });
      }
    }
  });

  test("declination and hour angle are an independent ephemeris's, 1900 to 2150", () => {
    for (const year of [1900, 1930, 1950, 1987, 2027, 2075, 2149]) {
      for (const month of [0, 2, 5, 8, 10]) {
        const timeMs = Date.UTC(year, month, 20, 15);
        const sun = meridianSun(timeMs, 0);
        const { dec } = Equator(Body.Sun, new Date(timeMs), new Observer(0, 0, 0), true, true);
        // suncalc's short series, 0.01 degrees, and the sun's own parallax, 0.0024.
        expect(Math.abs(toDegrees(sun.declination) - dec)).toBeLessThan(0.0125);
      }
    }
  });

  test("noon is where the hour angle is 0", () => {
    const meridian = meridianOf(-5.6);
    for (let dayNumber = 20_000; dayNumber < 20_366; dayNumber += 7) {
      expect(Math.abs(meridianSun(solarNoonMs(meridian(dayNumber)), -5.6).hourAngle)).toBeLessThan(
        toRadians(0.0002),
      );
    }
  });
});

describe("refraction", () => {
  test("from the table is within a thousandth of a degree of the formula, and level below the horizon", () => {
    for (let altitudeDeg = -3; altitudeDeg <= 90; altitudeDeg += 0.01) {
      const altitude = toRadians(altitudeDeg);
      expect(Math.abs(tabledRefraction(Math.sin(altitude)) - refraction(altitude))).toBeLessThan(
        toRadians(0.0001),
      );
    }
    expect(refraction(-1)).toBe(refraction(0));
  });
});

describe("a sun before 1900, where the Earth's slowing is not known to the series, is refused and not given 1.4 degrees off", () => {
  const place = { latitudeDeg: 52, longitudeDeg: 5, timeZone: "UTC" };

  test.each([
    ["sunVector", () => sunVector(Date.UTC(1899, 11, 1, 12), 52, 5)],
    ["meridianSun", () => meridianSun(Date.UTC(1850, 5, 21, 12), 5)],
    ["solarDays", () => solarDays(place, { from: "1890-06-01", to: "1890-06-02" })],
    ["sunColumns", () => sunColumns(place, { from: "1800-06-01", to: "1800-06-02" })],
    ["sunVector, far ahead", () => sunVector(Date.UTC(2151, 1, 2), 52, 5)],
  ])("%s", (_, ask) => {
    expect(ask).toThrow(/years 1900 to 2150/);
  });

  test("the years it holds for are answered to their ends", () => {
    expect(sunVector(Date.UTC(1900, 0, 1, 12), 52, 5).up).toBeGreaterThan(0);
    expect(sunVector(Date.UTC(2150, 11, 31, 12), 52, 5).up).toBeGreaterThan(0);
    expect(sunVector(Number.NaN, 52, 5).up).toBeNaN();
  });
});
