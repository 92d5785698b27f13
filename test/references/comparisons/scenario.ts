/** The full-chain scenarios: their inputs, conventions and expected energies, and the weather of those that need a file. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import Papa from "papaparse";
import { readReference } from "../read.ts";

export interface Tolerance {
  readonly plane_pct: number;
  readonly after_glass_pct: number;
  readonly dc_pct: number;
}

export interface Scenario {
  readonly id: string;
  readonly name: string;
  readonly kind: "clear" | "file with GHI, DNI, DHI" | "file with GHI only";
  readonly site: {
    readonly latitude_deg: number;
    readonly longitude_deg_east: number;
  };
  readonly start_utc: string;
  readonly plane: { readonly tilt_deg: number; readonly bearing_deg: number };
  readonly sky?: {
    readonly pressure_hPa: number;
    readonly ozone_cm: number;
    readonly water_cm: number;
    readonly aod380: number;
    readonly aod500: number;
    readonly forward_ratio: number;
    readonly K1: number;
  };
  readonly file?: string;
  readonly ground_albedo: number;
  readonly air_temperature_C: number | string;
  readonly wind_m_s: number;
  readonly expected: {
    readonly plane_Wh_m2: number;
    readonly plane_after_glass_Wh_m2: number;
    readonly dc_energy_Wh: number;
    readonly dc_energy_single_diode_Wh: number;
    readonly parts_Wh_m2: Readonly<Record<Part, number>>;
  };
  readonly deviations: Readonly<Record<"hay-davies" | "isotropic", Tolerance>>;
  readonly tolerance: { readonly same_formulas: Tolerance; readonly lawful_choices: Tolerance };
}

export const PARTS = ["beam", "circumsolar", "dome", "horizon", "ground"] as const;
export type Part = (typeof PARTS)[number];

interface Nameplate {
  readonly isc_A: number;
  readonly voc_V: number;
  readonly imp_A: number;
  readonly vmp_V: number;
  readonly alpha_isc_A_per_K: number;
  readonly beta_voc_V_per_K: number;
}

export const { scenarios, module } = JSON.parse(
  readFileSync(new URL("../full-chain-scenarios.json", import.meta.url), "utf8"),
) as {
  readonly scenarios: readonly Scenario[];
  readonly module: {
    readonly p_stc_W: number;
    readonly gamma_per_K: number;
    readonly single_diode_nameplate: Nameplate;
  };
};

const weatherRows = readReference("full-chain-weather.csv");

/** Folder of series that may not travel with the project; the one scenario that needs one is left out without it. */
const datasets = process.env.PANEL_SEASON_DATASETS;

/** The hours of a scenario's day as a weather file; `null` where the file is not at hand. */
export const weatherText = ({ id, file }: Scenario): string | null => {
  const rows = weatherRows.filter((row) => row.scenario === id);
  if (rows.length > 0) {
    // The scenarios hold the wind at 2 m/s, whatever the file says.
    return Papa.unparse(
      rows.map(({ time_utc, ghi_W_m2, dni_W_m2, dhi_W_m2, air_degC }) => ({
        time_utc,
        ghi_W_m2,
        dni_W_m2,
        dhi_W_m2,
        air_degC,
      })),
    );
  }
  const path = join(datasets ?? "", file ?? "");
  if (datasets === undefined || !existsSync(path)) return null;
  const { data } = Papa.parse<Record<string, string>>(readFileSync(path, "utf8"), {
    header: true,
    skipEmptyLines: true,
  });
  return Papa.unparse(
    data.map(({ time_utc, ghi_W_m2, temp_air_degC: air_degC }) => ({ time_utc, ghi_W_m2, air_degC })),
  );
};
