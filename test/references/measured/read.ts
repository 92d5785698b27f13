import { readFileSync } from "node:fs";
import { gunzipSync } from "node:zlib";
import Papa from "papaparse";

/** Columns of a measured series: numbers by header, NaN where nothing was measured, beside the stamps. */
export interface MeasuredSeries {
  /** Stamps, UTC milliseconds. */
  readonly stampMs: Float64Array;
  readonly column: (header: string) => Float64Array;
}

/** Reads a measured series that stands beside this file, packed or not. */
export const readMeasured = (file: string): MeasuredSeries => {
  const bytes = readFileSync(new URL(file, import.meta.url));
  const text = (file.endsWith(".gz") ? gunzipSync(bytes) : bytes).toString("utf8");
  const { data, errors } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message} in row ${errors[0]?.row}`);
  return {
    stampMs: Float64Array.from(data, (row) => Date.parse(row.time_utc)),
    column: (header) => {
      if (data[0]?.[header] === undefined) throw new Error(`${file}: no column ${header}`);
      return Float64Array.from(data, (row) => (row[header] === "" ? Number.NaN : Number(row[header])));
    },
  };
};
