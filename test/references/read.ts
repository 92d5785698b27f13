import { readFileSync } from "node:fs";
import Papa from "papaparse";

/** One row of a reference table: column name to its text. */
export type ReferenceRow = Readonly<Record<string, string>>;

/** Reads a reference table that stands beside the tests. Empty fields stay empty strings. */
export const readReference = (file: string): readonly ReferenceRow[] => {
  const text = readFileSync(new URL(file, import.meta.url), "utf8");
  const { data, errors } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  if (errors.length > 0)
    throw new Error(`${file}: ${errors.map((e) => `row ${e.row}: ${e.message}`).join("; ")}`);
  return data;
};

/** The `inputs` field of a row (`latitude_deg=40;hour=9-10 solar`) as a record. */
export const inputsOf = (row: ReferenceRow): Readonly<Record<string, string>> =>
  Object.fromEntries(
    (row.inputs ?? "").split(";").map((pair) => {
      const at = pair.indexOf("=");
      return [pair.slice(0, at).trim(), pair.slice(at + 1).trim()];
    }),
  );
