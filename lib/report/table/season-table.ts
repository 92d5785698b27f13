import type { SeasonYield } from "../../season/light/season-yield.ts";
import { bearingColumn, settingColumn, tiltColumn } from "./setting-columns.ts";
import { type Column, csvText, type Table } from "./table.ts";

/** One day under one setting. */
export interface SeasonRow {
  readonly date: string;
  readonly setting: string;
  readonly tiltDeg: number;
  readonly bearingDeg: number;
  readonly sunHours: number;
  readonly clearWh: number;
  readonly expectedWh: number | null;
  readonly best: boolean;
  readonly band: { readonly p10Wh: number; readonly p50Wh: number; readonly p90Wh: number } | null;
}

/** Days x settings, laid out one row each: all settings of the first day, then of the second. */
export const seasonRows = ({ days, settings, best }: SeasonYield): readonly SeasonRow[] =>
  days.flatMap(({ date, sunHours }, day) =>
    settings.map(({ setting, clearWh, expectedWh, band }, index) => ({
      date,
      setting: setting.name,
      tiltDeg: setting.tiltDeg,
      bearingDeg: setting.bearingDeg,
      sunHours,
      clearWh: clearWh[day],
      expectedWh: expectedWh === null ? null : expectedWh[day],
      best: best[day] === index,
      band: band && { p10Wh: band.p10Wh[day], p50Wh: band.p50Wh[day], p90Wh: band.p90Wh[day] },
    })),
  );

const COLUMNS: readonly Column<SeasonRow>[] = [
  {
    name: "date",
    title: "date",
    datatype: "date",
    says: "Civil date, in the site's time zone, of the solar noon of the day.",
    value: ({ date }) => date,
  },
  settingColumn(({ setting }) => setting),
  tiltColumn(({ tiltDeg }) => tiltDeg),
  bearingColumn(({ bearingDeg }) => bearingDeg),
  {
    name: "sun_hours",
    title: "sun up",
    unit: "hours",
    datatype: "decimal",
    says: "Hours with the sun above the level horizon.",
    value: ({ sunHours }) => sunHours,
    decimals: 2,
  },
  {
    name: "clear_Wh",
    title: "clear sky",
    unit: "watt-hours",
    datatype: "integer",
    says: "Energy of the day under a clear sky: an upper bound.",
    value: ({ clearWh }) => clearWh,
  },
  {
    name: "expected_Wh",
    title: "expected",
    unit: "watt-hours",
    datatype: "integer",
    says: "Energy of the day with cloud included; empty when only the clear sky is known.",
    value: ({ expectedWh }) => expectedWh,
  },
  {
    name: "best",
    title: "best",
    datatype: "boolean",
    says: "Whether this setting brings in the most on this day.",
    value: ({ best }) => best,
  },
];

const bandColumn = (
  point: "p10Wh" | "p50Wh" | "p90Wh",
  name: string,
  title: string,
  says: string,
): Column<SeasonRow> => ({
  name,
  title,
  unit: "watt-hours",
  datatype: "integer",
  says,
  value: ({ band }) => band?.[point] ?? null,
});

const BAND_COLUMNS: readonly Column<SeasonRow>[] = [
  bandColumn("p10Wh", "p10_Wh", "p10", "Nine days in ten of this date bring in more than this."),
  bandColumn("p50Wh", "p50_Wh", "p50", "Half the days of this date bring in more than this."),
  bandColumn("p90Wh", "p90_Wh", "p90", "One day in ten of this date brings in more than this."),
];

/** The season's table: a row for each day and setting. The band's columns are there when a band is known. */
export const seasonTable = (yields: SeasonYield): Table<SeasonRow> => {
  const rows = seasonRows(yields);
  return {
    title: "Watt-hours a day for each setting",
    columns: rows.some(({ band }) => band !== null) ? [...COLUMNS, ...BAND_COLUMNS] : COLUMNS,
    rows,
    key: ["date", "setting"],
  };
};

/** The season as CSV, beginning `date,setting,tilt_deg,bearing_deg,sun_hours,clear_Wh,expected_Wh`. */
export const seasonCsv = (yields: SeasonYield): string => csvText(seasonTable(yields));
