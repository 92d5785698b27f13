/**
 * Declination, equation of time, distance and day length against tables and examples: the ASHRAE table is coarse (base
 * year 1964), Klein's is rounded to 0.1; the Naval Observatory's instants judge the true sun.
 */

import { geometricDayHours, sunsetHourAngleDeg } from "../../../lib/sun/hour-angle.ts";
import {
  cooperDeclinationDeg,
  equationOfTimeMinutes,
  spencerDeclinationDeg,
  sunDistanceFactor,
} from "../../../lib/sun/orbit.ts";
import { sunVector } from "../../../lib/sun/position.ts";
import { toDegrees, toRadians } from "../../../lib/units/angle.ts";
import { declinationDegOf, unrefracted } from "../../sun/unrefracted.ts";
import { inputsOf, type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Comparison } from "./comparison.ts";
import { idOf, numberOf } from "./fields.ts";

const DAY_MS = 86_400_000;
const rows = readReference("declination-equation-of-time-distance.csv");
const dayLengths = readReference("day-length-examples.csv");

/** Spencer's factor is good to 0.001, half of that in distance: wider than the row's own tolerance for a true distance. */
const SPENCER_DISTANCE_AU = 0.0005;

const instantOf = (row: ReferenceRow): number => Date.parse(inputsOf(row).time_utc ?? "");

const quantities: Readonly<Record<string, (row: ReferenceRow) => number>> = {
  declination_deg: (row) => spencerDeclinationDeg(numberOf(row, "day_of_year")),
  equation_of_time_min: (row) => equationOfTimeMinutes(numberOf(row, "day_of_year")),
  declination_cooper_deg: (row) => cooperDeclinationDeg(numberOf(row, "day_of_year")),
  true_declination_deg: (row) => {
    // Seen from a place where the sun stands high, so that refraction hardly matters.
    const ms = instantOf(row);
    const subsolarLongitude = 180 - ((ms % DAY_MS) / DAY_MS) * 360;
    const latitudeDeg = numberOf(row, "expected");
    return declinationDegOf(unrefracted(sunVector(ms, latitudeDeg, subsolarLongitude)), latitudeDeg);
  },
  sun_distance_AU: (row) => {
    const ms = instantOf(row);
    const yearDay = 1 + (ms - Date.UTC(new Date(ms).getUTCFullYear(), 0, 1)) / DAY_MS;
    return 1 / Math.sqrt(sunDistanceFactor(yearDay));
  },
};

const seriesOf = (
  name: string,
  count: number,
  words: Pick<Comparison, "quantity" | "reference" | "unit" | "cause">,
): Comparison => ({
  ...words,
  count,
  cases: () =>
    rows
      .filter(({ quantity }) => quantity === name)
      .map((row) =>
        absolute(
          idOf(row),
          quantities[name](row),
          numberOf(row, "expected"),
          name === "sun_distance_AU" ? SPENCER_DISTANCE_AU : numberOf(row, "tolerance"),
        ),
      ),
});

/** FAO-56, equation 24. */
const faoDeclinationDeg = (day: number): number =>
  toDegrees(0.409 * Math.sin((2 * Math.PI * day) / 365 - 1.39));

const dayLengthOf = (row: ReferenceRow): number => {
  const inputs = inputsOf(row);
  const latitudeDeg = numberOf(inputs, "latitude_deg");
  const declinationDeg =
    inputs.declination_deg === undefined
      ? faoDeclinationDeg(numberOf(inputs, "day_of_year"))
      : numberOf(inputs, "declination_deg");
  if (row.unit === "h") return geometricDayHours(latitudeDeg, declinationDeg);
  const sunset = sunsetHourAngleDeg(latitudeDeg, declinationDeg);
  return row.unit === "rad" ? toRadians(sunset) : sunset;
};

export const sunSeries: readonly Comparison[] = [
  seriesOf("true_declination_deg", 8, {
    quantity: "declination at equinoxes and solstices",
    reference: "US Naval Observatory",
    unit: "degrees",
    cause: "the short series, 0.01",
  }),
  seriesOf("declination_deg", 8, {
    quantity: "declination, Spencer's series",
    reference: "ASHRAE Fundamentals 2005",
    unit: "degrees",
    cause: "a coarse table of base year 1964, up to 1 degree off",
  }),
  seriesOf("declination_cooper_deg", 8, {
    quantity: "declination, Cooper's series",
    reference: "Klein 1977, mean days of months",
    unit: "degrees",
    cause: "one printed decimal",
  }),
  seriesOf("equation_of_time_min", 8, {
    quantity: "equation of time, Spencer's series",
    reference: "ASHRAE Fundamentals 2005",
    unit: "minutes",
    cause: "a coarse table of base year 1964, up to 1.2 minutes off",
  }),
  seriesOf("sun_distance_AU", 6, {
    quantity: "distance of the sun, Spencer's series",
    reference: "US Naval Observatory, perihelion and aphelion",
    unit: "AU",
    cause: "Spencer's factor is good to 0.001, half of that in distance",
  }),
  {
    quantity: "sunset hour angle and day length",
    reference: "FAO-56; Duffie & Beckman",
    unit: "rad, degrees, hours",
    cause: "half the last printed digit, the first one's inputs being rounded too",
    count: 4,
    cases: () =>
      dayLengths.map((row) =>
        absolute(idOf(row), dayLengthOf(row), numberOf(row, "expected"), numberOf(row, "tolerance")),
      ),
  },
];
