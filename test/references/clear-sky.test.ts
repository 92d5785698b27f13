/**
 * Published clear skies. Tolerances are the reference rows' own: half the last digit the source prints for examples,
 * 0.5 W/m2 (Bird) and 1 W/m2 (ESRA) for grids evaluated from the published formulas by an independent program.
 */
import { describe, expect, test } from "vitest";
import { toDegrees, toRadians } from "../../lib/plan/angle.ts";
import { airMassOfSine, relativeAirMass, standardPressureHPa } from "../../lib/sky/air-mass.ts";
import { birdClearLight, type ClearLight } from "../../lib/sky/bird.ts";
import { esraClearLight } from "../../lib/sky/esra.ts";
import { inputsOf, type ReferenceRow, readReference } from "./read.ts";

const number = (record: Readonly<Record<string, string>>, key: string): number => {
  const value = Number(record[key]);
  if (!Number.isFinite(value)) throw new Error(`no number ${key} in ${JSON.stringify(record)}`);
  return value;
};

const check = (row: ReferenceRow, computed: number): void => {
  expect(Math.abs(computed - number(row, "expected")), `${row.case_id}: ${computed}`).toBeLessThanOrEqual(
    number(row, "tolerance"),
  );
};

const lightOf = (light: ClearLight, quantity: string | undefined): number => {
  if (quantity === "beam_normal_irradiance") return light.beamNormal;
  if (quantity === "diffuse_horizontal") return light.diffuse;
  if (quantity === "global_horizontal") return light.global;
  throw new Error(`unknown quantity ${quantity}`);
};

/** The air mass printed with Bird's model (Kasten 1966), so that only the model itself is judged. */
const kasten1966 = (zenithDeg: number): number =>
  1 / (Math.cos(toRadians(zenithDeg)) + 0.15 * (93.885 - zenithDeg) ** -1.25);

/** Refraction the ESRA paper adds to the true altitude before the air mass (its eq. 6), degrees. */
const esraRefraction = (altitudeDeg: number): number => {
  const h = toRadians(altitudeDeg);
  return toDegrees(
    0.061359 * ((0.1594 + 1.123 * h + 0.065656 * h * h) / (1 + 28.9344 * h + 277.3971 * h * h)),
  );
};

describe("clear sky against published values", () => {
  const rows = readReference("clear-sky.csv");
  const bird = rows.filter((row) => row.case_id?.startsWith("BIRD"));
  const esra = rows.filter((row) => row.case_id?.startsWith("ESRA"));

  test("every case is here", () => {
    expect(bird).toHaveLength(27);
    expect(esra).toHaveLength(16);
    expect(rows).toHaveLength(43);
  });

  test.each(bird.map((row) => [row.case_id, row] as const))("Bird & Hulstrom 1981, %s", (_, row) => {
    const inputs = inputsOf(row);
    const zenithDeg = number(inputs, "zenith_deg");
    const light = birdClearLight(
      number(inputs, "extraterrestrial_normal_W_per_m2"),
      Math.cos(toRadians(zenithDeg)),
      kasten1966(zenithDeg),
      {
        pressureHPa: number(inputs, "pressure_hPa"),
        ozoneCm: number(inputs, "ozone_cm"),
        waterCm: number(inputs, "water_cm"),
        aod380: number(inputs, "aod380"),
        aod500: number(inputs, "aod500"),
        forwardShare: number(inputs, "forward_ratio"),
        aerosolAbsorption: number(inputs, "K1"),
      },
      number(inputs, "albedo"),
    );
    check(row, lightOf(light, row.quantity));
  });

  test.each(esra.map((row) => [row.case_id, row] as const))("ESRA 2000, %s", (_, row) => {
    const inputs = inputsOf(row);
    const altitudeDeg = number(inputs, "altitude_deg");
    const light = esraClearLight(
      number(inputs, "extraterrestrial_normal_W_per_m2"),
      Math.sin(toRadians(altitudeDeg)),
      relativeAirMass(altitudeDeg + esraRefraction(altitudeDeg)),
      number(inputs, "linke_turbidity"),
      number(inputs, "pressure_Pa") / 100,
    );
    check(row, lightOf(light, row.quantity));
  });

  test("ESRA's diffuse function is 1 at the zenith within 0.004, as the paper's angular function must be", () => {
    for (const turbidity of [2, 3, 6]) {
      const { diffuse } = esraClearLight(1, 1, 1, turbidity, 1013.25);
      const zenith = -1.5843e-2 + 3.0543e-2 * turbidity + 3.797e-4 * turbidity ** 2;
      // 0.9975, 0.9965, 1.0023: what the five-digit coefficients give.
      expect(Math.abs(diffuse / zenith - 1)).toBeLessThan(0.004);
    }
  });
});

describe("air mass and pressure against published values", () => {
  const rows = readReference("air-mass-pressure.csv");
  const masses = rows.filter((row) => row.quantity === "relative_air_mass");
  const pressures = rows.filter((row) => row.quantity === "standard_pressure_Pa");

  test("every case is here", () => {
    expect(masses).toHaveLength(16);
    expect(pressures).toHaveLength(5);
    expect(rows).toHaveLength(22);
  });

  test.each(masses.map((row) => [row.case_id, row] as const))("Kasten & Young 1989, %s", (_, row) => {
    check(row, relativeAirMass(90 - number(inputsOf(row), "apparent_zenith_deg")));
  });

  test.each(pressures.map((row) => [row.case_id, row] as const))("ISO 2533, %s", (_, row) => {
    check(row, 100 * standardPressureHPa(number(inputsOf(row), "elevation_m")));
  });

  test("AM1.5 of ASTM G173-03 is a sun 48.19 degrees from the zenith by 1 / cos z; Kasten-Young gives 1.498 there", () => {
    const row = rows.find((each) => each.case_id === "AM15")!;
    const zenithDeg = toDegrees(Math.acos(1 / 1.5));
    check(row, zenithDeg);
    expect(airMassOfSine(1 / 1.5)).toBeCloseTo(1.498, 3);
  });
});
