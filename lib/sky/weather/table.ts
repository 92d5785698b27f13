/**
 * From CSV text to columns of numbers, one row at a time: a long file never becomes a long list of records.
 */
import Papa from "papaparse";
import { PlanError } from "../../plan/problem.ts";
import { type Quantity, SUGGESTED, type Unit } from "./headers.ts";
import { type ColumnNames, type Layout, layoutOf } from "./layout.ts";
import type { RowProblems } from "./row-problems.ts";
import { dateDay, stampMs } from "./stamp.ts";

/** Ten years of minutes; more would not fit beside everything else in a browser's memory. */
export const MOST_ROWS = 5_300_000;

/** One column of numbers in our units (energies still as Wh/m2 in the interval). */
export interface TableColumn {
  readonly header: string;
  readonly of: Unit["of"];
  readonly values: Float64Array;
}

/** A weather file's rows as they stand in it. */
export interface WeatherTable {
  readonly length: number;
  /** Row of the file, the header being row 1. */
  readonly row: Int32Array;
  /** `time`: UTC milliseconds. `date`: days since 1970. NaN where the stamp can't be read. */
  readonly stampedBy: "time" | "date";
  readonly stamp: Float64Array;
  readonly columns: ReadonlyMap<Quantity, TableColumn>;
  readonly ignoredColumns: readonly string[];
}

const MISSING = new Set(["", "nan", "na", "n/a", "null"]);

const numberIn = (text: string): number | null => {
  const trimmed = text.trim();
  if (MISSING.has(trimmed.toLowerCase())) return Number.NaN;
  const value = Number(trimmed);
  return Number.isFinite(value) ? value : null;
};

/**
 * Reads CSV text (RFC 4180; semicolons and tabs are understood too) into columns of numbers. Faults of single cells go to
 * `faults`, where the reading goes on.
 *
 * @param named headers to use instead of the known names
 * @throws PlanError when there is no header, no stamp column, a column twice, or more than 5 300 000 rows
 */
export const readWeatherTable = (
  csvText: string,
  file: string,
  faults: RowProblems,
  named: ColumnNames = {},
): WeatherTable => {
  let layout: Layout | undefined;
  let headers: readonly string[] = [];
  let row = 0;
  let tooLong = false;
  const rows: number[] = [];
  const stamps: number[] = [];
  const cells: number[][] = [];
  let stampedBy: "time" | "date" | undefined;

  const stampOf = (fields: readonly string[], meanings: Layout["meanings"]): string => {
    const date = fields[meanings.findIndex((meaning) => meaning?.quantity === "date")];
    const time = fields[meanings.findIndex((meaning) => meaning?.quantity === "time")];
    return [date, time].filter((part) => part !== undefined).join(" ");
  };

  Papa.parse<string[]>(csvText, {
    skipEmptyLines: false,
    step: ({ data }, parser) => {
      row += 1;
      if (data.every((field) => field.trim() === "")) return;
      if (layout === undefined) {
        headers = data.map((header) => header.trim());
        layout = layoutOf(headers, file, named);
        for (const _ of headers) cells.push([]);
        return;
      }
      if (rows.length === MOST_ROWS) {
        tooLong = true;
        parser.abort();
        return;
      }
      const { meanings } = layout;
      const text = stampOf(data, meanings);
      stampedBy ??= Number.isNaN(dateDay(text)) ? "time" : "date";
      const stamp = stampedBy === "date" ? dateDay(text) : stampMs(text);
      if (Number.isNaN(stamp)) {
        faults.add(row, text, {
          column: "stamp",
          allowed:
            stampedBy === "date"
              ? "must be a date, YYYY-MM-DD"
              : "must be an ISO 8601 stamp, YYYY-MM-DDTHH:MM:SSZ",
        });
      }
      rows.push(row);
      stamps.push(stamp);
      for (let index = 0; index < meanings.length; index += 1) {
        const meaning = meanings[index];
        if (meaning === null || meaning === undefined || meaning.unit.of === "text") continue;
        const field = data[index] ?? "";
        const value = numberIn(field);
        if (value === null) {
          faults.add(row, field, {
            column: headers[index] ?? "",
            allowed: "must be a number or empty",
            hint: field.includes(",")
              ? "the decimal sign is a point"
              : "leave the field empty where nothing was measured",
          });
        }
        cells[index]?.push((value ?? Number.NaN) * meaning.unit.scale + meaning.unit.offset);
      }
    },
  });

  if (tooLong) {
    throw new PlanError([
      {
        path: file,
        value: `more than ${MOST_ROWS} rows`,
        allowed: `must have at most ${MOST_ROWS} rows (ten years of minutes)`,
      },
    ]);
  }
  if (layout === undefined || rows.length === 0) {
    throw new PlanError([
      {
        path: file,
        value: row,
        allowed: "must have a header row and at least one row of values",
        hint: `for example ${SUGGESTED.time},${SUGGESTED.global}`,
      },
    ]);
  }
  const columns = new Map<Quantity, TableColumn>();
  layout.meanings.forEach((meaning, index) => {
    if (meaning !== null && meaning.unit.of !== "text") {
      columns.set(meaning.quantity, {
        header: headers[index] ?? "",
        of: meaning.unit.of,
        values: Float64Array.from(cells[index] ?? []),
      });
    }
  });
  return {
    length: rows.length,
    row: Int32Array.from(rows),
    stampedBy: stampedBy ?? "time",
    stamp: Float64Array.from(stamps),
    columns,
    ignoredColumns: layout.ignored,
  };
};
