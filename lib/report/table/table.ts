import Papa from "papaparse";

/** What one cell of a table holds. `null` is an empty cell: not known, or does not apply. */
export type Cell = string | number | boolean | null;

/** One column of a table that can be taken away. */
export interface Column<Row> {
  /** Header in a CSV file: lower case, with its unit where it has one (`tilt_deg`). */
  readonly name: string;
  /** Header for people: `tilt`. */
  readonly title: string;
  /** Unit in full (`degrees`, `watt-hours`), or `undefined` when the column is a name, a date or yes and no. */
  readonly unit?: string;
  readonly datatype: "date" | "string" | "decimal" | "integer" | "boolean";
  /** What it is, in one sentence. */
  readonly says: string;
  readonly value: (row: Row) => Cell;
  /** Decimals shown and written, for numbers [0]: never more than the model earns. */
  readonly decimals?: number;
}

/** Rows with a meaning: what a CSV file, its metadata and the table behind a chart are all made from. */
export interface Table<Row> {
  readonly title: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  /** Names of the columns that together tell one row from another. */
  readonly key: readonly string[];
}

const written = <Row>({ name, value, decimals = 0 }: Column<Row>, row: Row, index: number): Cell => {
  const cell = value(row);
  if (typeof cell !== "number") return cell;
  if (!Number.isFinite(cell)) {
    throw new RangeError(`csvText: expected a finite ${name} in row ${index + 1}, received ${cell}`);
  }
  return Number(cell.toFixed(decimals)) + 0; // + 0 turns -0 into 0
};

/**
 * A table as CSV (RFC 4180): a header row, CRLF, decimal points, ISO dates, an empty field for what is not known.
 * Text that a spreadsheet would take for a formula gets an apostrophe before it; numbers are never touched.
 *
 * @throws RangeError when a number is not finite: a file never says `NaN`
 */
export const csvText = <Row>({ columns, rows }: Table<Row>): string => {
  const text = Papa.unparse(
    {
      fields: columns.map(({ name }) => name),
      data: rows.map((row, index) => columns.map((column) => written(column, row, index))),
    },
    { newline: "\r\n", escapeFormulae: true },
  );
  // A header without rows is ended by the library, a last row is not.
  return rows.length === 0 ? text : `${text}\r\n`;
};

/** A cell as a person reads it: its own decimals, yes and no, nothing where nothing is known. */
export const cellText = <Row>({ value, decimals = 0 }: Column<Row>, row: Row): string => {
  const cell = value(row);
  if (cell === null) return "";
  if (typeof cell === "boolean") return cell ? "yes" : "no";
  return typeof cell === "number" ? (Number(cell.toFixed(decimals)) + 0).toFixed(decimals) : cell;
};
