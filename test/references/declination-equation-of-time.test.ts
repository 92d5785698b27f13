/**
 * Declination, equation of time and distance series against tables. Tolerances stand in the rows: the ASHRAE table is
 * coarse (base year 1964), Klein's is rounded to 0.1; the Naval Observatory's instants judge the true sun.
 */
import { expect, test } from "vitest";
import {
  cooperDeclinationDeg,
  equationOfTimeMinutes,
  spencerDeclinationDeg,
  sunDistanceFactor,
} from "../../lib/sun/orbit.ts";
import { sunVector } from "../../lib/sun/position.ts";
import { declinationDegOf, unrefracted } from "../sun/unrefracted.ts";
import { inputsOf, type ReferenceRow, readReference } from "./read.ts";

const DAY_MS = 86_400_000;
const rows = readReference("declination-equation-of-time-distance.csv");

/** Spencer's factor is good to 0.001, half of that in distance: wider than the row's own tolerance for a true distance. */
const SPENCER_DISTANCE_AU = 0.0005;

const instantOf = (row: ReferenceRow): number => Date.parse(inputsOf(row).time_utc ?? "");

const found = (row: ReferenceRow): number => {
  const day = Number(row.day_of_year);
  switch (row.quantity) {
    case "declination_deg":
      return spencerDeclinationDeg(day);
    case "equation_of_time_min":
      return equationOfTimeMinutes(day);
    case "declination_cooper_deg":
      return cooperDeclinationDeg(day);
    case "true_declination_deg": {
      // Seen from a place where the sun stands high, so that refraction hardly matters.
      const ms = instantOf(row);
      const subsolarLongitude = 180 - ((ms % DAY_MS) / DAY_MS) * 360;
      return declinationDegOf(
        unrefracted(sunVector(ms, Number(row.expected), subsolarLongitude)),
        Number(row.expected),
      );
    }
    case "sun_distance_AU": {
      const ms = instantOf(row);
      const yearDay = 1 + (ms - Date.UTC(new Date(ms).getUTCFullYear(), 0, 1)) / DAY_MS;
      return 1 / Math.sqrt(sunDistanceFactor(yearDay));
    }
    default:
      throw new Error(`unknown quantity ${row.quantity}`);
  }
};

test("every case is here", () => {
  expect(rows).toHaveLength(38);
});

test.each(rows.map((row) => [row.case_id, row] as const))("%s", (_, row) => {
  const tolerance = row.quantity === "sun_distance_AU" ? SPENCER_DISTANCE_AU : Number(row.tolerance);
  expect(Math.abs(found(row) - Number(row.expected))).toBeLessThanOrEqual(tolerance);
});
