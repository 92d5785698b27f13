/**
 * Air temperature and wind from a file of their own, beside a file of light that has none.
 */
import { between } from "../../../units/interpolation.ts";
import { PlanError } from "../../../units/problem.ts";
import { DAY_MS, MINUTE_MS } from "../../../units/time.ts";
import { fileShift } from "./calendar.ts";
import { SUGGESTED } from "./headers.ts";
import type { ColumnNames } from "./layout.ts";
import { checkAir } from "./limits.ts";
import { RowProblems } from "./row-problems.ts";
import type { IntervalSeries, WeatherSeries } from "./series.ts";
import { readWeatherTable, type WeatherTable } from "./table.ts";

/** Air at instants that follow each other. */
export interface AirSeries {
  readonly timeMs: Float64Array;
  readonly airC?: Float64Array;
  readonly windMs?: Float64Array;
  /** Readings further apart than this leave a hole, ms. */
  readonly longestStepMs: number;
}

/** How to read a file of air. */
export interface AirOptions {
  /** Name of the file in complaints ["air file"]. */
  readonly file?: string;
  /** Headers of columns whose names are not known ones. */
  readonly columns?: ColumnNames;
}

/** Three hours between readings, as weather stations report at the least; between daily means, two days. */
const LONGEST_HOURS = { time: 3, date: 48 } as const;

const checkOrder = (table: WeatherTable, faults: RowProblems): void => {
  for (let i = 1; i < table.length; i += 1) {
    if (table.stamp[i] <= table.stamp[i - 1]) {
      faults.add(
        table.row[i],
        table.stampedBy === "date" ? "a date" : new Date(table.stamp[i]).toISOString(),
        {
          column: "stamp",
          allowed: "must come after the row before",
          hint: "sort the rows by time, and leave out doubled ones",
        },
      );
    }
  }
};

/**
 * Reads a file of air temperature or wind or both: CSV with stamps (instants, UTC) or, for daily means, dates.
 *
 * @throws PlanError with every fault: rows that can't be read, out of order or doubled, values that can't be
 * @example parseAir("time_utc,air_degC\n2027-06-01T00:00Z,12.5").airC?.[0] // 12.5
 */
export const parseAir = (
  csvText: string,
  { file = "air file", columns = {} }: AirOptions = {},
): AirSeries => {
  const faults = new RowProblems(file);
  const table = readWeatherTable(csvText, file, faults, columns);
  const airC = table.columns.get("airC")?.values;
  const windMs = table.columns.get("windMs")?.values;
  checkOrder(table, faults);
  checkAir(airC, windMs, table.row, faults);
  const problems = [...faults.problems()];
  if (airC === undefined && windMs === undefined) {
    problems.unshift({
      path: `${file} row 1`,
      value: table.ignoredColumns.join(", "),
      allowed: "must have a column of air temperature or wind",
      hint: `name it ${SUGGESTED.airC} or ${SUGGESTED.windMs}`,
    });
  }
  if (problems.length > 0) throw new PlanError(problems);
  return {
    // A day's mean belongs to its middle.
    timeMs: table.stampedBy === "date" ? table.stamp.map((day) => (day + 0.5) * DAY_MS) : table.stamp,
    ...(airC === undefined ? {} : { airC }),
    ...(windMs === undefined ? {} : { windMs }),
    longestStepMs: LONGEST_HOURS[table.stampedBy] * 60 * MINUTE_MS,
  };
};

/** A reader of readings by rising or falling instants: straight between neighbours, NaN across holes and beyond the ends. */
const readerOf = ({ timeMs, longestStepMs }: AirSeries, values: Float64Array): ((ms: number) => number) => {
  let at = 0;
  return (ms) => {
    while (at > 0 && timeMs[at] > ms) at -= 1;
    while (at < timeMs.length - 2 && timeMs[at + 1] <= ms) at += 1;
    const [before, after] = [timeMs[at], timeMs[at + 1] ?? timeMs[at]];
    // Just outside the first and last reading the nearest one still holds.
    if (ms < before) return before - ms <= longestStepMs / 2 ? values[at] : Number.NaN;
    if (ms >= after)
      return ms - after <= longestStepMs / 2 ? values[after === before ? at : at + 1] : Number.NaN;
    if (after - before > longestStepMs) return ms === before ? values[at] : Number.NaN;
    return between(values[at], values[at + 1], (ms - before) / (after - before));
  };
};

const middles = (series: WeatherSeries): Float64Array =>
  series.kind === "days"
    ? Float64Array.from({ length: series.length }, (_, i) => (series.firstDay + i + 0.5) * DAY_MS)
    : Float64Array.from(
        { length: series.length },
        (_, i) => series.startMs + (i + 0.5) * series.intervalMinutes * MINUTE_MS,
      );

/**
 * A light series with the air of another file: read at the middle of each interval (or day), straight between readings.
 * The files' years need not be the same: month, day and hour are matched. What the air file has takes the place of the
 * light file's own; holes stay holes, for which the plan's monthly values stand in.
 */
export const withAir = <Series extends WeatherSeries>(series: Series, air: AirSeries): Series => {
  const at = middles(series);
  const half = air.longestStepMs / 2;
  const [first, last] = [air.timeMs[0] - half, air.timeMs[air.timeMs.length - 1] + half];
  const shiftAt = fileShift(first, last, 0);
  const laid = (values: Float64Array): Float64Array => {
    const readAt = readerOf(air, values);
    return at.map((ms) => readAt(ms + shiftAt(ms)));
  };
  const columns: Pick<IntervalSeries, "airC" | "windMs"> = {
    ...(air.airC === undefined ? {} : { airC: laid(air.airC) }),
    ...(air.windMs === undefined ? {} : { windMs: laid(air.windMs) }),
  };
  const remarks = Object.entries(columns).flatMap(([name, values]) => {
    const holes = values.filter(Number.isNaN).length;
    const what = name === "airC" ? "air temperature" : "wind";
    return holes === 0
      ? []
      : [
          `the file of air has no ${what} for ${holes} of ${series.length} intervals: the plan's monthly values stand in`,
        ];
  });
  return {
    ...series,
    ...columns,
    mending: { ...series.mending, remarks: [...series.mending.remarks, ...remarks] },
  };
};
