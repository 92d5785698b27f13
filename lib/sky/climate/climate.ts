import type { MonthlyWind, Twelve } from "./station.ts";

/** Mean of the days' lowest and highest air temperature in twelve months, degC. */
export interface AirRange {
  readonly lowC: Twelve;
  readonly highC: Twelve;
}

/** How far a climate may be off: one standard deviation, as a share of the light. 0 where a table is taken at its word. */
export interface ClimateUncertainty {
  /** Of each month's mean. */
  readonly month: Twelve;
  /** Of the year's mean; the part that all months share. */
  readonly year: number;
}

/** Twelve months of a place: what the cloud climate is made from, wherever the numbers came from. */
export interface Climate {
  /** Mean daily global horizontal radiation, kWh/m2. */
  readonly globalKWhM2: Twelve;
  /** `null` where the source has none. */
  readonly air: AirRange | null;
  /** `null` where the source has none. */
  readonly wind: MonthlyWind | null;
  /** Water in the column of air, cm; left out where nothing tells it. */
  readonly waterCm?: Twelve;
  readonly uncertainty: ClimateUncertainty;
  /** Correlation of one day's clearness with the next, on the scale of normal scores (`dayMemory`). */
  readonly dayMemory: number;
}

/** No uncertainty: a table that is taken as the truth. */
export const NO_UNCERTAINTY: ClimateUncertainty = { month: new Array<number>(12).fill(0), year: 0 };
