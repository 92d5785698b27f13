/**
 * Air, wind and memory of a row of a climate table: what may be there beside the light.
 */
import {
  AIR_HIGH_RANGE,
  AIR_LOW_RANGE,
  DAY_MEMORY_RANGE,
  DAY_MEMORY_YEARS,
  WIND_HEIGHT_RANGE,
  WIND_RANGE,
} from "../../../plan/climate.ts";
import type { Problem } from "../../../units/problem.ts";
import type { MeasuredMemory } from "../day-memory.ts";
import type { MonthlyAir, MonthlyWind } from "../station.ts";
import {
  type CellRange,
  cellProblems,
  complete,
  filledProblems,
  isEmpty,
  MONTHS,
  numberIn,
  type Row,
  twelveIn,
} from "./table-cells.ts";

/** Air with a month left empty is no air: the choice of a place then borrows it from a neighbour. */
export const airIn = (row: Row): MonthlyAir | null => {
  const lowC = twelveIn(row, "air_low_", "_degC");
  const highC = twelveIn(row, "air_high_", "_degC");
  if (complete(lowC) && complete(highC)) return { kind: "range", lowC, highC };
  const meanC = twelveIn(row, "air_mean_", "_degC");
  return complete(meanC) ? { kind: "mean", meanC } : null;
};

/** Weather stations measure wind at 10 m (WMO), so that is what a table without a height means. */
const STATION_WIND_M = 10;

export const windIn = (row: Row): MonthlyWind | null => {
  const ms = twelveIn(row, "wind_", "_m_s");
  const heightM = isEmpty(row.wind_height_m) ? STATION_WIND_M : numberIn(row.wind_height_m);
  return complete(ms) ? { ms, heightM } : null;
};

/** The day-to-day memory of a row; where one half of it is given, the other is missed by the range it must lie in. */
export const memoryIn = (row: Row): MeasuredMemory | null =>
  isEmpty(row.day_memory) && isEmpty(row.day_memory_years)
    ? null
    : { correlation: numberIn(row.day_memory), years: numberIn(row.day_memory_years) };

const AIR_HINT = "a table in degF? (degF - 32) / 1.8 is degC";

const MONTHLY_CELLS: readonly (CellRange & { readonly before: string; readonly after: string })[] = [
  { before: "air_low_", after: "_degC", range: AIR_LOW_RANGE, unit: "degC", hint: AIR_HINT },
  { before: "air_high_", after: "_degC", range: AIR_HIGH_RANGE, unit: "degC", hint: AIR_HINT },
  { before: "air_mean_", after: "_degC", range: AIR_LOW_RANGE, unit: "degC", hint: AIR_HINT },
  { before: "wind_", after: "_m_s", range: WIND_RANGE, unit: "m/s" },
];

const swappedProblems = (row: Row, rowPath: string): readonly Problem[] =>
  MONTHS.flatMap((month): readonly Problem[] => {
    const low = numberIn(row[`air_low_${month}_degC`]);
    const high = numberIn(row[`air_high_${month}_degC`]);
    return low > high
      ? [
          {
            path: `${rowPath} air_low_${month}_degC`,
            value: low,
            allowed: `must not exceed the high, ${high} degC`,
          },
        ]
      : [];
  });

/** Everything wrong with a row's air, wind and memory. What is left empty is no fault; what is filled must be a number that can be. */
export const besideLightProblems = (row: Row, rowPath: string): readonly Problem[] => [
  ...MONTHLY_CELLS.flatMap(({ before, after, ...allowed }) =>
    MONTHS.flatMap((month) => filledProblems(row, `${before}${month}${after}`, rowPath, allowed)),
  ),
  ...swappedProblems(row, rowPath),
  ...filledProblems(row, "wind_height_m", rowPath, { range: WIND_HEIGHT_RANGE, unit: "m above ground" }),
  ...(memoryIn(row) === null
    ? []
    : [
        ...cellProblems(row, "day_memory", rowPath, {
          range: DAY_MEMORY_RANGE,
          unit: "(correlation of a day's clearness with the next day's)",
        }),
        ...cellProblems(row, "day_memory_years", rowPath, {
          range: DAY_MEMORY_YEARS,
          unit: "years of days that day_memory was measured on",
        }),
      ]),
];
