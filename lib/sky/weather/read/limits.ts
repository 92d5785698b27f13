/**
 * What a reading can't be: the physically possible limits of the Baseline Surface Radiation Network,
 * Long & Dutton 2002, BSRN Global Network recommended QC tests V2.0.
 */
import type { Problem } from "../../../units/problem.ts";
import type { WeatherGrid } from "./grid.ts";
import { type Quantity, SUGGESTED } from "./headers.ts";
import type { IntervalSun } from "./interval-sun.ts";
import type { RowProblems } from "./row-problems.ts";

/** Lowest reading a sound sensor gives, W/m2: its offset on a clear night. */
const LEAST_IRRADIANCE = -4;

/** Sun this far down (sine of -3 degrees): no reading above the night's limit is light. */
const NIGHT_SINE = -0.052;
/** A sound sensor's most at night, W/m2; common practice, no source. */
const NIGHT_MOST = 10;

/** Surface extremes on record (WMO): -89.2 and 56.7 degC; the wind of any ten minutes stays well under 75 m/s. */
const AIR_C = [-90, 60] as const;
const WIND_MS = [0, 75] as const;

/** Most that each light can be, W/m2: a multiple of the sun's limit base and an allowance. Long & Dutton 2002, table 1. */
const LIGHT_LIMITS = [
  { quantity: "global", factor: 1.5, allowance: 100 },
  { quantity: "diffuse", factor: 0.95, allowance: 50 },
  // Light from the sun alone has no line of its own in the table; it is a part of the global.
  { quantity: "beamHorizontal", factor: 1.5, allowance: 100 },
] as const;

/** Direct normal light can't exceed the extraterrestrial, 1409 W/m2 in January; the table's limit is that day's value. */
const MOST_BEAM_NORMAL = 1409;

const whole = (value: number): string => String(Math.round(value));

const column = (quantity: Quantity): string => SUGGESTED[quantity].replace(/_(W_m2|degC|m_s)$/, "");

/** Checks air temperature and wind against what was ever measured; NaN is passed over. */
export const checkAir = (
  airC: Float64Array | undefined,
  windMs: Float64Array | undefined,
  row: Int32Array,
  faults: RowProblems,
): void => {
  const check = (
    quantity: Quantity,
    values: Float64Array | undefined,
    [least, most]: readonly [number, number],
    unit: string,
    hint: string,
  ): void => {
    values?.forEach((value, i) => {
      if (value < least || value > most) {
        faults.add(row[i], value, {
          column: column(quantity),
          allowed: `must be ${least} to ${most} ${unit}`,
          hint,
        });
      }
    });
  };
  check("airC", airC, AIR_C, "degC", "kelvin needs a header that says so: air_K");
  check("windMs", windMs, WIND_MS, "m/s", "km/h needs a header that says so: wind_km_h");
};

/**
 * Checks every reading of a grid against what is physically possible, and sets small negative light (a sensor's offset)
 * to zero in place. Impossible readings go to `faults`, row by row.
 *
 * @returns how many small negative readings were set to zero
 */
export const checkLimits = (grid: WeatherGrid, sun: IntervalSun, faults: RowProblems): number => {
  let zeroed = 0;
  const checkLight = (quantity: Quantity, mostAt: (i: number) => number): void => {
    const values = grid.columns.get(quantity);
    if (values === undefined) return;
    for (let i = 0; i < grid.length; i += 1) {
      const value = values[i];
      const row = grid.row[i];
      if (value < LEAST_IRRADIANCE) {
        faults.add(row, value, {
          column: column(quantity),
          allowed: `must not be below ${LEAST_IRRADIANCE} W/m2`,
          hint: "leave the field empty where nothing was measured",
        });
      } else if (value < 0) {
        values[i] = 0;
        zeroed += 1;
      } else if (sun.highest[i] < NIGHT_SINE) {
        if (value > NIGHT_MOST) {
          faults.add(row, value, {
            column: column(quantity),
            allowed: `must be at most ${NIGHT_MOST} W/m2 with the sun down`,
            hint: "are the stamps UTC, and is the site the file's?",
          });
        }
      } else if (value > mostAt(i)) {
        faults.add(row, value, {
          column: column(quantity),
          kind: "most",
          allowed: `must be at most ${whole(mostAt(i))} W/m2, for the sun in that interval`,
          hint: "is the unit W/m2, are the stamps UTC, and is the site the file's?",
        });
      }
    }
  };
  for (const { quantity, factor, allowance } of LIGHT_LIMITS) {
    checkLight(quantity, (i) => factor * sun.limitBase[i] + allowance);
  }
  checkLight("beamNormal", () => MOST_BEAM_NORMAL);

  checkAir(grid.columns.get("airC"), grid.columns.get("windMs"), grid.row, faults);
  return zeroed;
};

/** Sun that counts, W/m2 above the air on the horizontal, and the least of it to tell by, hours. */
const FAIR_SUN = 200;
const LEAST_HOURS = 30;
/** No thirty hours of fair sun pass all below this clearness; an overcast sky alone gives 0.1 to 0.3. */
const LEAST_CLEARNESS = 0.05;

/** The complaint about light that is fainter than any weather, as kilowatts under a bare header are; else `null`. */
export const faintProblem = (grid: WeatherGrid, sun: IntervalSun, file: string): Problem | null => {
  let hours = 0;
  let brightest = 0;
  let most = 0;
  grid.columns.get("global")?.forEach((value, i) => {
    if (Number.isNaN(value) || sun.above[i] < FAIR_SUN) return;
    hours += grid.intervalMinutes / 60;
    brightest = Math.max(brightest, value / sun.above[i]);
    most = Math.max(most, value);
  });
  if (hours < LEAST_HOURS || brightest >= LEAST_CLEARNESS) return null;
  return {
    path: `${file} ghi`,
    value: most,
    allowed: `must somewhere be brighter than ${100 * LEAST_CLEARNESS} % of the light above the air`,
    hint: "is the unit right? kilowatts need a header that says so: ghi_kW_m2",
  };
};
