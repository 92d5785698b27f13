/**
 * Reads the shipped world out of its files.
 */

import type { Twelve } from "../station.ts";
import { linesOf, MONTHS, numberIn } from "../table/table-cells.ts";
import type { AirPlace, World } from "../world.ts";
import { worldField } from "./grid.ts";

/** The texts of the world's files. */
export interface WorldTexts {
  readonly clearness: string;
  readonly air: string;
  /** Any number of tables of air. */
  readonly airPlaces: readonly string[];
}

const airPlacesIn = (csvText: string): readonly AirPlace[] => {
  const [header = [], ...rows] = linesOf(csvText);
  const columnsOf = (before: string, after: string): readonly number[] | null => {
    const columns = MONTHS.map((month) => header.indexOf(`${before}_${month}_${after}`));
    return columns.includes(-1) ? null : columns;
  };
  const [latitude, longitude, elevation] = ["latitude_deg", "longitude_deg", "elevation_m"].map((name) =>
    header.indexOf(name),
  );
  const low = columnsOf("low", "degC");
  const high = columnsOf("high", "degC");
  const mean = columnsOf("mean", "degC");
  const dew = columnsOf("dew", "degC");
  const haze = columnsOf("haze", "broadband");
  const twelve = (row: readonly string[], columns: readonly number[]): Twelve =>
    columns.map((column) => numberIn(row[column]));
  return rows.map((row) => ({
    latitudeDeg: numberIn(row[latitude ?? -1]),
    longitudeDeg: numberIn(row[longitude ?? -1]),
    elevationM: numberIn(row[elevation ?? -1]),
    range: low === null || high === null ? null : { lowC: twelve(row, low), highC: twelve(row, high) },
    meanC: mean === null ? null : twelve(row, mean),
    dewC: dew === null ? null : twelve(row, dew),
    haze: haze === null ? null : twelve(row, haze),
  }));
};

/** Reads the shipped world. */
export const parseWorld = ({ clearness, air, airPlaces }: WorldTexts): World => {
  const airLines = linesOf(air);
  return {
    clearness: worldField(linesOf(clearness), "clearness_percent", 0.01),
    airC: worldField(airLines, "air_degC", 1),
    windMs: worldField(airLines, "wind_half_m_s", 0.5),
    airPlaces: airPlaces.flatMap(airPlacesIn),
  };
};
