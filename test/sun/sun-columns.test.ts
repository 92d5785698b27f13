import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sunVector } from "../../lib/sun/position.ts";
import { solarDays } from "../../lib/sun/solar-day.ts";
import { sunColumns } from "../../lib/sun/sun-columns.ts";
import { toDegrees } from "../../lib/units/angle.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const at = (latitudeDeg: number, longitudeDeg = 15, timeZone = "Etc/GMT-1") => ({
  latitudeDeg,
  longitudeDeg,
  timeZone,
});

describe("sunColumns", () => {
  test("covers the sunlit time and nothing else, as a scan of every step finds it", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.double({ min: -90, max: 90, noNaN: true }),
          fc.constantFrom(-90, 90, 89.8, -89.7, 66.5, 78),
        ),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.integer({ min: 0, max: 3000 }),
        fc.constantFrom(5, 10, 30, 32, 60),
        (latitude, longitude, start, step) => {
          const date = new Date(Date.UTC(2024, 0, 1 + start)).toISOString().slice(0, 10);
          const place = at(latitude, longitude, "UTC");
          const sun = sunColumns(place, { from: date, to: date }, step);
          const [solarDay] = solarDays(place, { from: date, to: date });
          const upAt = (ms: number) => sunVector(ms, latitude, longitude).up;
          const stepMs = step * MINUTE_MS;
          const rowAt = (ms: number) =>
            sun.timeMs.findIndex(
              (middle, row) => Math.abs(ms - middle) <= (sun.hours[row] * HOUR_MS) / 2 + 1,
            );
          for (let i = 0; i < 1440 / step; i += 1) {
            const middle = solarDay.startMs + (i + 0.75) * stepMs;
            // Every midpoint in the sun lies in a row; every one in the dark in none, but for the half second allowed.
            if (upAt(middle) > 1e-4) expect(rowAt(middle)).toBeGreaterThanOrEqual(0);
            if (upAt(middle) < -1e-4) expect(rowAt(middle)).toBe(-1);
          }
          sun.timeMs.forEach((ms, row) => {
            const vector = sunVector(ms, latitude, longitude);
            expect(sun.up[row]).toBeGreaterThan(0);
            // A thousandth of a degree: the day's drift in place of the series at each step.
            const apart = Math.hypot(
              sun.east[row] - vector.east,
              sun.north[row] - vector.north,
              sun.up[row] - vector.up,
            );
            expect(toDegrees(apart)).toBeLessThan(0.001);
            expect(sun.hours[row]).toBeLessThanOrEqual(step / 60);
            // Both ends of the row's time are in the sun, or on the horizon.
            const halfMs = (sun.hours[row] * HOUR_MS) / 2;
            expect(upAt(ms - halfMs)).toBeGreaterThan(-1e-4);
            expect(upAt(ms + halfMs)).toBeGreaterThan(-1e-4);
          });
        },
      ),
      { numRuns: 200 },
    );
  });

  test("gives each day its own run of rows", () => {
    const sun = sunColumns(at(52), { from: "2027-12-20", to: "2028-01-10" });
    expect(sun.days).toHaveLength(22);
    let row = 0;
    sun.days.forEach((day, index) => {
      expect(day.first).toBe(row);
      let hours = 0;
      for (; row < day.end; row++) {
        expect(sun.day[row]).toBe(index);
        expect(Math.abs(sun.timeMs[row] - day.noonMs)).toBeLessThan(12 * HOUR_MS);
        hours += sun.hours[row];
      }
      expect(day.sunHours).toBeCloseTo(hours, 9);
    });
    expect(row).toBe(sun.length);
    for (const column of [sun.timeMs, sun.hours, sun.east, sun.north, sun.up, sun.day]) {
      expect(column).toHaveLength(sun.length);
    }
  });

  test("has all rows in the midnight sun and none in polar night, at both poles", () => {
    const june = { from: "2027-06-21", to: "2027-06-21" };
    for (const latitude of [78, 90]) {
      const [day] = sunColumns(at(latitude), june).days;
      expect(day).toMatchObject({ first: 0, end: 144, sunHours: 24 });
    }
    for (const latitude of [-78, -90]) {
      const night = sunColumns(at(latitude), june);
      expect(night.length).toBe(0);
      expect(night.days[0]).toMatchObject({ first: 0, end: 0, sunHours: 0 });
      expect(night.days[0]?.noonAltitudeDeg).toBeLessThan(-10);
    }
  });

  test("counts sun hours as a scan of every 10 seconds does, polar edges and a sun that only peeps included", () => {
    const cases: [latitude: number, date: string][] = [
      [0, "2027-03-20"],
      [52, "2027-06-21"],
      [52, "2027-12-21"],
      [-35, "2028-02-29"],
      [66.2, "2027-12-21"],
      [69.65, "2027-01-16"],
      [69.65, "2027-05-18"],
      [78.22, "2027-02-15"],
      [78.22, "2027-08-24"],
      [89.9, "2027-03-19"],
      [-89.5, "2027-09-23"],
    ];
    for (const [latitude, date] of cases) {
      const place = at(latitude);
      const [day] = sunColumns(place, { from: date, to: date }).days;
      let lit = 0;
      for (let second = 5; second < 86_400; second += 10)
        if (sunVector((day?.startMs ?? 0) + second * 1000, latitude, 15).up > 0) lit += 10;
      // 10 s of scan at either end; where the sun is up at midnight, the quarter of a step by which steps lag behind it.
      const edge = sunVector(day?.startMs ?? 0, latitude, 15).up > -0.03 ? 2 * 2.5 * 60 : 20;
      expect(Math.abs((day?.sunHours ?? 0) * 3600 - lit)).toBeLessThan(edge);
    }
  });

  test("notices a sun in sight for less than a step", () => {
    // The first minutes of sun after the polar night, found by a scan over the last days of it.
    const days = sunColumns(at(69.65), { from: "2027-01-10", to: "2027-01-20" }, 60).days;
    const first = days.find(({ sunHours }) => sunHours > 0);
    expect(first?.noonAltitudeDeg).toBeGreaterThan(0);
    for (const day of days) expect(day.sunHours > 0).toBe(day.noonAltitudeDeg > 0);
  });

  test("gives noon altitude as 90 less latitude plus declination", () => {
    const [solstice] = sunColumns(at(50), { from: "2027-06-21", to: "2027-06-21" }).days;
    expect(solstice?.noonAltitudeDeg).toBeCloseTo(90 - 50 + 23.44, 1);
    const [overhead] = sunColumns(at(23.4), { from: "2027-06-21", to: "2027-06-21" }).days;
    expect(overhead?.noonAltitudeDeg).toBeGreaterThan(89.9);
  });

  test("refuses a step that leaves part of a day over", () => {
    for (const step of [0, -10, 7, 11, Number.NaN])
      expect(() => sunColumns(at(52), { from: "2027-01-01", to: "2027-01-01" }, step)).toThrow(
        `sunColumns: expected a step that divides 1440 minutes evenly, received ${step}`,
      );
  });

  test("refuses more days than its column of days can count", () => {
    // 1900 to 2099 are 73049 days.
    expect(() => sunColumns(at(52), { from: "1900-01-01", to: "2099-12-31" })).toThrow(
      "sunColumns: expected at most 65535 days, received 73049",
    );
  });

  test("gives its example", () => {
    const place = { latitudeDeg: 52, longitudeDeg: 5, timeZone: "Europe/Amsterdam" };
    expect(sunColumns(place, { from: "2027-06-21", to: "2027-06-21" }).days[0]?.sunHours).toBeCloseTo(
      16.63,
      2,
    );
  });
});
