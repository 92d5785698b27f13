/**
 * A CSV turned on its side for packing: column after column, numbers as what they differ from the column before or from the row
 * above where that packs better, stamps as minutes since the one above. Half the packed size of a table of months or of a year by
 * the hour. Undone by `kit/weather/turn-back.ts`.
 */
import { gzipSync } from "node:zlib";
import Papa from "papaparse";

/** A stamp as the shipped weather has it. */
const STAMP = /^\d{4}-\d\d-\d\dT\d\d:\d\d:00Z$/u;
const MINUTE_MS = 60_000;

/** Decimals of a number as it stands there; `null` for what is no plain number. An empty cell has none. */
const decimalsOf = (cell: string): number | null => {
  if (cell === "") return 0;
  return String(Number(cell)) === cell && !cell.includes("e") ? (cell.split(".")[1]?.length ?? 0) : null;
};

const packedLength = (line: string): number => gzipSync(line, { level: 9 }).length;

const isStampColumn = (cells: readonly string[]): boolean => cells.every((cell) => STAMP.test(cell));

const stampLine = (cells: readonly string[]): string => {
  const minutes = cells.map((cell) => Date.parse(cell) / MINUTE_MS);
  return ["m", ...minutes.map((value, row) => value - (minutes[row - 1] ?? 0))].join("\t");
};

interface TurnedColumn {
  readonly line: string;
  /** The column's whole numbers, for the next to differ from; `null` where it has none. */
  readonly numbers: readonly number[] | null;
}

const numberColumn = (
  cells: readonly string[],
  digits: number,
  before: readonly number[] | null,
): TurnedColumn => {
  let last = 0;
  const numbers = cells.map((cell, row) =>
    cell === "" ? (before?.[row] ?? 0) : Math.round(Number(cell) * 10 ** digits),
  );
  const write = (kind: string, of: (value: number, row: number) => number): string =>
    [`${kind}${digits}`, ...numbers.map((value, row) => (cells[row] === "" ? "" : of(value, row)))].join(
      "\t",
    );
  const across = write("a", (value, row) => value - (before?.[row] ?? 0));
  const plain = write("p", (value) => value);
  const down = write("d", (value) => {
    const step = value - last;
    last = value;
    return step;
  });
  const [line = plain] = [plain, across, down].toSorted((a, b) => packedLength(a) - packedLength(b));
  return { line, numbers };
};

const turnedColumn = (cells: readonly string[], before: readonly number[] | null): TurnedColumn => {
  if (isStampColumn(cells)) return { line: stampLine(cells), numbers: null };
  const decimals = cells.map(decimalsOf);
  if (decimals.includes(null)) return { line: `t\t${cells.join("\t")}`, numbers: null };
  return numberColumn(cells, Math.max(...decimals.map((count) => count ?? 0)), before);
};

/**
 * Turns a CSV on its side.
 *
 * @throws RangeError for a cell with a tab or a line break in it
 */
export const turned = (csvText: string): string => {
  const [header = [], ...rows] = Papa.parse<string[]>(csvText.trim()).data;
  if (rows.some((row) => row.some((cell) => /[\t\r\n]/u.test(cell)))) {
    throw new RangeError("turned: expected cells without tabs and line breaks");
  }
  let before: readonly number[] | null = null;
  const lines = header.map((_, column) => {
    const cells = rows.map((row) => row[column] ?? "");
    const { line, numbers } = turnedColumn(cells, before);
    before = numbers;
    return line;
  });
  return [header.join("\t"), ...lines].join("\n");
};
