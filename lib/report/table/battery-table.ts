import type { BatterySeason } from "../../season/battery/battery-season.ts";
import type { Column, Table } from "./table.ts";

/** One day of a battery's season, over all its skies. */
export interface BatteryRow {
  readonly date: string;
  readonly offeredWh: number;
  readonly usedWh: number;
  readonly shortWh: number;
  readonly curtailedWh: number;
  readonly lowestPct: number;
  readonly band: { readonly p10Pct: number; readonly p50Pct: number; readonly p90Pct: number } | null;
  readonly shortPct: number;
  readonly blockedPct: number;
}

const rowsOf = (season: BatterySeason): readonly BatteryRow[] =>
  season.days.map(({ date }, day) => ({
    date,
    offeredWh: season.meanOfferedWh[day],
    usedWh: season.meanUsedWh[day],
    shortWh: season.meanShortWh[day],
    curtailedWh: season.meanCurtailedWh[day],
    lowestPct: 100 * season.meanLowest[day],
    band: season.lowest && {
      p10Pct: 100 * season.lowest.p10[day],
      p50Pct: 100 * season.lowest.p50[day],
      p90Pct: 100 * season.lowest.p90[day],
    },
    shortPct: 100 * season.shortShare[day],
    blockedPct: 100 * season.blockedShare[day],
  }));

const wh = (
  name: string,
  title: string,
  says: string,
  value: (row: BatteryRow) => number,
): Column<BatteryRow> => ({ name, title, unit: "watt-hours", datatype: "integer", says, value });

const pct = (
  name: string,
  title: string,
  says: string,
  value: (row: BatteryRow) => number | null,
): Column<BatteryRow> => ({ name, title, unit: "per cent", datatype: "integer", says, value });

const COLUMNS: readonly Column<BatteryRow>[] = [
  {
    name: "date",
    title: "date",
    datatype: "date",
    says: "Civil date, in the site's time zone, of the solar noon of the day.",
    value: ({ date }) => date,
  },
  wh("offered_Wh", "offered", "What the controller could have put out.", ({ offeredWh }) => offeredWh),
  wh("used_Wh", "used", "What the loads got.", ({ usedWh }) => usedWh),
  wh("short_Wh", "short", "What the loads asked for and did not get.", ({ shortWh }) => shortWh),
  wh(
    "curtailed_Wh",
    "curtailed",
    "Offered and taken by nothing: battery full, too cold, or too slow.",
    ({ curtailedWh }) => curtailedWh,
  ),
  pct(
    "lowest_charge_pct",
    "lowest charge",
    "Lowest state of charge of the day, of the whole capacity.",
    ({ lowestPct }) => lowestPct,
  ),
  pct(
    "short_chance_pct",
    "chance of a short day",
    "Share of the seasons in which this day is short.",
    ({ shortPct }) => shortPct,
  ),
  pct(
    "too_cold_chance_pct",
    "chance of too cold",
    "Share of the seasons in which the cold keeps the battery from being charged on this day.",
    ({ blockedPct }) => blockedPct,
  ),
];

const BAND_COLUMNS: readonly Column<BatteryRow>[] = [
  pct(
    "p10_charge_pct",
    "p10",
    "Nine seasons in ten stay above this on this day.",
    ({ band }) => band?.p10Pct ?? null,
  ),
  pct(
    "p50_charge_pct",
    "p50",
    "Half the seasons stay above this on this day.",
    ({ band }) => band?.p50Pct ?? null,
  ),
  pct(
    "p90_charge_pct",
    "p90",
    "One season in ten stays above this on this day.",
    ({ band }) => band?.p90Pct ?? null,
  ),
];

/** The battery's season, a row a day: means over the seasons, and the band of the charge where there are enough of them. */
export const batteryTable = (season: BatterySeason): Table<BatteryRow> => ({
  title: "The battery through the season",
  columns: season.lowest === null ? COLUMNS : [...COLUMNS, ...BAND_COLUMNS],
  rows: rowsOf(season),
  key: ["date"],
});
