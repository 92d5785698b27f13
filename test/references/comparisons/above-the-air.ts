/** Light above the air, the air's mass and its pressure against published examples and tables. */

import { airMassOfSine, relativeAirMass, standardPressureHPa } from "../../../lib/sky/air-mass.ts";
import { dailyExtraterrestrial, extraterrestrialBetween } from "../../../lib/sky/extraterrestrial.ts";
import { cooperDeclinationDeg, sunDistanceFactor } from "../../../lib/sun/orbit.ts";
import { toDegrees } from "../../../lib/units/angle.ts";
import { inputsOf, type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Case, type Comparison } from "./comparison.ts";
import { idOf, inputReader, numberOf } from "./fields.ts";

const examples = readReference("extraterrestrial-examples.csv");
const air = readReference("air-mass-pressure.csv");

const WH_PER_MJ = 1e6 / 3600;

/** FAO-56: solar constant 0.0820 MJ/m2/min, declination by its eq. 24. */
const FAO_CONSTANT = 0.082e6 / 60;
const faoDeclinationDeg = (day: number): number =>
  toDegrees(0.409 * Math.sin((2 * Math.PI * day) / 365 - 1.39));

/** Distance in one cosine, which FAO-56 (eq. 23) and Duffie & Beckman (eq. 1.4.1a) share. */
const oneCosine = (day: number): number => 1 + 0.033 * Math.cos((2 * Math.PI * day) / 365);

/** The solar constant behind ASHRAE's table of 2005, W/m2. */
const ASHRAE_CONSTANT = 1377;

/** Integrals are judged with the source's own declination, distance and solar constant put in. */
const integral = (row: ReferenceRow): Case => {
  const input = inputReader(row);
  const day = input("day_of_year");
  const latitudeDeg = input("latitude_deg");
  const fao = idOf(row).startsWith("FAO");
  const declinationDeg = fao ? faoDeclinationDeg(day) : cooperDeclinationDeg(day);
  const normal = (fao ? FAO_CONSTANT : input("solar_constant_W_per_m2")) * oneCosine(day);
  const [from, to] = (inputsOf(row).hour_angles_deg ?? "-180..180").split("..").map(Number);
  const ours =
    row.quantity === "extraterrestrial_hour"
      ? extraterrestrialBetween(latitudeDeg, declinationDeg, from, to, normal)
      : dailyExtraterrestrial(latitudeDeg, declinationDeg, normal);
  return absolute(idOf(row), ours / WH_PER_MJ, numberOf(row, "expected"), numberOf(row, "tolerance"));
};

const isNormal = (row: ReferenceRow): boolean => row.quantity === "extraterrestrial_normal_irradiance";

export const aboveTheAir: readonly Comparison[] = [
  {
    quantity: "extraterrestrial light of a day or hour",
    reference: "FAO-56 examples 8, 10, 18; Duffie & Beckman examples 1.10.1, 2.15.1, 2.19.1",
    unit: "MJ/m2",
    cause: "half the last printed digit",
    count: 13,
    cases: () => examples.filter((row) => !isNormal(row)).map(integral),
  },
  {
    quantity: "extraterrestrial normal irradiance",
    reference: "ASHRAE Fundamentals 2005, ch. 31, with its solar constant",
    unit: "W/m2",
    cause: "a coarse table: its months step unevenly by 10 W/m2",
    count: 8,
    cases: () =>
      examples
        .filter(isNormal)
        .map((row) =>
          absolute(
            idOf(row),
            ASHRAE_CONSTANT * sunDistanceFactor(inputReader(row)("day_of_year")),
            numberOf(row, "expected"),
            numberOf(row, "tolerance"),
          ),
        ),
  },
  {
    quantity: "air mass",
    reference: "Kasten & Young 1989, evaluated by an independent program",
    unit: "1",
    cause: "four printed decimals, 0.01 % at the horizon",
    count: 16,
    cases: () =>
      air
        .filter((row) => row.quantity === "relative_air_mass")
        .map((row) =>
          absolute(
            idOf(row),
            relativeAirMass(90 - inputReader(row)("apparent_zenith_deg")),
            numberOf(row, "expected"),
            numberOf(row, "tolerance"),
          ),
        ),
  },
  {
    quantity: "zenith angle of AM1.5, and its Kasten-Young air mass",
    reference: "ASTM G173-03",
    unit: "degrees, 1",
    cause: "two printed decimals; 1.498 to its last digit",
    count: 2,
    cases: () => {
      const row = air.find((each) => idOf(each) === "AM15");
      if (row === undefined) throw new Error("air-mass-pressure.csv: no row AM15");
      return [
        absolute(
          "AM15",
          toDegrees(Math.acos(1 / 1.5)),
          numberOf(row, "expected"),
          numberOf(row, "tolerance"),
        ),
        absolute("AM15 by Kasten-Young", airMassOfSine(1 / 1.5), 1.498, 0.0005),
      ];
    },
  },
  {
    quantity: "pressure by height",
    reference: "ISO 2533 / US Standard Atmosphere 1976",
    unit: "Pa",
    cause: "geometric against geopotential height, 0.02 %",
    count: 5,
    cases: () =>
      air
        .filter((row) => row.quantity === "standard_pressure_Pa")
        .map((row) =>
          absolute(
            idOf(row),
            100 * standardPressureHPa(inputReader(row)("elevation_m")),
            numberOf(row, "expected"),
            numberOf(row, "tolerance"),
          ),
        ),
  },
];
