/**
 * From rows with stamps to intervals of even length: order, duplicates and the interval itself are settled here.
 */

import type { Problem } from "../../../units/problem.ts";
import { MINUTE_MS } from "../../../units/time.ts";
import type { Quantity } from "./headers.ts";
import type { RowProblems } from "./row-problems.ts";
import { INTERVAL_MINUTES } from "./series.ts";
import { MOST_ROWS, type WeatherTable } from "./table.ts";

/** Which instant of its interval a stamp names. */
export type StampPlace = "start" | "centre" | "end";

/** Share of an interval that lies before its stamp. */
export const SHARE_BEFORE: Readonly<Record<StampPlace, number>> = { start: 0, centre: 0.5, end: 1 };

/** Intervals of even length, holes included. */
export interface WeatherGrid {
  readonly intervalMinutes: number;
  readonly startMs: number;
  readonly length: number;
  /** Row of the file that an interval was read from; 0 where the file has none. */
  readonly row: Int32Array;
  /** Values in our units, NaN where missing; irradiance as the interval's mean, W/m2. */
  readonly columns: ReadonlyMap<Quantity, Float64Array>;
}

/** The most common of some numbers, NaN left out; NaN when there is none. */
const commonest = (values: Iterable<number>): number => {
  const counts = new Map<number, number>();
  let best = Number.NaN;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    const count = (counts.get(value) ?? 0) + 1;
    counts.set(value, count);
    if (count > (counts.get(best) ?? 0)) best = value;
  }
  return best;
};

/** Steps forward from one row to the next. */
function* stepsOf({ stamp, length }: WeatherTable): Generator<number> {
  for (let i = 1; i < length; i += 1) {
    const step = stamp[i] - stamp[i - 1];
    if (step > 0) yield step;
  }
}

/** How far a stamp is past a whole interval; in most files 0. */
const phaseOf = (stamp: number, intervalMs: number): number =>
  stamp - Math.floor(stamp / intervalMs) * intervalMs;

/** First and last of the stamps that lie on the grid. */
const stampSpan = (
  { stamp }: WeatherTable,
  intervalMs: number,
  phaseMs: number,
): readonly [number, number] => {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const each of stamp) {
    if (phaseOf(each, intervalMs) !== phaseMs) continue;
    if (each < first) first = each;
    if (each > last) last = each;
  }
  return [first, last];
};

/**
 * Lays a table's rows on an even grid. Rows out of order, doubled or between two intervals go to `faults`.
 *
 * @returns the grid, or the problems that keep it from being laid: no common step, a step that is not a whole part of an
 *   hour, or stamps so far apart that the grid would be too long
 */
export const gridOf = (
  table: WeatherTable,
  stamps: StampPlace,
  file: string,
  faults: RowProblems,
): WeatherGrid | readonly Problem[] => {
  const intervalMinutes = commonest(stepsOf(table)) / MINUTE_MS;
  if (!INTERVAL_MINUTES.includes(intervalMinutes)) {
    return [
      {
        path: `${file} stamp`,
        value: Number.isNaN(intervalMinutes)
          ? "no two rows follow each other"
          : `${intervalMinutes} min apart`,
        allowed: `must be even intervals of ${INTERVAL_MINUTES.join(", ")} minutes`,
        hint: "for sums of whole days, give a date column without clock times",
      },
    ];
  }
  const intervalMs = intervalMinutes * MINUTE_MS;
  const phaseMs = commonest(table.stamp.map((stamp) => phaseOf(stamp, intervalMs)));
  const [firstMs, lastMs] = stampSpan(table, intervalMs, phaseMs);
  const length = Math.floor((lastMs - firstMs) / intervalMs) + 1;
  if (length > MOST_ROWS || (length > 20 * table.length && length > 1e6)) {
    return [
      {
        path: `${file} stamp`,
        value: `${new Date(firstMs).toISOString()} to ${new Date(lastMs).toISOString()}`,
        allowed: `must be at most ${MOST_ROWS} intervals of ${intervalMinutes} min from first to last`,
        hint: "is the year of every stamp right?",
      },
    ];
  }

  const row = new Int32Array(length);
  const columns = new Map<Quantity, Float64Array>();
  for (const quantity of table.columns.keys())
    columns.set(quantity, new Float64Array(length).fill(Number.NaN));
  const taken = [...table.columns].map(([quantity, column]) => ({
    from: column.values,
    to: columns.get(quantity) ?? new Float64Array(length),
    // Energies become the interval's mean power.
    scale: column.of === "energy" ? 60 / intervalMinutes : 1,
  }));
  let before = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < table.length; i += 1) {
    const stamp = table.stamp[i];
    const fileRow = table.row[i];
    if (Number.isNaN(stamp)) continue;
    const at = (stamp - firstMs) / intervalMs;
    const shown = () => new Date(stamp).toISOString();
    const inOrder = stamp > before;
    before = stamp;
    if (!Number.isInteger(at)) {
      faults.add(fileRow, shown(), {
        column: "stamp",
        allowed: `must be whole steps of ${intervalMinutes} min from the other stamps`,
      });
      continue;
    }
    if (row[at] > 0) {
      faults.add(fileRow, shown(), {
        column: "stamp",
        allowed: "must not stand twice",
        hint: `it stands in row ${row[at]} too; a local clock put back in autumn does this: give UTC`,
      });
      continue;
    }
    if (!inOrder) {
      faults.add(fileRow, shown(), {
        column: "stamp",
        allowed: "must come after the row before",
        hint: "sort the rows by time",
      });
    }
    row[at] = fileRow;
    for (const { from, to, scale } of taken) to[at] = from[i] * scale;
  }
  return {
    intervalMinutes,
    startMs: firstMs - SHARE_BEFORE[stamps] * intervalMs,
    length,
    row,
    columns,
  };
};
