import type { CuttingSheet, SheetLeg } from "../../stand/cutting-sheet.ts";
import { inchesText } from "../../units/length.ts";
import { legInchesColumn, legMmColumn, tiltColumns } from "./setting-columns.ts";
import type { Column, Table } from "./table.ts";

const COLUMNS: readonly Column<SheetLeg>[] = [
  {
    name: "mark",
    title: "mark",
    datatype: "string",
    says: "Letter to write on the leg.",
    value: ({ mark }) => mark,
  },
  { name: "leg", title: "for", datatype: "string", says: "Name of the leg.", value: ({ name }) => name },
  {
    name: "cut",
    title: "cut",
    datatype: "integer",
    says: "How many pieces to cut; 0 of a leg that is owned already.",
    value: ({ howMany }) => howMany,
  },
  {
    name: "piece_mm",
    title: "piece",
    unit: "millimetres",
    datatype: "decimal",
    says: "Length to saw: the leg, less a rubber foot, plus the margin beyond the hole.",
    value: ({ pieceMm }) => pieceMm,
    decimals: 1,
  },
  {
    name: "piece_in",
    title: "piece, inches",
    datatype: "string",
    says: "The same in inches, to the nearest 1/16.",
    value: ({ pieceMm }) => inchesText(pieceMm),
  },
  {
    name: "hole_mm",
    title: "hole from the end",
    unit: "millimetres",
    datatype: "decimal",
    says: "From the upper end of the piece to the centre of the pivot hole.",
    value: ({ holeFromEndMm }) => holeFromEndMm,
    decimals: 1,
  },
  legMmColumn<SheetLeg>(({ legMm }) => legMm),
  legInchesColumn<SheetLeg>(({ legMm }) => legMm),
  ...tiltColumns<SheetLeg>(({ tiltDeg }) => tiltDeg),
  {
    name: "stows",
    title: "stows",
    datatype: "boolean",
    says: "Whether the leg stows inside the frame.",
    value: ({ stowing }) => stowing === null,
  },
];

/** The pieces to saw, a row for each length. */
export const piecesTable = ({ legs }: CuttingSheet): Table<SheetLeg> => ({
  title: "Pieces to cut",
  key: ["mark"],
  columns: COLUMNS,
  rows: legs,
});
