/**
 * Climate tables as CSV: one place a row, units in the headers. The shipped tables and a user's own share the header.
 */
import Papa from "papaparse";
import { DAY_MEMORY_RANGE, DAY_MEMORY_YEARS } from "../../plan/climate.ts";
import { PlanError, type Problem } from "../../plan/problem.ts";
import type { MeasuredMemory } from "./day-memory.ts";
import { lightProblems } from "./light-checks.ts";
import {
  type ClimateStation,
  type MonthlyAir,
  type MonthlyLight,
  type MonthlyWind,
  STATION_SOURCES,
  type Twelve,
} from "./station.ts";

/** Places with a climate, in the order of their file. */
export interface ClimateTable {
  readonly stations: readonly ClimateStation[];
}

type Row = Readonly<Record<string, string>>;

const MONTHS = Array.from({ length: 12 }, (_, index) => String(index + 1).padStart(2, "0"));
const MJ_PER_KWH = 3.6;

/** The four ways a table may give its light: the columns before and after the month's number. */
const LIGHT_COLUMNS = [
  { before: "global_", after: "_kWh_m2_day" },
  { before: "global_", after: "_MJ_m2_day" },
  { before: "clearness_", after: "" },
  { before: "sunshine_", after: "_h" },
] as const;

type LightColumns = (typeof LIGHT_COLUMNS)[number];

const isEmpty = (text: string | undefined): boolean => text === undefined || text.trim() === "";

const numberIn = (text: string | undefined): number => (isEmpty(text) ? Number.NaN : Number(text));

const twelveIn = (row: Row, before: string, after: string): Twelve =>
  MONTHS.map((month) => numberIn(row[`${before}${month}${after}`]));

const complete = (values: Twelve): boolean => values.every(Number.isFinite);

const lightIn = (row: Row, { before, after }: LightColumns): MonthlyLight => {
  const values = twelveIn(row, before, after);
  if (after === "_kWh_m2_day") return { kind: "global", kWhM2Day: values };
  if (after === "_MJ_m2_day") return { kind: "global", kWhM2Day: values.map((value) => value / MJ_PER_KWH) };
  return after === "_h" ? { kind: "sunshine", hours: values } : { kind: "clearness", index: values };
};

/** Air with a month missing is no air: the choice of a place then borrows it from a neighbour. */
const airIn = (row: Row): MonthlyAir | null => {
  const lowC = twelveIn(row, "air_low_", "_degC");
  const highC = twelveIn(row, "air_high_", "_degC");
  if (complete(lowC) && complete(highC)) return { kind: "range", lowC, highC };
  const meanC = twelveIn(row, "air_mean_", "_degC");
  return complete(meanC) ? { kind: "mean", meanC } : null;
};

/** Weather stations measure wind at 10 m (WMO), so that is what a table without a height means. */
const STATION_WIND_M = 10;

const windIn = (row: Row): MonthlyWind | null => {
  const ms = twelveIn(row, "wind_", "_m_s");
  const heightM = isEmpty(row.wind_height_m) ? STATION_WIND_M : numberIn(row.wind_height_m);
  return complete(ms) ? { ms, heightM } : null;
};

/** The day-to-day memory of a row; where one half of it is given, the other is missed by the range it must lie in. */
const memoryIn = (row: Row): MeasuredMemory | null =>
  isEmpty(row.day_memory) && isEmpty(row.day_memory_years)
    ? null
    : { correlation: numberIn(row.day_memory), years: numberIn(row.day_memory_years) };

const airProblems = (air: MonthlyAir | null, path: (column: string) => string): readonly Problem[] => {
  if (air?.kind !== "range") return [];
  return MONTHS.flatMap((month, index) => {
    const [low, high] = [air.lowC[index] ?? Number.NaN, air.highC[index] ?? Number.NaN];
    return low <= high
      ? []
      : [
          {
            path: path(`air_low_${month}_degC`),
            value: low,
            allowed: `must not exceed the high, ${high} degC`,
          },
        ];
  });
};

const stationIn = (
  row: Row,
  columns: LightColumns,
  rowPath: string,
): { readonly station: ClimateStation; readonly problems: readonly Problem[] } => {
  const path = (column: string): string => `${rowPath} ${column}`;
  const problems: Problem[] = [];
  const within = (column: string, least: number, most: number, unit: string): number => {
    const value = numberIn(row[column]);
    if (!(value >= least && value <= most)) {
      problems.push({
        path: path(column),
        value: row[column],
        allowed: `must be ${least} to ${most} ${unit}`,
      });
    }
    return value;
  };
  const latitudeDeg = within("latitude_deg", -90, 90, "degrees");
  const longitudeDeg = within("longitude_deg", -180, 180, "degrees");
  const elevation = numberIn(row.elevation_m);
  const light = lightIn(row, columns);
  const { before, after } = columns;
  if (problems.length === 0) {
    problems.push(
      ...lightProblems(light, latitudeDeg, (month) => path(`${before}${MONTHS[month] ?? month + 1}${after}`)),
    );
  }
  const air = airIn(row);
  const wind = windIn(row);
  const dayMemory = memoryIn(row);
  problems.push(...airProblems(air, path));
  if (wind !== null && !isEmpty(row.wind_height_m)) within("wind_height_m", 0.2, 300, "m above ground");
  if (dayMemory !== null) {
    within("day_memory", ...DAY_MEMORY_RANGE, "(correlation of a day's clearness with the next day's)");
    within("day_memory_years", ...DAY_MEMORY_YEARS, "years of days that day_memory was measured on");
  }
  const source = STATION_SOURCES.find((name) => name === row.source) ?? "own table";
  const place = row.place?.trim() || "a place of the table";
  return {
    station: {
      id: row.id?.trim() || place,
      place,
      country: row.country?.trim() ?? "",
      latitudeDeg,
      longitudeDeg,
      elevationM: Number.isFinite(elevation) ? elevation : null,
      source,
      light,
      air,
      wind,
      dayMemory,
    },
    problems,
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
 * @throws PlanError with every problem: a missing month, a swapped unit, a clearness above 1, the wrong hemisphere
 * @example
 * const months = ["01", "02", "03", "04", "05", "06", "07", "08", "09", "10", "11", "12"];
 * const header = ["latitude_deg", "longitude_deg", ...months.map((month) => `clearness_${month}`)].join(",");
 * parseClimateTable(`${header}\n47,11,${months.map(() => 0.45).join(",")}`).stations.length // 1
 */
export const parseClimateTable = (csvText: string, file = "climate table"): ClimateTable => {
  const parsed = Papa.parse<Record<string, string>>(csvText.trim(), {
    header: true,
    skipEmptyLines: "greedy",
    delimitersToGuess: [",", ";", "\t"],
    transformHeader: (header) => header.trim(),
  });
  const columns = headerProblems(parsed.meta.fields ?? [], file);
  if (isProblems(columns)) throw new PlanError(columns);
  const readings = parsed.data.map((row, index) => stationIn(row, columns, `${file} row ${index + 2}`));
  const problems = readings.flatMap((reading) => reading.problems);
  if (readings.length === 0) {
    problems.push({ path: file, value: "no rows", allowed: "must have at least one place below its header" });
  }
  if (problems.length > 0) throw new PlanError(problems);
  return { stations: readings.map((reading) => reading.station) };
};

/** Several tables as one, in the order given. */
export const joinTables = (tables: readonly ClimateTable[]): ClimateTable => ({
  stations: tables.flatMap((table) => table.stations),
});
