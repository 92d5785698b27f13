/** The apparent sun against NASA/JPL Horizons: topocentric, refracted, nine places from 78 N to 78 S, 1950, 2026, 2050. */

import { sunVector } from "../../../lib/sun/position.ts";
import { turnBetween } from "../../../lib/units/angle.ts";
import { altitudeDegOf, bearingDegOf } from "../../sun/unrefracted.ts";
import { type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Comparison } from "./comparison.ts";
import { idOf, numberOf } from "./fields.ts";

const rows = readReference("sun-position.csv");

const sunOf = (row: ReferenceRow) =>
  sunVector(
    Date.parse(row.time_utc ?? ""),
    numberOf(row, "latitude_deg"),
    numberOf(row, "longitude_deg_east"),
  );

export const sunPosition: readonly Comparison[] = [
  {
    quantity: "apparent altitude of the sun",
    reference: "NASA/JPL Horizons, 78 N to 78 S, 1950 to 2050",
    unit: "degrees",
    cause: "the short series, 0.01, and the refraction formula, 0.01",
    count: 232,
    cases: () =>
      rows.map((row) =>
        absolute(
          idOf(row),
          altitudeDegOf(sunOf(row)),
          numberOf(row, "apparent_altitude_deg"),
          numberOf(row, "tolerance_altitude_deg"),
        ),
      ),
  },
  {
    quantity: "bearing of the sun",
    reference: "NASA/JPL Horizons, 78 N to 78 S, 1950 to 2050",
    unit: "degrees",
    cause: "the short series; let out near the zenith by 1 / cos(altitude)",
    count: 232,
    cases: () =>
      rows.map((row) => {
        const [ours, theirs] = [bearingDegOf(sunOf(row)), numberOf(row, "true_bearing_deg")];
        return {
          ...absolute(idOf(row), ours, theirs, numberOf(row, "tolerance_bearing_deg")),
          difference: turnBetween(theirs, ours),
        };
      }),
  },
];
