/** Beaufort scale (WMO), dynamic pressure, a signboard worked by EN 1991-1-4, and rigid-body statics. */
import { BEAUFORT } from "../../../lib/stand/beaufort.ts";
import { dynamicPressure, windOfForce, windProfile } from "../../../lib/stand/gust.ts";
import { type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Case, type Comparison } from "./comparison.ts";
import { idOf, inputReader, numberOf } from "./fields.ts";

const rows = readReference("wind.csv");
const of = (...prefixes: string[]) =>
  rows.filter((row) => prefixes.some((prefix) => idOf(row).startsWith(prefix)));

const GRAVITY = 9.80665;
const SIGNBOARD = 1.8;

const caseOf = (row: ReferenceRow, ours: number): Case =>
  absolute(idOf(row), ours, numberOf(row, "expected"), numberOf(row, "tolerance"));

const limitOf = (row: ReferenceRow): number => {
  const force = BEAUFORT[inputReader(row)("force")];
  return (row.quantity === "wind_speed_lower_limit" ? force?.leastMs : force?.mostMs) ?? Number.NaN;
};

const signboardOf = (row: ReferenceRow): number => {
  const input = inputReader(row);
  const profile = windProfile("lake or flat", input("reference_height_m"));
  const basic = input("basic_wind_m_per_s");
  const peak = dynamicPressure(basic * profile.gustFactor, input("air_density_kg_per_m3"));
  const computed: Readonly<Record<string, number>> = {
    terrain_factor: profile.terrainFactor,
    roughness_factor: profile.roughnessFactor,
    turbulence_intensity: profile.turbulence,
    mean_wind: basic * profile.roughnessFactor,
    peak_velocity_pressure: peak,
    force_coefficient: SIGNBOARD,
    wind_force: peak * SIGNBOARD * input("width_m") * input("height_m"),
    eccentricity: 0.25 * input("width_m"),
  };
  return computed[row.quantity ?? ""] ?? Number.NaN;
};

const staticsOf = (row: ReferenceRow): number => {
  const input = inputReader(row);
  const weight = input("mass_kg") * GRAVITY;
  const force = idOf(row).startsWith("TIP")
    ? (weight * input("lever_to_tip_edge_m")) / input("centre_of_pressure_height_m")
    : input("friction") * weight;
  return windOfForce(force, input("area_m2"), input("force_coefficient"), input("air_density_kg_per_m3"));
};

export const wind: readonly Comparison[] = [
  {
    quantity: "limits of the Beaufort forces",
    reference: "WMO",
    unit: "m/s",
    cause: "half the last printed digit",
    count: 17,
    cases: () => of("BFT").map((row) => caseOf(row, limitOf(row))),
  },
  {
    quantity: "dynamic pressure",
    reference: "half density times speed squared, tabled",
    unit: "Pa",
    cause: "half the last printed digit",
    count: 4,
    cases: () =>
      of("Q-").map((row) => {
        const input = inputReader(row);
        return caseOf(row, dynamicPressure(input("wind_speed_m_per_s"), input("air_density_kg_per_m3")));
      }),
  },
  {
    quantity: "wind on a signboard, step by step",
    reference: "EN 1991-1-4, a worked example",
    unit: "as each step",
    cause: "the example's own rounding from step to step",
    count: 8,
    cases: () => of("EC1").map((row) => caseOf(row, signboardOf(row))),
  },
  {
    quantity: "speed at which a plate tips or slides",
    reference: "rigid-body statics, evaluated by an independent program",
    unit: "m/s",
    cause: "printed digits",
    count: 3,
    cases: () => of("TIP", "SLIDE").map((row) => caseOf(row, staticsOf(row))),
  },
];
