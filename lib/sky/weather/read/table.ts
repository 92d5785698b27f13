/**
 * From CSV text to columns of numbers, one row at a time: a long file never becomes a long list of records.
 */
import Papa, { type ParseResult, type Parser } from "papaparse";
import { PlanError } from "../../../units/problem.ts";
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

/** Text handed to the CSV reader at a time: long enough to be quick, short enough not to fill the memory with rows. */
const CHUNK_CHARACTERS = 1 << 20;

/** A column of numbers while it grows. */
interface GrowingColumn {
  readonly quantity: Quantity;
  readonly header: string;
  readonly index: number;
  readonly unit: Unit;
  readonly values: number[];
}

/** Reads row after row once the header is known. */
const rowReader = (headers: readonly string[], { meanings }: Layout, faults: RowProblems) => {
  const rows: number[] = [];
  const stamps: number[] = [];
  const columns = meanings.flatMap((meaning, index): GrowingColumn[] =>
    meaning === null || meaning.unit.of === "text"
      ? []
      : [{ ...meaning, index, header: headers[index], values: [] }],
  );
  const dateAt = meanings.findIndex((meaning) => meaning?.quantity === "date");
  const timeAt = meanings.findIndex((meaning) => meaning?.quantity === "time");
  const stampText = (fields: readonly string[]): string => {
    if (dateAt < 0) return fields[timeAt] ?? "";
    return timeAt < 0 ? (fields[dateAt] ?? "") : `${fields[dateAt]} ${fields[timeAt]}`;
  };
  let stampedBy: WeatherTable["stampedBy"] | undefined;

  const readStamp = (row: number, text: string): number => {
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
    return stamp;
  };
  const readNumber = (row: number, header: string, field: string): number => {
    const value = numberIn(field);
    if (value !== null) return value;
    faults.add(row, field, {
      column: header,
      allowed: "must be a number or empty",
      hint: field.includes(",")
        ? "the decimal sign is a point"
        : "leave the field empty where nothing was measured",
    });
    return Number.NaN;
  };

  return {
    count: () => rows.length,
    read: (row: number, fields: readonly string[]): void => {
      rows.push(row);
      stamps.push(readStamp(row, stampText(fields)));
      for (const { index, header, unit, values } of columns) {
        values.push(readNumber(row, header, fields[index] ?? "") * unit.scale + unit.offset);
      }
    },
    done: (ignoredColumns: readonly string[]): WeatherTable => ({
      length: rows.length,
      row: Int32Array.from(rows),
      stampedBy: stampedBy ?? "time",
      stamp: Float64Array.from(stamps),
      columns: new Map(
        columns.map(({ quantity, header, unit, values }) => [
          quantity,
          { header, of: unit.of, values: Float64Array.from(values) },
        ]),
      ),
      ignoredColumns,
    }),
  };
};

const isBlank = (fields: readonly string[]): boolean => fields.every((field) => field.trim() === "");

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
  let reader: ReturnType<typeof rowReader> | undefined;
  let row = 0;
  let tooLong = false;
  // Reading in chunks works for text as it does for files; the type declarations only know of files.
  const inChunks = {
    skipEmptyLines: false,
    chunkSize: CHUNK_CHARACTERS,
    chunk: ({ data, errors }: ParseResult<string[]>, parser: Parser): void => {
      for (const fields of data) {
        row += 1;
        if (isBlank(fields)) continue;
        if (reader === undefined) {
          const headers = fields.map((header) => header.trim());
          layout = layoutOf(headers, file, named);
          reader = rowReader(headers, layout, faults);
        } else if (reader.count() === MOST_ROWS) {
          tooLong = true;
          parser.abort();
          return;
        } else {
          reader.read(row, fields);
        }
      }
      for (const error of errors) {
        if (error.type !== "Quotes") continue;
        faults.add(row, error.message, { column: "", allowed: "must have its quotation marks in pairs" });
      }
    },
  };
  Papa.parse<string[]>(csvText, inChunks);
  if (tooLong) {
    throw new PlanError([
      {
        path: file,
        value: `more than ${MOST_ROWS} rows`,
        allowed: `must have at most ${MOST_ROWS} rows (ten years of minutes)`,
      },
    ]);
  }
  if (layout === undefined || reader === undefined || reader.count() === 0) {
    throw new PlanError([
      {
        path: file,
        value: row,
        allowed: "must have a header row and at least one row of values",
        hint: `for example ${SUGGESTED.time},${SUGGESTED.global}`,
      },
    ]);
  }
  return reader.done(layout.ignored);
};
