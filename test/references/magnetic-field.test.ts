/**
 * Compass north against the official test values of the World Magnetic Model, 2020 and 2025 editions (NOAA NCEI / BGS).
 * Tolerance 0.01 degrees: the values are printed to 0.01, and half of that is what is found.
 * The model's year is decimal; the package counts it over 365 days, ours is turned into an instant the same way.
 */
import { expect, test } from "vitest";
import { turnBetween } from "../../lib/plan/angle.ts";
import { magneticDeclination } from "../../lib/sun/magnetic.ts";
import { readReference } from "./read.ts";

const rows = readReference("magnetic-field.csv");
const DAY_MS = 86_400_000;

const instantOf = (decimalYear: number): number => {
  const year = Math.floor(decimalYear);
  return Date.UTC(year, 0, 1) + (decimalYear - year) * 365 * DAY_MS;
};

test("every case is here", () => {
  expect(rows).toHaveLength(92);
});

test.each(rows.map((row) => [row.case_id, row] as const))("%s", (_, row) => {
  const north = magneticDeclination(
    Number(row.latitude_deg),
    Number(row.longitude_deg_east),
    Number(row.height_km) * 1000,
    instantOf(Number(row.decimal_year)),
  );
  expect(north.model.replace("-", "")).toBe(row.model);
  expect(Math.abs(turnBetween(Number(row.declination_deg), north.declinationDeg))).toBeLessThanOrEqual(0.01);
  const level = Number(row.horizontal_intensity_nT);
  expect(north.needle).toBe(level < 2000 ? "useless" : level < 6000 ? "unsteady" : "steady");
});
