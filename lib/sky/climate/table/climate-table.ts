/**
 * Climate tables as CSV: one place a row, units in the headers. The shipped tables and a user's own share the header.
 */

import Papa from "papaparse";
import { ELEVATION_RANGE } from "../../../plan/site.ts";
import { PlanError, type Problem } from "../../../units/problem.ts";
import { type ClimateStation, MJ_PER_KWH, type MonthlyLight, STATION_SOURCES } from "../station.ts";
import type { World } from "../world.ts";
import { type GlobalUnit, lightProblems } from "./light-checks.ts";
import { airIn, besideLightProblems, memoryIn, windIn } from "./table-air.ts";
import {
  cellProblems,
  filledProblems,
  isEmpty,
  linesOf,
  MONTHS,
  numberIn,
  type Row,
  twelveIn,
} from "./table-cells.ts";

/** Places with a climate, in the order of their file. */
export interface ClimateTable {
  readonly stations: readonly ClimateStation[];
  /** What is known of the whole Earth beside them; left out, only the stations speak. */
  readonly world?: World;
}

/** The four ways a table may give its light: the columns before and after the month's number. */
const LIGHT_COLUMNS = [
  { before: "global_", after: "_kWh_m2_day" },
  { before: "global_", after: "_MJ_m2_day" },
  { before: "clearness_", after: "" },
  { before: "sunshine_", after: "_h" },
] as const;

type LightColumns = (typeof LIGHT_COLUMNS)[number];

const lightIn = (row: Row, { before, after }: LightColumns): MonthlyLight => {
  const values = twelveIn(row, before, after);
  if (after === "_kWh_m2_day") return { kind: "global", kWhM2Day: values };
  if (after === "_MJ_m2_day") return { kind: "global", kWhM2Day: values.map((value) => value / MJ_PER_KWH) };
  return after === "_h" ? { kind: "sunshine", hours: values } : { kind: "clearness", index: values };
};

const unitIn = ({ after }: LightColumns): GlobalUnit => (after === "_MJ_m2_day" ? "MJ/m2" : "kWh/m2");

/** Everything in a row that cannot be meant. */
const rowProblems = (row: Row, columns: LightColumns, rowPath: string): readonly Problem[] => {
  const { before, after } = columns;
  const spot = [
    ...cellProblems(row, "latitude_deg", rowPath, { range: [-90, 90], unit: "degrees" }),
    ...cellProblems(row, "longitude_deg", rowPath, { range: [-180, 180], unit: "degrees" }),
  ];
  const monthPath = (month: number): string => `${rowPath} ${before}${MONTHS[month] ?? month + 1}${after}`;
  return [
    ...spot,
    ...filledProblems(row, "elevation_m", rowPath, { range: ELEVATION_RANGE, unit: "m above the sea" }),
    ...(spot.length > 0
      ? []
      : lightProblems(lightIn(row, columns), numberIn(row.latitude_deg), monthPath, unitIn(columns))),
    ...besideLightProblems(row, rowPath),
  ];
};

const stationIn = (row: Row, columns: LightColumns): ClimateStation => {
  const source = STATION_SOURCES.find((name) => name === row.source) ?? "own table";
  const place = row.place?.trim() || "a place of the table";
  return {
    id: row.id?.trim() || place,
    place,
    country: row.country?.trim() ?? "",
    latitudeDeg: numberIn(row.latitude_deg),
    longitudeDeg: numberIn(row.longitude_deg),
    elevationM: isEmpty(row.elevation_m) ? null : numberIn(row.elevation_m),
    source,
    light: lightIn(row, columns),
    air: airIn(row),
    wind: windIn(row),
    dayMemory: memoryIn(row),
  };
};

const missingColumns = (fields: readonly string[], { before, after }: LightColumns): readonly string[] =>
  MONTHS.map((month) => `${before}${month}${after}`).filter((column) => !fields.includes(column));

const headerProblems = (fields: readonly string[], file: string): LightColumns | readonly Problem[] => {
  const [best] = [...LIGHT_COLUMNS].sort(
    (a, b) => missingColumns(fields, a).length - missingColumns(fields, b).length,
  );
  const missing = best === undefined ? MONTHS : missingColumns(fields, best);
  const place = ["latitude_deg", "longitude_deg"].filter((column) => !fields.includes(column));
  if (best !== undefined && missing.length === 0 && place.length === 0) return best;
  const light: readonly Problem[] =
    missing.length < 12
      ? missing.map((column) => ({
          path: `${file} header ${column}`,
          value: undefined,
          allowed: "must be there: twelve months are needed, 01 to 12",
        }))
      : [
          {
            path: `${file} header`,
            value: fields.join(","),
            allowed:
              "must have twelve columns global_01_kWh_m2_day .. _12_, or global_.._MJ_m2_day, clearness_.., sunshine_.._h",
          },
        ];
  return [
    ...light,
    ...place.map((column) => ({
      path: `${file} header ${column}`,
      value: undefined,
      allowed: "must be there, in degrees",
      hint: "south and west are negative",
    })),
  ];
};

const isProblems = (found: LightColumns | readonly Problem[]): found is readonly Problem[] =>
  Array.isArray(found);

/** The rows of a table with the line each stands on; blank ones are passed over. */
const rowsIn = (csvText: string, file: string) => {
  const parsed = Papa.parse<Record<string, string>>(csvText.trim(), {
    header: true,
    delimitersToGuess: [",", ";", "\t"],
    transformHeader: (header) => header.trim(),
  });
  const columns = headerProblems(parsed.meta.fields ?? [], file);
  if (isProblems(columns)) throw new PlanError(columns);
  // Blank lines are passed over here and not by the parser, so that the rows in a complaint are those of the file.
  const rows = parsed.data.flatMap((row, index) =>
    Object.values(row).every(isEmpty) ? [] : [{ row, line: index + 2 }],
  );
  return { columns, rows };
};

/**
 * Reads a climate table from CSV text.
 *
 * Columns: `latitude_deg`, `longitude_deg` and twelve of light (`global_MM_kWh_m2_day`, `global_MM_MJ_m2_day`,
 * `clearness_MM` or `sunshine_MM_h`, MM from 01 to 12) are needed. `id`, `place`, `country`, `elevation_m`, `source`,
 * `air_low_MM_degC` with `air_high_MM_degC` or `air_mean_MM_degC`, `wind_MM_m_s` with `wind_height_m` [10], and `day_memory`
 * with `day_memory_years` (correlation of a day's clearness with the next, months' means removed; years of days behind
 * it) may be there.
 * Other columns are passed over.
 *
 * @param file what to call the table in complaints
 * @throws PlanError with every problem: a missing month, a swapped unit, a clearness above 1, the wrong hemisphere, air or wind
 *   that can't be, a filled cell that is no number where one belongs
 * @example
 * const months = ["01", "02", "03", "04", "05", "06", "07", "08", "09", "10", "11", "12"];
 * const header = ["latitude_deg", "longitude_deg", ...months.map((month) => `clearness_${month}`)].join(",");
 * parseClimateTable(`${header}\n47,11,${months.map(() => 0.45).join(",")}`).stations.length // 1
 */
export const parseClimateTable = (csvText: string, file = "climate table"): ClimateTable => {
  const { columns, rows } = rowsIn(csvText, file);
  const problems = rows.flatMap(({ row, line }) => rowProblems(row, columns, `${file} row ${line}`));
  if (rows.length === 0) {
    problems.push({ path: file, value: "no rows", allowed: "must have at least one place below its header" });
  }
  if (problems.length > 0) throw new PlanError(problems);
  return { stations: rows.map(({ row }) => stationIn(row, columns)) };
};

/**
 * Reads a climate table that has been checked before, as the shipped ones are by their tests: several times as fast.
 *
 * @throws PlanError when the header lacks a column
 */
export const parseCheckedTable = (csvText: string, file: string): ClimateTable => {
  const [header = [], ...lines] = linesOf(csvText);
  const columns = headerProblems(header, file);
  if (isProblems(columns)) throw new PlanError(columns);
  return {
    stations: lines.map((cells) =>
      stationIn(Object.fromEntries(header.map((name, at) => [name, cells[at] ?? ""])), columns),
    ),
  };
};

/** Several tables' places as one, in the order given. */
export const joinTables = (tables: readonly ClimateTable[]): ClimateTable => ({
  stations: tables.flatMap((table) => table.stations),
});
