import type { SettingFacts } from "../../season/legs/legs-answer.ts";
import { BEARING_ERRORS_DEG, type TiltBand, type ToleranceCost } from "../../season/legs/tolerance.ts";
import type { Period } from "../../season/light/periods.ts";
import { energyColumn, settingColumn } from "./setting-columns.ts";
import type { Column, Table } from "./table.ts";

/** One setting in one period. */
export interface ToleranceRow extends ToleranceCost {
  readonly setting: string;
}

const periodColumn = <Row extends { readonly period: Period }>(): Column<Row> => ({
  name: "period",
  title: "period",
  datatype: "string",
  says: "season, or a calendar month of it.",
  value: ({ period }) => period.name,
});

const TOLERANCE_COLUMNS: readonly Column<ToleranceRow>[] = [
  settingColumn(({ setting }) => setting),
  periodColumn<ToleranceRow>(),
  energyColumn(
    "mean_Wh_a_day",
    "a day",
    "What a mean day of the period brings at this setting.",
    ({ dayWh }) => dayWh,
  ),
  energyColumn(
    "per_mm_Wh_a_day",
    "1 mm of leg",
    "What a leg 1 mm too long or short costs a day; empty for flat.",
    ({ perMmWh }) => perMmWh,
    2,
  ),
  energyColumn(
    "per_degree_Wh_a_day",
    "1° of tilt",
    "What a tilt 1 degree off costs a day.",
    ({ perDegWh }) => perDegWh,
    2,
  ),
  ...BEARING_ERRORS_DEG.map((error, index) =>
    energyColumn<ToleranceRow>(
      `bearing_${error}_deg_Wh_a_day`,
      `${error}° of bearing`,
      `What facing ${error} degrees to the wrong side costs a day, the worse of the two.`,
      ({ bearingWh }) => bearingWh[index],
      1,
    ),
  ),
];

/** What small errors cost, for each setting over the season and each month. */
export const toleranceTable = (settings: readonly SettingFacts[]): Table<ToleranceRow> => ({
  title: "What small errors cost, Wh a day",
  key: ["setting", "period"],
  columns: TOLERANCE_COLUMNS,
  rows: settings.flatMap(({ setting, tolerance }) =>
    tolerance.map((cost) => ({ ...cost, setting: setting.name })),
  ),
});

const tiltColumn = (
  name: string,
  title: string,
  says: string,
  value: (band: TiltBand) => number,
): Column<TiltBand> => ({
  name,
  title,
  unit: "degrees",
  datatype: "integer",
  says,
  value,
});

const BAND_COLUMNS: readonly Column<TiltBand>[] = [
  periodColumn<TiltBand>(),
  tiltColumn(
    "best_tilt_deg",
    "best tilt",
    "Tilt up from horizontal that brings most.",
    ({ bestTiltDeg }) => bestTiltDeg,
  ),
  energyColumn("best_Wh_a_day", "a day", "What a mean day brings at the best tilt.", ({ dayWh }) => dayWh),
  tiltColumn(
    "within_1pct_from_deg",
    "1 %: from",
    "Lowest tilt within 1 % of the best.",
    ({ within1Pct }) => within1Pct[0],
  ),
  tiltColumn(
    "within_1pct_to_deg",
    "to",
    "Highest tilt within 1 % of the best.",
    ({ within1Pct }) => within1Pct[1],
  ),
  tiltColumn(
    "within_3pct_from_deg",
    "3 %: from",
    "Lowest tilt within 3 % of the best.",
    ({ within3Pct }) => within3Pct[0],
  ),
  tiltColumn(
    "within_3pct_to_deg",
    "to",
    "Highest tilt within 3 % of the best.",
    ({ within3Pct }) => within3Pct[1],
  ),
];

/** Tilts that are good enough, for the season and each month; read from the ground. */
export const bandsTable = (bands: readonly TiltBand[]): Table<TiltBand> => ({
  title: "Tilts that are good enough, from the ground",
  key: ["period"],
  columns: BAND_COLUMNS,
  rows: bands,
});
