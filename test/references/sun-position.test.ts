/**
 * The apparent sun against NASA/JPL Horizons (topocentric, refracted), nine places from 78 N to 78 S, in 1950, 2026
 * and 2050. Tolerance, per row: 0.02 degrees is what the short series (0.01) and the refraction formula (0.01) can
 * hold; bearings near the zenith are let out by 1/cos(altitude).
 */
import { expect, test } from "vitest";
import { turnBetween } from "../../lib/plan/angle.ts";
import { sunVector } from "../../lib/sun/position.ts";
import { altitudeDegOf, bearingDegOf } from "../sun/unrefracted.ts";
import { readReference } from "./read.ts";

const rows = readReference("sun-position.csv");

test("every case is here", () => {
  expect(rows).toHaveLength(232);
});

test.each(rows.map((row) => [row.case_id, row] as const))("%s", (_, row) => {
  const sun = sunVector(
    Date.parse(row.time_utc ?? ""),
    Number(row.latitude_deg),
    Number(row.longitude_deg_east),
  );
  const bearingError = turnBetween(Number(row.true_bearing_deg), bearingDegOf(sun));
  expect(Math.abs(bearingError)).toBeLessThanOrEqual(Number(row.tolerance_bearing_deg));
  expect(Math.abs(altitudeDegOf(sun) - Number(row.apparent_altitude_deg))).toBeLessThanOrEqual(
    Number(row.tolerance_altitude_deg),
  );
});
