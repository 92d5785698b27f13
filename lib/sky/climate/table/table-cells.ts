/**
 * Cells of a climate table: a row's numbers, and complaints about what stands there and can't be meant.
 */
import Papa from "papaparse";
import type { Problem } from "../../../units/problem.ts";
import type { Twelve } from "../station.ts";

/** The cells of a shipped CSV, line by line. */
export const linesOf = (csvText: string): readonly (readonly string[])[] =>
  Papa.parse<string[]>(csvText.trim(), { delimiter: ",", newline: "\r\n" }).data;

export type Row = Readonly<Record<string, string>>;

/** Months as the headers write them. */
export const MONTHS = Array.from({ length: 12 }, (_, index) => String(index + 1).padStart(2, "0"));

export const isEmpty = (text: unknown): boolean => text === undefined || String(text).trim() === "";

/** The number in a cell; NaN where it is empty or holds something else. */
export const numberIn = (text: string | undefined): number =>
  text === undefined || text === "" || isEmpty(text) ? Number.NaN : Number(text);

export const twelveIn = (row: Row, before: string, after: string): Twelve =>
  MONTHS.map((month) => numberIn(row[`${before}${month}${after}`]));

export const complete = (values: Twelve): boolean => values.every(Number.isFinite);

/** What a column may hold. */
export interface CellRange {
  readonly range: readonly [number, number];
  readonly unit: string;
  readonly hint?: string;
}

/** A complaint about a cell that is not a number of its range; an empty cell too. */
export const cellProblems = (
  row: Row,
  column: string,
  rowPath: string,
  { range: [least, most], unit, hint }: CellRange,
): readonly Problem[] => {
  const value = numberIn(row[column]);
  return value >= least && value <= most
    ? []
    : [
        {
          path: `${rowPath} ${column}`,
          value: row[column],
          allowed: `must be ${least} to ${most} ${unit}`,
          ...(hint === undefined ? {} : { hint }),
        },
      ];
};

/** As {@link cellProblems}, for a cell that may be left empty. */
export const filledProblems = (
  row: Row,
  column: string,
  rowPath: string,
  allowed: CellRange,
): readonly Problem[] => (isEmpty(row[column]) ? [] : cellProblems(row, column, rowPath, allowed));
