import { csvText, type Table } from "../../report/table/table.ts";
import type { BatchResult } from "./result.ts";

interface BatchRow {
  readonly line: number;
  readonly plan: string | null;
  readonly latitudeDeg: number | null;
  readonly longitudeDeg: number | null;
  readonly from: string | null;
  readonly to: string | null;
  readonly sky: string | null;
  readonly climate: string | null;
  readonly setting: string | null;
  readonly tiltDeg: number | null;
  readonly bearingDeg: number | null;
  readonly clearWh: number | null;
  readonly expectedWh: number | null;
  readonly p10Wh: number | null;
  readonly p50Wh: number | null;
  readonly p90Wh: number | null;
  readonly daysBest: number | null;
  readonly problem: string | null;
}

const EMPTY: Omit<BatchRow, "line"> = {
  plan: null,
  latitudeDeg: null,
  longitudeDeg: null,
  from: null,
  to: null,
  sky: null,
  climate: null,
  setting: null,
  tiltDeg: null,
  bearingDeg: null,
  clearWh: null,
  expectedWh: null,
  p10Wh: null,
  p50Wh: null,
  p90Wh: null,
  daysBest: null,
  problem: null,
};

const rowsOf = (result: BatchResult): readonly BatchRow[] =>
  "problems" in result
    ? result.problems.map((problem) => ({ ...EMPTY, line: result.line, problem }))
    : result.settings.map((setting) => ({
        line: result.line,
        plan: result.plan,
        latitudeDeg: result.latitude_deg,
        longitudeDeg: result.longitude_deg,
        from: result.from,
        to: result.to,
        sky: result.sky,
        climate: result.climate,
        setting: setting.setting,
        tiltDeg: setting.tilt_deg,
        bearingDeg: setting.bearing_deg,
        clearWh: setting.clear_Wh,
        expectedWh: setting.expected_Wh,
        p10Wh: setting.p10_Wh,
        p50Wh: setting.p50_Wh,
        p90Wh: setting.p90_Wh,
        daysBest: setting.days_best,
        problem: null,
      }));

/** Results of a batch as a table: a row for each plan and setting, or for each problem of a plan that has one. */
const batchTable = (results: readonly BatchResult[]): Table<BatchRow> => ({
  title: "Season totals of many plans",
  key: ["line", "setting"],
  rows: results.flatMap(rowsOf),
  columns: [
    {
      name: "line",
      title: "line",
      datatype: "integer",
      says: "Line of the plan in the input.",
      value: (row) => row.line,
    },
    { name: "plan", title: "plan", datatype: "string", says: "Name of the plan.", value: (row) => row.plan },
    {
      name: "latitude_deg",
      title: "latitude",
      unit: "degrees",
      datatype: "decimal",
      decimals: 4,
      says: "North is positive.",
      value: (row) => row.latitudeDeg,
    },
    {
      name: "longitude_deg",
      title: "longitude",
      unit: "degrees",
      datatype: "decimal",
      decimals: 4,
      says: "East is positive.",
      value: (row) => row.longitudeDeg,
    },
    {
      name: "from",
      title: "from",
      datatype: "date",
      says: "First day of the season.",
      value: (row) => row.from,
    },
    { name: "to", title: "to", datatype: "date", says: "Last day of the season.", value: (row) => row.to },
    {
      name: "sky",
      title: "sky",
      datatype: "string",
      says: "Where the light comes from.",
      value: (row) => row.sky,
    },
    {
      name: "climate",
      title: "climate",
      datatype: "string",
      says: "The places whose climate was taken, with distance, height and source; rough where it says so.",
      value: (row) => row.climate,
    },
    {
      name: "setting",
      title: "setting",
      datatype: "string",
      says: "The leg in use, or flat.",
      value: (row) => row.setting,
    },
    {
      name: "tilt_deg",
      title: "tilt",
      unit: "degrees",
      datatype: "decimal",
      decimals: 1,
      says: "Up from level.",
      value: (row) => row.tiltDeg,
    },
    {
      name: "bearing_deg",
      title: "bearing",
      unit: "degrees",
      datatype: "decimal",
      decimals: 1,
      says: "Clockwise from true north.",
      value: (row) => row.bearingDeg,
    },
    {
      name: "clear_Wh",
      title: "clear sky",
      unit: "watt-hours",
      datatype: "integer",
      says: "Season total under a clear sky: an upper bound.",
      value: (row) => row.clearWh,
    },
    {
      name: "expected_Wh",
      title: "expected",
      unit: "watt-hours",
      datatype: "integer",
      says: "Season total with cloud in it.",
      value: (row) => row.expectedWh,
    },
    {
      name: "p10_Wh",
      title: "p10",
      unit: "watt-hours",
      datatype: "integer",
      says: "Nine seasons in ten bring more.",
      value: (row) => row.p10Wh,
    },
    {
      name: "p50_Wh",
      title: "p50",
      unit: "watt-hours",
      datatype: "integer",
      says: "Every other season brings more.",
      value: (row) => row.p50Wh,
    },
    {
      name: "p90_Wh",
      title: "p90",
      unit: "watt-hours",
      datatype: "integer",
      says: "One season in ten brings more.",
      value: (row) => row.p90Wh,
    },
    {
      name: "days_best",
      title: "days best",
      datatype: "integer",
      says: "Days on which this setting is the best.",
      value: (row) => row.daysBest,
    },
    {
      name: "problem",
      title: "problem",
      datatype: "string",
      says: "Why the plan can't be used.",
      value: (row) => row.problem,
    },
  ],
});

const HEADER_END = "\r\n";

/** The header row of the results as CSV. */
export const batchCsvHeader = (): string => csvText(batchTable([]));

/** One result as CSV rows, without the header. */
export const batchCsvRows = (result: BatchResult): string => {
  const text = csvText(batchTable([result]));
  return text.slice(text.indexOf(HEADER_END) + HEADER_END.length);
};
