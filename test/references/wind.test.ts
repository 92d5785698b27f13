import { describe, expect, it } from "vitest";
import { BEAUFORT, beaufortOf } from "../../lib/stand/beaufort.ts";
import { dynamicPressure, windOfForce, windProfile } from "../../lib/stand/gust.ts";
import { inputsOf, type ReferenceRow, readReference } from "./read.ts";

// Beaufort scale (WMO), dynamic pressure, a signboard worked by EN 1991-1-4, and rigid-body statics.
const rows = readReference("wind.csv");
const of = (prefix: string) => rows.filter(({ case_id }) => case_id?.startsWith(prefix));
const number = (row: ReferenceRow, name: string): number => Number(inputsOf(row)[name]);
const within = (row: ReferenceRow, computed: number) =>
  // The file's own tolerance: half the last printed digit, or the rounding of intermediate steps in the worked example.
  expect(Math.abs(computed - Number(row.expected)), row.case_id ?? "").toBeLessThanOrEqual(
    Number(row.tolerance),
  );

const GRAVITY = 9.80665;

describe("published wind figures", () => {
  it("has every case", () => {
    expect(["BFT", "Q-", "EC1", "TIP", "SLIDE"].map((prefix) => of(prefix).length)).toEqual([17, 4, 8, 1, 2]);
    expect(rows).toHaveLength(32);
  });

  it.each(of("BFT"))("$case_id", (row) => {
    const force = BEAUFORT[number(row, "force")];
    const lower = row.quantity === "wind_speed_lower_limit";
    within(row, (lower ? force?.leastMs : force?.mostMs) ?? Number.NaN);
    expect(beaufortOf(Number(row.expected)).force).toBe(number(row, "force"));
  });

  it.each(of("Q-"))("$case_id", (row) => {
    within(row, dynamicPressure(number(row, "wind_speed_m_per_s"), number(row, "air_density_kg_per_m3")));
  });

  it.each(of("EC1"))("$case_id", (row) => {
    const profile = windProfile("lake or flat", number(row, "reference_height_m"));
    const basic = number(row, "basic_wind_m_per_s");
    const peak = dynamicPressure(basic * profile.gustFactor, number(row, "air_density_kg_per_m3"));
    const areaM2 = number(row, "width_m") * number(row, "height_m");
    const signboard = 1.8;
    const computed: Readonly<Record<string, number>> = {
      terrain_factor: profile.terrainFactor,
      roughness_factor: profile.roughnessFactor,
      turbulence_intensity: profile.turbulence,
      mean_wind: basic * profile.roughnessFactor,
      peak_velocity_pressure: peak,
      force_coefficient: signboard,
      wind_force: peak * signboard * areaM2,
      eccentricity: 0.25 * number(row, "width_m"),
    };
    within(row, computed[row.quantity ?? ""] ?? Number.NaN);
  });

  it.each(of("TIP"))("$case_id", (row) => {
    const moment = number(row, "mass_kg") * GRAVITY * number(row, "lever_to_tip_edge_m");
    const force = moment / number(row, "centre_of_pressure_height_m");
    within(
      row,
      windOfForce(
        force,
        number(row, "area_m2"),
        number(row, "force_coefficient"),
        number(row, "air_density_kg_per_m3"),
      ),
    );
  });

  it.each(of("SLIDE"))("$case_id", (row) => {
    const force = number(row, "friction") * number(row, "mass_kg") * GRAVITY;
    within(
      row,
      windOfForce(
        force,
        number(row, "area_m2"),
        number(row, "force_coefficient"),
        number(row, "air_density_kg_per_m3"),
      ),
    );
  });
});
