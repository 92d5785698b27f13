import { type SwapRow, swapRows } from "../../season/legs/swap-rows.ts";
import type { SwapsAnswer } from "../../season/legs/swaps-answer.ts";
import { bearingColumn, energyColumn, legMmColumn, tiltColumns } from "./setting-columns.ts";
import type { Column, Table } from "./table.ts";

const COLUMNS: readonly Column<SwapRow>[] = [
  {
    name: "date",
    title: "from",
    datatype: "date",
    says: "First day of the new setting; the first row is how the season begins.",
    value: ({ date }) => date,
  },
  {
    name: "setting",
    title: "use",
    datatype: "string",
    says: "Leg to use from then on, or flat.",
    value: ({ to }) => to.name,
  },
  {
    name: "instead_of",
    title: "instead of",
    datatype: "string",
    says: "Setting until then; empty for the first.",
    value: ({ from }) => from?.name ?? null,
  },
  legMmColumn<SwapRow>(({ to }) => to.legMm),
  ...tiltColumns<SwapRow>(({ to }) => to.tiltDeg),
  energyColumn(
    "worth_Wh",
    "worth",
    "What is lost when this swap is left out, until the next one; empty for the first.",
    ({ swap }) => swap?.worthWh ?? null,
  ),
  {
    name: "earliest",
    title: "no sooner than",
    datatype: "date",
    says: "The earliest day for this swap that alone costs no more than the slack allowed.",
    value: ({ earliest }) => earliest,
  },
  {
    name: "latest",
    title: "no later than",
    datatype: "date",
    says: "The latest such day.",
    value: ({ latest }) => latest,
  },
];

const BEARING = bearingColumn<SwapRow>(({ to }) => to.bearingDeg);

/** Whether the stand may face more than one way: only then is its bearing a part of what to do. */
const turnsRound = ({ settings }: SwapsAnswer): boolean =>
  settings.some(({ bearingDeg }) => bearingDeg !== settings[0].bearingDeg);

/** The swap calendar. */
export const swapsTable = (answer: SwapsAnswer): Table<SwapRow> => ({
  title: "When to change legs",
  key: ["date"],
  columns: turnsRound(answer) ? [...COLUMNS, BEARING] : COLUMNS,
  rows: swapRows(answer),
});
