import type { WiringAnswer } from "../../season/battery/wiring.ts";
import type { Column, Table } from "./table.ts";

/** One size of one cable run. */
export interface WiringRow {
  readonly run: string;
  readonly size: string;
  readonly today: boolean;
  readonly ohm: number;
  readonly ratedA: number;
  readonly dropV: number;
  readonly dropPct: number;
  readonly withinCustom: boolean;
  readonly lossW: number;
  readonly lostWhADay: number;
  readonly lostWhASeason: number;
  readonly returnsWhASeason: number;
}

const rowsOf = ({ runs }: WiringAnswer): readonly WiringRow[] =>
  runs.flatMap(({ run, ratedA, choices }) => choices.map((choice) => ({ run, ratedA, ...choice })));

const COLUMNS: readonly Column<WiringRow>[] = [
  {
    name: "run",
    title: "cable",
    datatype: "string",
    says: "Which cable: from the panel, or to the battery.",
    value: ({ run }) => run,
  },
  {
    name: "size",
    title: "size",
    datatype: "string",
    says: "Cross-section in mm2, or the American gauge.",
    value: ({ size }) => size,
  },
  {
    name: "today",
    title: "today",
    datatype: "boolean",
    says: "Whether it is the size in the plan.",
    value: ({ today }) => today,
  },
  {
    name: "resistance_mohm",
    title: "resistance",
    unit: "milliohms",
    datatype: "decimal",
    says: "Out and back, with its plugs and terminals, warm.",
    value: ({ ohm }) => ohm * 1000,
    decimals: 1,
  },
  {
    name: "rated_A",
    title: "rated current",
    unit: "amperes",
    datatype: "decimal",
    says: "Current that the drop is computed at.",
    value: ({ ratedA }) => ratedA,
    decimals: 1,
  },
  {
    name: "drop_V",
    title: "drop",
    unit: "volts",
    datatype: "decimal",
    says: "Voltage lost along the run at the rated current.",
    value: ({ dropV }) => dropV,
    decimals: 2,
  },
  {
    name: "drop_pct",
    title: "drop",
    unit: "per cent",
    datatype: "decimal",
    says: "The same as a share of the run's voltage.",
    value: ({ dropPct }) => dropPct,
    decimals: 1,
  },
  {
    name: "within_custom",
    title: "within 3 %",
    datatype: "boolean",
    says: "Whether the drop keeps within the customary 3 per cent (common practice).",
    value: ({ withinCustom }) => withinCustom,
  },
  {
    name: "lost_Wh_a_day",
    title: "lost a day",
    unit: "watt-hours",
    datatype: "decimal",
    says: "What the battery is offered less than through a cable without resistance, a day on average.",
    value: ({ lostWhADay }) => lostWhADay,
    decimals: 1,
  },
  {
    name: "lost_Wh_a_season",
    title: "lost a season",
    unit: "watt-hours",
    datatype: "integer",
    says: "The same over the season.",
    value: ({ lostWhASeason }) => lostWhASeason,
  },
  {
    name: "returns_Wh_a_season",
    title: "returns a season",
    unit: "watt-hours",
    datatype: "integer",
    says: "What the battery is offered more than with today's size, over the season.",
    value: ({ returnsWhASeason }) => returnsWhASeason,
  },
];

/** Cables, sizes, and what the next sizes up return. */
export const wiringTable = (answer: WiringAnswer): Table<WiringRow> => ({
  title: "Cables and what they cost",
  columns: COLUMNS,
  rows: rowsOf(answer),
  key: ["run", "size"],
});
