import type { Column, Table } from "../../../lib/report/table/table.ts";
import { compassPoint } from "../../../lib/report/words/words.ts";
import type { CheckedCase, CheckedQuantity, Checks, MeasuredStation, ModelError } from "./outcomes.ts";
import { shareUsed } from "./outcomes.ts";

/** One comparison with the room it belongs to. */
interface ComparisonRow {
  readonly room: string;
  readonly checked: CheckedQuantity;
}

const text = <Row>(name: string, title: string, says: string, value: (row: Row) => string): Column<Row> => ({
  name,
  title,
  datatype: "string",
  says,
  value,
});

/** Two digits as text: differences run from 1e-16 to tens, and no one count of decimals fits them all. */
const twoDigits = (value: number): string => String(Number(value.toPrecision(2)));

/** Every comparison, its count of cases, and how far the worst of them is. */
export const comparisonsTable = ({ sections }: Pick<Checks, "sections">): Table<ComparisonRow> => ({
  title: "Every comparison",
  key: ["room", "quantity", "reference"],
  rows: sections.flatMap(({ room, comparisons }) => comparisons.map((checked) => ({ room, checked }))),
  columns: [
    text("room", "room", "Room of the library.", ({ room }) => room),
    text("quantity", "quantity", "What was compared.", ({ checked }) => checked.quantity),
    text("reference", "reference", "What it was compared with.", ({ checked }) => checked.reference),
    {
      name: "cases",
      title: "cases",
      datatype: "integer",
      says: "How many numbers were compared.",
      value: ({ checked }) => checked.cases.length,
    },
    text("mean_difference", "mean apart", "Mean size of the difference, in its unit.", ({ checked }) =>
      twoDigits(checked.meanDifference),
    ),
    text(
      "greatest_difference",
      "most apart",
      "Greatest size of the difference, in its unit.",
      ({ checked }) => twoDigits(checked.greatestDifference),
    ),
    text("unit", "unit", "Unit of the differences.", ({ checked }) => checked.unit),
    {
      name: "share_used_pct",
      title: "of what is allowed",
      unit: "per cent",
      datatype: "integer",
      says: "Share of its allowance that the worst case uses.",
      value: ({ checked }) => 100 * shareUsed(checked),
    },
    text(
      "cause",
      "why so much is allowed",
      "What leaves room for a difference.",
      ({ checked }) => checked.cause,
    ),
  ],
});

/** Decimals that leave a size so many digits. */
const decimalsFor = (size: number, digits: number): number =>
  size > 0 && Number.isFinite(size)
    ? Math.max(0, Math.min(16, digits - 1 - Math.floor(Math.log10(size))))
    : 0;

/** The cases of one comparison. */
export const casesTable = ({ quantity, cases, unit }: CheckedQuantity): Table<CheckedCase> => {
  const values = decimalsFor(Math.max(...cases.map(([, , theirs]) => Math.abs(theirs))), 5);
  const differences = decimalsFor(Math.min(...cases.map((row) => row[4]).filter((each) => each > 0)), 3);
  const number = (
    name: string,
    title: string,
    says: string,
    at: 1 | 2 | 3 | 4,
    decimals: number,
  ): Column<CheckedCase> => ({ name, title, datatype: "decimal", decimals, says, value: (row) => row[at] });
  return {
    title: quantity,
    key: ["case"],
    rows: cases,
    columns: [
      text("case", "case", "Which case of the source.", ([id]) => id),
      number("ours", "ours", "What the library computes.", 1, Math.max(values, differences)),
      number("theirs", "theirs", "What the source says.", 2, Math.max(values, differences)),
      number("difference", "apart", `Ours minus theirs, ${unit}.`, 3, differences),
      number("allowed", "allowed", `How far apart they may be, ${unit}.`, 4, differences),
    ],
  };
};

interface ErrorRow extends ModelError {
  readonly tiltDeg: number;
  readonly bearingDeg: number;
}

/** Error of the daily sums on each plane of a station, by model. */
export const measuredTable = ({ station, planes }: MeasuredStation): Table<ErrorRow> => {
  const percent = (
    name: string,
    title: string,
    says: string,
    value: (row: ErrorRow) => number,
  ): Column<ErrorRow> => ({ name, title, unit: "per cent", datatype: "decimal", decimals: 1, says, value });
  return {
    title: `Error of daily sums: ${station}`,
    key: ["bearing_deg", "model"],
    rows: planes.flatMap(({ tiltDeg, bearingDeg, errors }) =>
      errors.map((error) => ({ tiltDeg, bearingDeg, ...error })),
    ),
    columns: [
      {
        name: "tilt_deg",
        title: "tilt",
        unit: "degrees",
        datatype: "integer",
        says: "Degrees up from horizontal.",
        value: ({ tiltDeg }) => tiltDeg,
      },
      {
        name: "bearing_deg",
        title: "bearing",
        unit: "degrees",
        datatype: "integer",
        says: "Degrees clockwise from true north.",
        value: ({ bearingDeg }) => bearingDeg,
      },
      text("facing", "facing", "The same in words.", ({ bearingDeg }) => compassPoint(bearingDeg)),
      text("model", "model", "How diffuse light is spread over the sky.", ({ model }) => model),
      {
        name: "days",
        title: "days",
        datatype: "integer",
        says: "Days on which nearly every step was measured.",
        value: ({ days }) => days,
      },
      percent(
        "bias_pct",
        "bias",
        "Computed over measured, all days together, less one.",
        ({ biasPct }) => biasPct,
      ),
      percent(
        "rmse_pct",
        "error",
        "Root-mean-square of the daily differences over the mean day.",
        ({ rmsePct }) => rmsePct,
      ),
    ],
  };
};
