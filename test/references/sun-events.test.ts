/**
 * Sunrise, sunset and solar noon against the US Naval Observatory, to its whole minute. It counts the sun's upper limb,
 * with 34' of refraction and 16' of half-diameter: true altitude of the centre -50'. Ours, seen through suncalc's
 * refraction of 0.484 degrees at and under the horizon, is then at -0.349 degrees.
 * Tolerance, per row: half a minute of rounding and what a tenth of a minute of arc makes at a grazing sun.
 */
import { describe, expect, test } from "vitest";
import { sunVector } from "../../lib/sun/position.ts";
import { solarDays } from "../../lib/sun/solar-day.ts";
import { altitudeDegOf } from "../sun/unrefracted.ts";
import { type ReferenceRow, readReference } from "./read.ts";

const LIMB_ON_HORIZON_DEG = -50 / 60 + 0.484;
const MINUTE_MS = 60_000;
const DAY_MS = 1440 * MINUTE_MS;

const placeOf = (row: ReferenceRow) => ({
  latitudeDeg: Number(row.latitude_deg),
  longitudeDeg: Number(row.longitude_deg_east),
  timeZone: "UTC",
});

const overLimbDeg = (row: ReferenceRow, timeMs: number): number => {
  const { latitudeDeg, longitudeDeg } = placeOf(row);
  return altitudeDegOf(sunVector(timeMs, latitudeDeg, longitudeDeg)) - LIMB_ON_HORIZON_DEG;
};

/** Minutes from the time stated to our own crossing, looked for up to 20 minutes to either side. */
const crossingErrorMin = (row: ReferenceRow, statedMs: number): number => {
  let before = statedMs - 20 * MINUTE_MS;
  let after = statedMs + 20 * MINUTE_MS;
  const rising = row.event === "rise";
  expect(overLimbDeg(row, before) > 0).toBe(!rising);
  expect(overLimbDeg(row, after) > 0).toBe(rising);
  while (after - before > 100) {
    const middle = (before + after) / 2;
    if (overLimbDeg(row, middle) > 0 === rising) after = middle;
    else before = middle;
  }
  return (before - statedMs) / MINUTE_MS;
};

const check = (row: ReferenceRow): void => {
  const dayMs = Date.parse(`${row.date_utc}T00:00Z`);
  const statedMs = Date.parse(`${row.date_utc}T${row.time_utc_hhmm}Z`);
  const everyMinute = () =>
    Array.from({ length: 1440 }, (_, minute) => overLimbDeg(row, dayMs + minute * MINUTE_MS));
  switch (row.event) {
    case "rise":
    case "set":
      expect(Math.abs(crossingErrorMin(row, statedMs))).toBeLessThanOrEqual(Number(row.tolerance_min));
      return;
    case "transit": {
      const date = (offsetDays: number) => new Date(dayMs + offsetDays * DAY_MS).toISOString().slice(0, 10);
      const errors = solarDays(placeOf(row), { from: date(-1), to: date(1) }).map(({ noonMs }) =>
        Math.abs(noonMs - statedMs),
      );
      expect(Math.min(...errors) / MINUTE_MS).toBeLessThanOrEqual(Number(row.tolerance_min));
      return;
    }
    case "sun_up_all_day":
      expect(Math.min(...everyMinute())).toBeGreaterThan(0);
      return;
    case "sun_down_all_day":
      expect(Math.max(...everyMinute())).toBeLessThan(0);
      return;
    default:
      throw new Error(`unknown event ${row.event}`);
  }
};

describe.each([
  ["sun-events-day.csv", 305],
  ["sun-events-year.csv", 143],
])("%s", (file, count) => {
  const rows = readReference(file);

  test("every case is here", () => {
    expect(rows).toHaveLength(count);
  });

  test.each(rows.map((row) => [row.case_id, row] as const))("%s", (_, row) => check(row));
});
