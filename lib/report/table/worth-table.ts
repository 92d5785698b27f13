import type { TopUpWay, Worth } from "../../plan/worth.ts";
import type { Coping } from "../../season/battery/coping.ts";
import type { WorthAnswer, WorthRow } from "../../season/battery/worth.ts";
import { WAY_WORDS } from "../words/coping-words.ts";
import { worthVerdict } from "../words/worth-words.ts";
import type { Column, Table } from "./table.ts";

/** One set-up, today's first. */
export interface WorthTableRow {
  readonly name: string;
  readonly says: string;
  /** `null` for today's set-up, which is there already. */
  readonly row: WorthRow | null;
  readonly shortDays: number;
  readonly shortDaysP90: number | null;
  readonly shortWh: number;
  readonly usedWhADay: number;
  readonly blockedDays: number;
  readonly coping: Coping;
  readonly verdict: string;
}

const rowsOf = (answer: WorthAnswer, worth: Worth): readonly WorthTableRow[] => [
  { name: "as is", says: "today", row: null, ...answer.asIs, verdict: "" },
  ...answer.rows.map((row) => ({ ...row, row, verdict: worthVerdict(row, answer, worth) })),
];

type Numeric = (row: WorthTableRow) => number | null;

const decimal = (
  name: string,
  title: string,
  unit: string,
  says: string,
  decimals: number,
  value: Numeric,
): Column<WorthTableRow> => ({
  name,
  title,
  unit,
  datatype: decimals === 0 ? "integer" : "decimal",
  says,
  decimals,
  value,
});

const columns = (currency: string, way: TopUpWay): readonly Column<WorthTableRow>[] => [
  {
    name: "set_up",
    title: "set-up",
    datatype: "string",
    says: "Name of the set-up.",
    value: ({ name }) => name,
  },
  {
    name: "changes",
    title: "what changes",
    datatype: "string",
    says: "What differs from today.",
    value: ({ says }) => says,
  },
  decimal(
    "short_days",
    "short days",
    "days a season",
    "Short days a season, on average.",
    1,
    (row) => row.shortDays,
  ),
  decimal(
    "short_days_p90",
    "in a bad season",
    "days",
    "One season in ten has more short days than this; empty with fewer than five seasons.",
    0,
    (row) => row.shortDaysP90,
  ),
  decimal(
    "short_Wh",
    "short",
    "watt-hours a season",
    "What the loads do not get, a season on average.",
    0,
    (row) => row.shortWh,
  ),
  decimal(
    "used_Wh_a_day",
    "used",
    "watt-hours a day",
    "What the loads get, a day on average.",
    0,
    (row) => row.usedWhADay,
  ),
  decimal(
    "paper_Wh_a_day",
    "more on paper",
    "watt-hours a day",
    "How much more the panels could give than today.",
    0,
    ({ row }) => row?.paperWhADay ?? null,
  ),
  decimal(
    "useful_Wh_a_day",
    "more in use",
    "watt-hours a day",
    "How much more the loads get than today.",
    1,
    ({ row }) => row?.usefulWhADay ?? null,
  ),
  decimal("price", "price", currency, "What it costs.", 0, ({ row }) => row?.price ?? null),
  decimal(
    "price_short_day",
    "a short day avoided",
    currency,
    "Price for each short day avoided over the years stated; empty where none is.",
    2,
    ({ row }) => row?.pricePerShortDay ?? null,
  ),
  decimal(
    "price_useful_kWh",
    "a useful kWh",
    currency,
    "Price for each kWh more that the loads get over the years stated; empty where there is none.",
    2,
    ({ row }) => row?.pricePerUsefulKWh ?? null,
  ),
  decimal(
    "blocked_days",
    "too cold to charge",
    "days a season",
    "Days on which the cold keeps the battery from being charged.",
    0,
    (row) => row.blockedDays,
  ),
  decimal(
    "top_ups",
    "top-ups",
    "times a season",
    `Times that the battery is topped up when it is flat (${WAY_WORDS[way]}).`,
    1,
    ({ coping }) => coping.topUps,
  ),
  decimal(
    "top_up_price",
    "for topping up",
    `${currency} a season`,
    "What topping up costs.",
    0,
    ({ coping }) => coping.price,
  ),
  decimal(
    "seasons_to_pay",
    "pays after",
    "seasons",
    `Seasons until it has saved its price in topping up by ${WAY_WORDS[way]}; empty where it never does.`,
    1,
    ({ row }) => row?.paysAfter ?? null,
  ),
  {
    name: "verdict",
    title: "verdict",
    datatype: "string",
    says: "What to make of it, and why.",
    value: ({ verdict }) => (verdict === "" ? null : verdict),
  },
];

/** Set-ups side by side under the same skies. */
export const worthTable = (answer: WorthAnswer, worth: Worth): Table<WorthTableRow> => ({
  title: "What each set-up is worth",
  columns: columns(worth.currency, answer.asIs.coping.by),
  rows: rowsOf(answer, worth),
  key: ["set_up"],
});
