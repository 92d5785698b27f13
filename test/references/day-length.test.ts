/**
 * Sunset hour angle and day length of FAO-56 and Duffie & Beckman, without refraction and with the sources' own
 * declination (FAO-56 eq. 24). Tolerances: half the last digit printed, the first one's inputs being rounded too.
 */
import { expect, test } from "vitest";
import { toDegrees, toRadians } from "../../lib/plan/angle.ts";
import { geometricDayHours, sunsetHourAngleDeg } from "../../lib/sun/hour-angle.ts";
import { inputsOf, readReference } from "./read.ts";

const rows = readReference("day-length-examples.csv");

const faoDeclinationDeg = (day: number): number =>
  toDegrees(0.409 * Math.sin((2 * Math.PI * day) / 365 - 1.39));

test("every case is here", () => {
  expect(rows).toHaveLength(4);
});

test.each(rows.map((row) => [row.case_id, row] as const))("%s", (_, row) => {
  const inputs = inputsOf(row);
  const latitude = Number(inputs.latitude_deg);
  const declination =
    inputs.declination_deg === undefined
      ? faoDeclinationDeg(Number(inputs.day_of_year))
      : Number(inputs.declination_deg);
  const sunset = sunsetHourAngleDeg(latitude, declination);
  const found =
    row.unit === "h"
      ? geometricDayHours(latitude, declination)
      : row.unit === "rad"
        ? toRadians(sunset)
        : sunset;
  expect(Math.abs(found - Number(row.expected))).toBeLessThanOrEqual(Number(row.tolerance));
});
