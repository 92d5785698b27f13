import { describe, expect, test } from "vitest";
import { gridOf, type StampPlace } from "../../../lib/sky/weather/read/grid.ts";
import { RowProblems } from "../../../lib/sky/weather/read/row-problems.ts";
import type { WeatherTable } from "../../../lib/sky/weather/read/table.ts";
import { asTypicalYear } from "../../../lib/sky/weather/read/typical-year.ts";

const MINUTE_MS = 60_000;
const START_MS = Date.UTC(2027, 5, 1);

/** A table whose stamps are minutes after the first of June; light counts the rows from 1. */
const tableOf = (stamps: readonly number[], of: "irradiance" | "energy" = "irradiance"): WeatherTable => ({
  length: stamps.length,
  row: Int32Array.from(stamps, (_, i) => i + 2),
  stampedBy: "time",
  stamp: Float64Array.from(stamps, (minutes) => START_MS + minutes * MINUTE_MS),
  columns: new Map([["global", { header: "ghi", of, values: Float64Array.from(stamps, (_, i) => i + 1) }]]),
  ignoredColumns: [],
});

const laid = (table: WeatherTable, stamps: StampPlace = "start") => {
  const faults = new RowProblems("w.csv");
  const grid = gridOf(table, stamps, "w.csv", faults);
  if ("columns" in grid) return { grid, problems: faults.problems() };
  return { grid: null, problems: grid };
};

const lightOf = (table: WeatherTable, stamps?: StampPlace): readonly number[] => [
  ...(laid(table, stamps).grid?.columns.get("global") ?? []),
];

describe("gridOf", () => {
  test("lays rows on even intervals and leaves holes between", () => {
    const { grid, problems } = laid(tableOf([0, 15, 30, 60, 75]));
    expect(problems).toEqual([]);
    expect(grid).toMatchObject({ intervalMinutes: 15, startMs: START_MS, length: 6 });
    expect([...(grid?.row ?? [])]).toEqual([2, 3, 4, 0, 5, 6]);
    expect(lightOf(tableOf([0, 15, 30, 60, 75]))).toEqual([1, 2, 3, Number.NaN, 4, 5]);
  });

  test.each([
    ["start", 0],
    ["centre", -30],
    ["end", -60],
  ] as const)("stamps at the interval's %s begin %d minutes from the first", (stamps, minutes) => {
    expect(laid(tableOf([60, 120, 180]), stamps).grid?.startMs).toBe(START_MS + (60 + minutes) * MINUTE_MS);
  });

  test("energies in the interval become its mean power", () => {
    expect(lightOf(tableOf([0, 30, 60], "energy"))).toEqual([2, 4, 6]);
    expect(lightOf(tableOf([0, 60, 120], "energy"))).toEqual([1, 2, 3]);
  });

  test("the interval is the commonest step, and stamps may all lie beside the whole hour", () => {
    expect(laid(tableOf([7, 17, 27, 57, 67])).grid).toMatchObject({ intervalMinutes: 10, length: 7 });
  });

  test("doubled, unordered and stray rows, each told with its stamp", () => {
    const { grid, problems } = laid(tableOf([0, 60, 120, 60, 180, 150, 300, 240]));
    expect(problems).toEqual([
      {
        path: "w.csv row 5 stamp",
        value: "2027-06-01T01:00:00.000Z",
        allowed: "must not stand twice",
        hint: "it stands in row 3 too; a local clock put back in autumn does this: give UTC",
      },
      {
        path: "w.csv row 7 stamp",
        value: "2027-06-01T02:30:00.000Z",
        allowed: "must be whole steps of 60 min from the other stamps",
      },
      {
        path: "w.csv row 9 stamp",
        value: "2027-06-01T04:00:00.000Z",
        allowed: "must come after the row before",
        hint: "sort the rows by time",
      },
    ]);
    // A doubled row keeps the first one's values.
    expect([...(grid?.columns.get("global") ?? [])]).toEqual([1, 2, 3, 5, 8, 7]);
  });

  test("stray rows at either end do not stretch the grid", () => {
    const { grid, problems } = laid(tableOf([-30, 0, 60, 120, 180, 220]));
    expect(problems.map(({ path }) => path)).toEqual(["w.csv row 2 stamp", "w.csv row 7 stamp"]);
    expect(grid).toMatchObject({ startMs: START_MS, length: 4 });
  });

  test("more stamps that can't be read than others leave the others their grid", () => {
    const table = tableOf([0, 60, 120, 180, 240, 300]);
    table.stamp.fill(Number.NaN, 2);
    expect(laid(table).grid).toMatchObject({ startMs: START_MS, intervalMinutes: 60, length: 2 });
  });

  test("a stamp that could not be read is passed over", () => {
    const table = tableOf([0, 60, 120, 180]);
    table.stamp[2] = Number.NaN;
    expect(lightOf(table)).toEqual([1, 2, Number.NaN, 4]);
    expect(laid(table).problems).toEqual([]);
  });

  test("steps that make up no hour, and a file of one row, are refused", () => {
    const allowed = "must be even intervals of 1, 2, 3, 4, 5, 6, 10, 12, 15, 20, 30, 60 minutes";
    const hint = "for sums of whole days, give a date column without clock times";
    expect(laid(tableOf([0, 180, 360])).problems).toEqual([
      { path: "w.csv stamp", value: "180 min apart", allowed, hint },
    ]);
    expect(laid(tableOf([0])).problems).toEqual([
      { path: "w.csv stamp", value: "no two rows follow each other", allowed, hint },
    ]);
    expect(laid(tableOf([60, 0])).problems[0].value).toBe("no two rows follow each other");
  });

  test("stamps far apart are not laid out: at most 5 300 000 intervals, and not a million for a handful of rows", () => {
    const apart = (minutes: number) => laid(tableOf([0, 1, 2, minutes]));
    const centuries = apart(6_000_000);
    expect(centuries.problems).toEqual([
      {
        path: "w.csv stamp",
        value: `2027-06-01T00:00:00.000Z to ${new Date(START_MS + 6e6 * MINUTE_MS).toISOString()}`,
        allowed: "must be at most 5300000 intervals of 1 min from first to last",
        hint: "is the year of every stamp right?",
      },
    ]);
    expect(apart(1_100_000).problems[0].hint).toBe("is the year of every stamp right?");
    expect(apart(900_000).problems).toEqual([]);
  });
});

describe("asTypicalYear", () => {
  /** Days of noon stamps: one from each of some dates. */
  const days = (...dates: readonly string[]): WeatherTable => ({
    ...tableOf(dates.map((date) => (Date.parse(`${date}T12:00Z`) - START_MS) / MINUTE_MS)),
  });
  const labelled = (table: WeatherTable): readonly string[] | null => {
    const year = asTypicalYear(table);
    return year && Array.from(year.stamp, (ms) => new Date(ms).toISOString().slice(0, 10));
  };

  test("months of different years become one year, an ordinary one or a leap year as the file has it", () => {
    expect(labelled(days("1995-01-30", "1995-01-31", "2003-02-01", "2003-02-02"))).toEqual([
      "2001-01-30",
      "2001-01-31",
      "2001-02-01",
      "2001-02-02",
    ]);
    expect(labelled(days("1996-02-28", "1996-02-29", "2003-03-01"))).toEqual([
      "2000-02-28",
      "2000-02-29",
      "2000-03-01",
    ]);
    // March of a leap year, in a file without 29 February.
    expect(labelled(days("2003-02-27", "2003-02-28", "1996-03-01", "1996-03-02"))).toEqual([
      "2001-02-27",
      "2001-02-28",
      "2001-03-01",
      "2001-03-02",
    ]);
    // And March of an ordinary year, in one with it.
    expect(labelled(days("1996-02-28", "1996-02-29", "2003-03-01", "2003-03-02"))).toEqual([
      "2000-02-28",
      "2000-02-29",
      "2000-03-01",
      "2000-03-02",
    ]);
  });

  test("the 29th of another month makes no leap year", () => {
    // 28 January to 2 March: January from one year, the rest from another, no 29 February.
    const dates = Array.from({ length: 34 }, (_, at) => {
      const date = new Date(Date.UTC(2003, 0, 28 + at)).toISOString().slice(4, 10);
      return `${at < 4 ? 1995 : 2003}${date}`;
    });
    expect(labelled(days(...dates))?.at(-1)).toBe("2001-03-02");
  });

  test("its last days may lie in the next year", () => {
    expect(labelled(days("1995-12-30", "1995-12-31", "2002-01-01"))).toEqual([
      "2001-12-30",
      "2001-12-31",
      "2002-01-01",
    ]);
  });

  test("keeps everything but the stamps", () => {
    const table = days("1995-01-31", "1995-02-01", "2003-02-02");
    expect(asTypicalYear(table)).toMatchObject({ length: 3, row: table.row, columns: table.columns });
  });

  test("is nothing of the kind: one year, a seam, a hole, a stamp that can't be read, too many jumps, days in reverse", () => {
    expect(labelled(days("1995-01-30", "1995-01-31", "1995-02-01"))).toBeNull();
    expect(labelled(days("1995-01-30", "1995-01-31", "2003-02-02"))).toBeNull();
    expect(labelled(days("1995-01-30", "1995-02-02", "2003-02-03"))).toBeNull();
    expect(labelled(days("1995-01-30", "never", "2003-02-01"))).toBeNull();
    const strewn = (jumps: number) =>
      days(
        "1990-01-01",
        "1990-01-02",
        ...Array.from(
          { length: jumps },
          (_, i) => `${1995 + 5 * (i % 2)}-01-${String(i + 3).padStart(2, "0")}`,
        ),
      );
    expect(labelled(strewn(13))).toHaveLength(15);
    expect(labelled(strewn(14))).toBeNull();
    expect(labelled(days("1995-01-31", "1995-01-30", "2003-01-29"))).toBeNull();
  });
});
