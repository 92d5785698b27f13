/**
 * What travels about the whole Earth beside the places with light: grids, and places whose air is known.
 */
import type { HighSpot } from "./spot.ts";
import type { Twelve } from "./station.ts";

/** One quantity of a grid: `values[(month * rows + row) * columns + column]`, south to north and west to east. */
export interface WorldField {
  readonly stepDeg: number;
  readonly rows: number;
  readonly columns: number;
  readonly values: Float64Array;
}

/** Twelve months of a place's air, degC; `null` where it is not known. */
export interface AirPlace extends HighSpot {
  /** Mean of the days' lowest and highest. */
  readonly range: { readonly lowC: Twelve; readonly highC: Twelve } | null;
  readonly meanC: Twelve | null;
  readonly dewC: Twelve | null;
  /** Broadband aerosol optical depth, NaN in months without. */
  readonly haze: Twelve | null;
}

/** Fields and places over the whole Earth. */
export interface World {
  /** Clearness index of a satellite-based field, some 2.8 degrees fine. */
  readonly clearness: WorldField;
  /** Air, degC, and wind at 10 m, m/s: one synthetic year, for oceans and where nothing else is near. */
  readonly airC: WorldField;
  readonly windMs: WorldField;
  readonly airPlaces: readonly AirPlace[];
}
