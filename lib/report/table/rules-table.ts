import type { RuleOfThumb } from "../../season/legs/rules-of-thumb.ts";
import { otherReading } from "../../units/angle.ts";
import { energyColumn } from "./setting-columns.ts";
import type { Column, Table } from "./table.ts";

const degrees = (
  name: string,
  title: string,
  says: string,
  value: (rule: RuleOfThumb) => number,
): Column<RuleOfThumb> => ({
  name,
  title,
  unit: "degrees",
  datatype: "integer",
  says,
  value,
});

const COLUMNS: readonly Column<RuleOfThumb>[] = [
  { name: "rule", title: "rule", datatype: "string", says: "The rule of thumb.", value: ({ rule }) => rule },
  degrees(
    "tilt_from_deg",
    "from the ground: least",
    "Lowest tilt it asks for, up from horizontal.",
    ({ tiltDeg }) => tiltDeg[0],
  ),
  degrees("tilt_to_deg", "most", "Highest tilt it asks for.", ({ tiltDeg }) => tiltDeg[1]),
  degrees("post_from_deg", "from a post: least", "The highest tilt read from a post.", ({ tiltDeg }) =>
    otherReading(Math.round(tiltDeg[1])),
  ),
  degrees("post_to_deg", "most", "The lowest tilt read from a post.", ({ tiltDeg }) =>
    otherReading(Math.round(tiltDeg[0])),
  ),
  energyColumn(
    "season_Wh",
    "season",
    "Energy of the season when the rule is followed, facing as the stand does.",
    ({ totalWh }) => totalWh,
  ),
  energyColumn(
    "loss_Wh",
    "loss",
    "What is lost against the computed best: of one tilt never changed, or of a new tilt every day for rules that change.",
    // The computed best against itself differs by rounding.
    ({ lossWh }) => Math.max(0, lossWh),
  ),
  {
    name: "loss_pct",
    title: "loss",
    unit: "per cent",
    datatype: "decimal",
    says: "The same as a share of the best.",
    value: ({ lossShare }) => Math.max(0, 100 * lossShare),
    decimals: 1,
  },
];

/** Rules of thumb against the computed best. */
export const rulesTable = (rules: readonly RuleOfThumb[]): Table<RuleOfThumb> => ({
  title: "Rules of thumb against the computed best",
  key: ["rule"],
  columns: COLUMNS,
  rows: rules,
});
