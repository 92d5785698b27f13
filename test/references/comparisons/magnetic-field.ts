/**
 * Compass north against the official test values of the World Magnetic Model. The model's year is decimal; the package
 * counts it over 365 days, ours is turned into an instant the same way.
 */

import { magneticDeclination } from "../../../lib/sun/magnetic.ts";
import { turnBetween } from "../../../lib/units/angle.ts";
import { type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Comparison } from "./comparison.ts";
import { idOf, numberOf } from "./fields.ts";

export const magneticRows = readReference("magnetic-field.csv");
const DAY_MS = 86_400_000;

const instantOf = (decimalYear: number): number => {
  const year = Math.floor(decimalYear);
  return Date.UTC(year, 0, 1) + (decimalYear - year) * 365 * DAY_MS;
};

/** What we say of compass north at a test value's place and time. */
export const northOf = (row: ReferenceRow) =>
  magneticDeclination(
    numberOf(row, "latitude_deg"),
    numberOf(row, "longitude_deg_east"),
    numberOf(row, "height_km") * 1000,
    instantOf(numberOf(row, "decimal_year")),
  );

export const magneticField: readonly Comparison[] = [
  {
    quantity: "magnetic declination",
    reference: "test values of WMM2020 and WMM2025, NOAA NCEI / BGS",
    unit: "degrees",
    cause: "two printed decimals",
    count: 92,
    cases: () =>
      magneticRows.map((row) => {
        const [ours, theirs] = [northOf(row).declinationDeg, numberOf(row, "declination_deg")];
        return { ...absolute(idOf(row), ours, theirs, 0.01), difference: turnBetween(theirs, ours) };
      }),
  },
];
