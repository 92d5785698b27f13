/**
 * A weather file, read and checked.
 */

import { SOLAR_CONSTANT } from "../../../sun/orbit.ts";
import { PlanError, type Problem } from "../../../units/problem.ts";
import { bridgeHoles } from "./bridge.ts";
import { clockProblem } from "./clock.ts";
import { dailySeriesOf } from "./daily.ts";
import { fillGaps, LONGEST_GAP_HOURS } from "./gaps.ts";
import { gridOf, type StampPlace, type WeatherGrid } from "./grid.ts";
import { type Quantity, SUGGESTED } from "./headers.ts";
import { intervalSun, type WeatherPlace } from "./interval-sun.ts";
import type { ColumnNames } from "./layout.ts";
import { checkLimits, faintProblem } from "./limits.ts";
import { RowProblems } from "./row-problems.ts";
import type { IntervalSeries, WeatherSeries } from "./series.ts";
import { readWeatherTable } from "./table.ts";
import { asTypicalYear } from "./typical-year.ts";

/** How to read a weather file. */
export interface WeatherOptions {
  /** Where the file's light was measured or modelled: the site. */
  readonly place: WeatherPlace;
  /** Which instant of its interval a stamp names [end]. */
  readonly stamps?: StampPlace;
  /** Name of the file in complaints ["weather file"]. */
  readonly file?: string;
  /** Headers of columns whose names are not known ones, such as `{ global: "ghi_boulder_W_m2" }`. */
  readonly columns?: ColumnNames;
  /** `false`: take the stamps as they are, even where the light says that they slip [true]. */
  readonly checkClock?: boolean;
}

/** Where the sun's own light and the sky's don't add up to the global light over the file, and by how much. */
const closureRemark = (grid: WeatherGrid, above: Float64Array): string | null => {
  const global = grid.columns.get("global");
  const beam = grid.columns.get("beamNormal");
  const diffuse = grid.columns.get("diffuse");
  if (global === undefined || beam === undefined || diffuse === undefined) return null;
  let whole = 0;
  let parts = 0;
  for (let i = 0; i < grid.length; i += 1) {
    const sine = above[i] / SOLAR_CONSTANT;
    const sum = beam[i] * sine + diffuse[i];
    if (sine < 0.1 || Number.isNaN(sum) || Number.isNaN(global[i])) continue;
    whole += global[i];
    parts += sum;
  }
  if (!(whole > 0)) return null;
  const share = Math.round((100 * parts) / whole);
  return Math.abs(share - 100) < 4
    ? null
    : `DNI and DHI together make ${share} % of GHI over the file: one of the sensors reads wrong`;
};

const CAN_BE_LEFT_OUT: readonly Quantity[] = ["beamNormal", "beamHorizontal", "diffuse", "airC", "windMs"];

const seriesOf = (
  grid: WeatherGrid,
  filled: number,
  zeroed: number,
  ignoredColumns: readonly string[],
  remarks: string[],
): IntervalSeries => {
  const global = grid.columns.get("global") ?? new Float64Array(0);
  const optional: Partial<Record<Quantity, Float64Array>> = {};
  for (const quantity of CAN_BE_LEFT_OUT) {
    const values = grid.columns.get(quantity);
    if (values === undefined) continue;
    const isAir = quantity === "airC" || quantity === "windMs";
    if (isAir) bridgeHoles(values, (LONGEST_GAP_HOURS * 60) / grid.intervalMinutes);
    const holes = values.reduce((n, v) => n + (Number.isNaN(v) ? 1 : 0), 0);
    if (holes === grid.length) continue;
    if (holes > 0) {
      const instead = isAir ? "the plan's monthly values stand in" : "there the share is worked out from GHI";
      remarks.push(`${SUGGESTED[quantity]} is missing in ${holes} of ${grid.length} intervals: ${instead}`);
    }
    optional[quantity] = values;
  }
  const { beamNormal, beamHorizontal, diffuse, airC, windMs } = optional;
  return {
    kind: "intervals",
    intervalMinutes: grid.intervalMinutes,
    startMs: grid.startMs,
    length: grid.length,
    global,
    ...(beamNormal === undefined ? {} : { beamNormal }),
    ...(beamHorizontal === undefined ? {} : { beamHorizontal }),
    ...(diffuse === undefined ? {} : { diffuse }),
    ...(airC === undefined ? {} : { airC }),
    ...(windMs === undefined ? {} : { windMs }),
    mending: { filled, zeroed, ignoredColumns, remarks },
  };
};

/**
 * Reads and checks a weather file: CSV with a header row, a column of stamps (ISO 8601, UTC, the end of each interval
 * unless said otherwise) and global horizontal irradiance; direct normal, direct or diffuse horizontal irradiance, air
 * temperature and wind where the file has them. Even intervals of 1 to 60 minutes that make up an hour, or, with a column
 * of dates instead of stamps, sums of whole days.
 *
 * A typical year whose stamps keep the different years of its months is read as one year.
 * Holes in the global light of up to 3 hours of daylight are filled and counted; small negative readings become zero.
 *
 * @throws PlanError with every fault found: rows that can't be read, out of order, doubled or off the grid, readings that
 *   can't be (Long & Dutton 2002), long holes, and stamps that slip against the sun
 * @example
 * const text = "time_utc,ghi_W_m2\n2027-06-01T11:00Z,610\n2027-06-01T12:00Z,655";
 * parseWeather(text, { place: { latitudeDeg: 53.56, longitudeDeg: 8.59 } }).length // 2
 */
export const parseWeather = (csvText: string, options: WeatherOptions): WeatherSeries => {
  const { place, stamps = "end", file = "weather file", columns = {}, checkClock = true } = options;
  const faults = new RowProblems(file);
  const table = readWeatherTable(csvText, file, faults, columns);
  if (!table.columns.has("global")) {
    throw new PlanError([
      {
        path: `${file} row 1`,
        value: table.ignoredColumns.join(", "),
        allowed: "must have a column of global horizontal irradiance",
        hint: `name it ${SUGGESTED.global}`,
      },
      ...faults.problems(),
    ]);
  }
  if (table.stampedBy === "date") return dailySeriesOf(table, place, file, faults);

  const typical = asTypicalYear(table);
  const grid = gridOf(typical ?? table, stamps, file, faults);
  if (!("columns" in grid)) throw new PlanError([...grid, ...faults.problems()]);
  const problems: Problem[] = [];
  const slip = checkClock ? clockProblem(grid, place, stamps, file) : null;
  const sun = intervalSun(grid, place);
  let zeroed = 0;
  // With a clock that slips, every morning or evening would look impossible: those complaints would hide the cause.
  if (slip === null) zeroed = checkLimits(grid, sun, faults);
  else problems.push(slip);
  const remarks = typical === null ? [] : ["its months come from different years: read as one typical year"];
  const closure = closureRemark(grid, sun.above);
  if (closure !== null) remarks.push(closure);
  const faint = faintProblem(grid, sun, file);
  if (faint !== null) problems.push(faint);
  const gaps = fillGaps(grid, sun, file);
  problems.push(...faults.problems(), ...gaps.problems);
  if (problems.length > 0) throw new PlanError(problems);
  if (gaps.filled > 0)
    remarks.push(`${gaps.filled} of ${grid.length} intervals had no GHI and were filled in`);
  if (zeroed > 0) remarks.push(`${zeroed} small negative readings were set to zero`);
  if (table.ignoredColumns.length > 0) remarks.push(`columns left aside: ${table.ignoredColumns.join(", ")}`);
  return seriesOf(grid, gaps.filled, zeroed, table.ignoredColumns, remarks);
};
