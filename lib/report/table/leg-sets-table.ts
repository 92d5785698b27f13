import type { LegDays, LegSetAnswer } from "../../season/legs/leg-set.ts";
import type { LegsAnswer } from "../../season/legs/legs-answer.ts";
import { energyColumn, legInchesColumn, legMmColumn, tiltColumns } from "./setting-columns.ts";
import type { Column, Table } from "./table.ts";

/** One leg of one set. */
export interface LegSetRow {
  readonly set: LegSetAnswer;
  readonly leg: LegDays;
}

const COLUMNS: readonly Column<LegSetRow>[] = [
  {
    name: "legs",
    title: "legs to cut",
    datatype: "integer",
    says: "How many lengths the set has, beside flat and the legs already owned.",
    value: ({ set }) => set.legs.length,
  },
  legMmColumn<LegSetRow>(({ leg }) => leg.legMm),
  legInchesColumn<LegSetRow>(({ leg }) => leg.legMm),
  ...tiltColumns<LegSetRow>(({ leg }) => leg.tiltDeg),
  energyColumn(
    "season_Wh",
    "season, set",
    "Energy of the season when the best of the set, of the owned legs and of flat is used on each day.",
    ({ set }) => set.totalWh,
  ),
  energyColumn(
    "adds_Wh_a_day",
    "adds, a day",
    "How much a day this set brings more than the best one with a leg fewer: of the season's mean day or of the poorest month's, as asked.",
    ({ set }) => set.addsWh,
    1,
  ),
];

const SHORT_DAYS: Column<LegSetRow> = {
  name: "short_days",
  title: "short days",
  unit: "days",
  datatype: "decimal",
  says: "Days of a mean season on which the loads go short with this set.",
  value: ({ set }) => set.shortDays,
  decimals: 1,
};

/** The best sets of legs, a row for each leg of each set. */
export const legSetsTable = ({ sets }: Pick<LegsAnswer, "sets">): Table<LegSetRow> => ({
  title: "Best legs to cut",
  key: ["legs", "leg_mm"],
  columns: sets.some(({ shortDays }) => shortDays !== null) ? [...COLUMNS, SHORT_DAYS] : COLUMNS,
  rows: sets.flatMap((set) => set.legs.map((leg) => ({ set, leg }))),
});
