import { type Column, csvText, type Table } from "../../lib/report/table/table.ts";
import { type Provenance, tableMetadata } from "../../lib/report/table/table-metadata.ts";
import { el } from "./dom.ts";
import { saveText } from "./save.ts";

export interface DataTableOptions {
  /** Name of the file it is saved as, without ending. */
  readonly file: string;
  /** Whether it starts folded away under a line [false]. */
  readonly folded?: boolean;
  /** What made it; with it, the metadata file can be saved too. */
  readonly provenance?: () => Promise<Provenance>;
}

/** A table with more columns than this is set smaller on paper. */
const MANY_COLUMNS = 9;

/** Rows written out at a time: more than its window shows, far fewer than a season has. */
const ROWS_AT_A_TIME = 60;

/** Text longer than this may be broken into lines, and than this is a sentence. */
const LONG_TEXT = 16;
const SENTENCE = 60;

const isNumber = <Row>({ datatype }: Column<Row>): boolean =>
  datatype === "decimal" || datatype === "integer";

const shown = <Row>({ value, decimals = 0 }: Column<Row>, row: Row): string => {
  const cell = value(row);
  if (cell === null) return "";
  if (typeof cell === "boolean") return cell ? "yes" : "";
  return typeof cell === "number" ? (Number(cell.toFixed(decimals)) + 0).toFixed(decimals) : cell;
};

/** How a column's cells are set: numbers to the right, words in lines, sentences in wide lines. */
type Setting = "number" | "words" | "sentences" | undefined;

const settingOf = <Row>(column: Column<Row>, rows: readonly Row[]): Setting => {
  if (isNumber(column)) return "number";
  const longest = Math.max(0, ...rows.slice(0, ROWS_AT_A_TIME).map((row) => shown(column, row).length));
  if (longest > SENTENCE) return "sentences";
  return longest > LONG_TEXT ? "words" : undefined;
};

/** A unit such as `watt-hours a day` may be parted at its spaces only. */
const unbroken = (unit: string): string => unit.replaceAll("-", "\u2011");

const headCell = <Row>(column: Column<Row>, setting: Setting): HTMLElement =>
  el(
    "th",
    { scope: "col", title: column.says, class: setting },
    column.title,
    column.unit === undefined ? null : el("small", {}, unbroken(column.unit)),
  );

const bodyRow = <Row>(columns: readonly Column<Row>[], settings: readonly Setting[], row: Row): HTMLElement =>
  el("tr", {}, ...columns.map((column, index) => el("td", { class: settings[index] }, shown(column, row))));

/** The rows in a window of their own; further ones are written as the reader comes near them. A long table is not for paper. */
const body = <Row>({ columns, rows, title }: Table<Row>): HTMLElement => {
  const rowsBody = el("tbody");
  const settings = columns.map((column) => settingOf(column, rows));
  const write = (upTo: number): void => {
    const from = rowsBody.childElementCount;
    rowsBody.append(...rows.slice(from, upTo).map((row) => bodyRow(columns, settings, row)));
  };
  const window = el(
    "div",
    {
      class: rows.length > ROWS_AT_A_TIME ? "table-window long" : "table-window",
      tabindex: 0,
      role: "region",
      "aria-label": title,
      onscroll: () => {
        const left = window.scrollHeight - window.scrollTop - window.clientHeight;
        if (left < window.clientHeight) write(rowsBody.childElementCount + ROWS_AT_A_TIME);
      },
    },
    el(
      "table",
      { class: columns.length > MANY_COLUMNS ? "wide" : undefined },
      el("thead", {}, el("tr", {}, ...columns.map((column, index) => headCell(column, settings[index])))),
      rowsBody,
    ),
  );
  write(ROWS_AT_A_TIME);
  return window;
};

/** A table to read and to take away: rows in a window of their own, the whole of it as CSV. */
export const dataTable = <Row>(
  table: Table<Row>,
  { file, folded = false, provenance }: DataTableOptions,
): HTMLElement => {
  const save = el(
    "button",
    { type: "button", class: "quiet", onclick: () => saveText(`${file}.csv`, "text/csv", csvText(table)) },
    "Save CSV",
  );
  const saveMetadata =
    provenance === undefined
      ? null
      : el(
          "button",
          {
            type: "button",
            class: "quiet",
            title: "What each column is, by the W3C's metadata for tabular data",
            onclick: async () =>
              saveText(
                `${file}.csv-metadata.json`,
                "application/json",
                `${JSON.stringify(tableMetadata(table, `${file}.csv`, await provenance()), null, 2)}\n`,
              ),
          },
          "Save its metadata",
        );
  const buttons = el("div", { class: "buttons" }, save, saveMetadata);
  // Rows may be made only when they are asked for: a folded table does not ask.
  const count = (): HTMLElement => {
    const { length } = table.rows;
    const rows = `${length} ${length === 1 ? "row" : "rows"}`;
    return el(
      "p",
      { class: "count" },
      length > ROWS_AT_A_TIME ? `${rows}, all of them in the CSV file` : rows,
    );
  };
  if (!folded) return el("div", { class: "data-table" }, body(table), count(), buttons);
  // Written out only when someone looks.
  const holder = el("div");
  const details = el(
    "details",
    {
      class: "data-table",
      ontoggle: () => {
        if (details.open && holder.childElementCount === 0) holder.append(body(table), count());
      },
    },
    el("summary", {}, "Its numbers"),
    holder,
  );
  return el("div", { class: "data-behind" }, details, buttons);
};
