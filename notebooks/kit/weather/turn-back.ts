/** A table that was turned on its side by `kit/build/turned.ts`, as CSV again. */
import Papa from "papaparse";

const MINUTE_MS = 60_000;

/** Running sums, empty cells passed over. */
const summed = (cells: readonly string[]): readonly number[] => {
  let sum = 0;
  return cells.map((cell) => {
    sum += Number(cell);
    return sum;
  });
};

const stamps = (cells: readonly string[]): readonly string[] =>
  summed(cells).map((minutes) => new Date(minutes * MINUTE_MS).toISOString().replace(".000Z", "Z"));

const numbersOf = (kind: string, cells: readonly string[], before: readonly number[]): readonly number[] => {
  if (kind === "d") return summed(cells);
  if (kind === "a") return cells.map((cell, row) => (before[row] ?? 0) + Number(cell));
  return cells.map((cell, row) => (cell === "" ? (before[row] ?? 0) : Number(cell)));
};

/** Undoes `turned`. */
export const turnedBack = (text: string): string => {
  const [header = "", ...lines] = text.split("\n");
  let before: readonly number[] = [];
  const columns = lines.map((line): readonly string[] => {
    const [head = "t", ...cells] = line.split("\t");
    const kind = head.charAt(0);
    if (kind === "t" || kind === "m") {
      before = [];
      return kind === "t" ? cells : stamps(cells);
    }
    const scale = 10 ** Number(head.slice(1));
    const numbers = numbersOf(kind, cells, before);
    before = numbers;
    return numbers.map((value, row) => (cells[row] === "" ? "" : String(value / scale)));
  });
  const rows = (columns[0] ?? []).map((_, row) => columns.map((cells) => cells[row] ?? ""));
  return Papa.unparse({ fields: header.split("\t"), data: rows }, { newline: "\r\n" });
};
