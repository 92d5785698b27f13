/**
 * Published examples of sunlight above the air. The examples are worked with the sources' own declination, distance and
 * solar constant, put in here, so that our integrals are judged; tolerances are half the last digit printed.
 */
import { describe, expect, test } from "vitest";
import { dailyExtraterrestrial, extraterrestrialBetween } from "../../lib/sky/extraterrestrial.ts";
import { cooperDeclinationDeg, sunDistanceFactor } from "../../lib/sun/orbit.ts";
import { inputsOf, type ReferenceRow, readReference } from "./read.ts";

const WH_PER_MJ = 1e6 / 3600;

/** FAO-56: solar constant 0.0820 MJ/m2/min, eq. 23 and 24 for distance and declination. */
const FAO_CONSTANT = 0.082e6 / 60;
const faoDeclinationDeg = (day: number): number =>
  (180 / Math.PI) * 0.409 * Math.sin((2 * Math.PI * day) / 365 - 1.39);

/** Distance in one cosine, used by FAO-56 (eq. 23) and Duffie & Beckman (eq. 1.4.1a) alike. */
const oneCosine = (day: number): number => 1 + 0.033 * Math.cos((2 * Math.PI * day) / 365);

const computed = (row: ReferenceRow): number => {
  const inputs = inputsOf(row);
  const day = Number(inputs.day_of_year);
  const latitude = Number(inputs.latitude_deg);
  const fao = row.case_id?.startsWith("FAO") === true;
  const declination = fao ? faoDeclinationDeg(day) : cooperDeclinationDeg(day);
  const normal = (fao ? FAO_CONSTANT : Number(inputs.solar_constant_W_per_m2)) * oneCosine(day);
  switch (row.quantity) {
    case "extraterrestrial_daily":
      return dailyExtraterrestrial(latitude, declination, normal) / WH_PER_MJ;
    case "extraterrestrial_hour": {
      const [from, to] = (inputs.hour_angles_deg ?? "").split("..").map(Number) as [number, number];
      return extraterrestrialBetween(latitude, declination, from, to, normal) / WH_PER_MJ;
    }
    case "extraterrestrial_normal_irradiance":
      // The handbook's table rests on the solar constant of its day, about 1377 W/m2, and is coarse: tolerance 20 W/m2.
      return 1377 * sunDistanceFactor(day);
    default:
      throw new Error(`unknown quantity ${row.quantity}`);
  }
};

describe("extraterrestrial light against published examples", () => {
  const rows = readReference("extraterrestrial-examples.csv");

  test("every case is here", () => {
    expect(rows).toHaveLength(21);
  });

  test.each(rows.map((row) => [row.case_id, row] as const))("%s", (_, row) => {
    expect(Math.abs(computed(row) - Number(row.expected))).toBeLessThanOrEqual(Number(row.tolerance));
  });
});
