import { otherReading, wrapBearing } from "../../units/angle.ts";
import { inchesText } from "../../units/length.ts";
import type { Column } from "./table.ts";

/** Columns that all tables about settings and legs have alike. */

/** The setting's name; empty where there is none. */
export const settingColumn = <Row>(name: (row: Row) => string | null): Column<Row> => ({
  name: "setting",
  title: "setting",
  datatype: "string",
  says: "Name of the leg in use, or flat.",
  value: name,
});

/** The tilt from the ground alone, for tables that are wide enough without the reading from a post. */
export const tiltColumn = <Row>(tiltDeg: (row: Row) => number | null): Column<Row> => ({
  name: "tilt_deg",
  title: "tilt",
  unit: "degrees",
  datatype: "decimal",
  says: "Tilt of the panel, up from horizontal: 0 is flat, 90 upright.",
  value: tiltDeg,
  decimals: 1,
});

/** A bearing as it is written: one that rounds up to 360 is north, 0. */
export const writtenBearing = (bearingDeg: number, decimals: number): number =>
  Number(wrapBearing(bearingDeg).toFixed(decimals)) % 360;

/** The bearing that the panel faces; empty where it faces none. */
export const bearingColumn = <Row>(bearingDeg: (row: Row) => number | null): Column<Row> => ({
  name: "bearing_deg",
  title: "bearing",
  unit: "degrees",
  datatype: "decimal",
  says: "Bearing the panel faces, clockwise from true north.",
  value: (row) => {
    const bearing = bearingDeg(row);
    return bearing === null ? null : writtenBearing(bearing, 1);
  },
  decimals: 1,
});

/** A leg's length in millimetres; empty for flat. */
export const legMmColumn = <Row>(legMm: (row: Row) => number | null): Column<Row> => ({
  name: "leg_mm",
  title: "leg",
  unit: "millimetres",
  datatype: "decimal",
  says: "Length of the leg from the centre of the pivot hole to the foot; empty for flat.",
  value: legMm,
  decimals: 1,
});

/** The same in inches to the nearest sixteenth, as a tape reads it. */
export const legInchesColumn = <Row>(legMm: (row: Row) => number | null): Column<Row> => ({
  name: "leg_in",
  title: "leg, inches",
  datatype: "string",
  says: "The same in inches, to the nearest 1/16.",
  value: (row) => {
    const length = legMm(row);
    return length === null ? null : inchesText(length);
  },
});

/** Both readings of a tilt, always side by side. */
export const tiltColumns = <Row>(tiltDeg: (row: Row) => number): readonly Column<Row>[] => [
  {
    name: "tilt_deg",
    title: "from the ground",
    unit: "degrees",
    datatype: "decimal",
    says: "Tilt of the panel up from horizontal: 0 is flat, 90 upright.",
    value: tiltDeg,
    decimals: 1,
  },
  {
    name: "from_post_deg",
    title: "from a post",
    unit: "degrees",
    datatype: "decimal",
    says: "The same tilt read from an upright post: 90 less the tilt.",
    value: (row) => otherReading(Number(tiltDeg(row).toFixed(1))),
    decimals: 1,
  },
];

/** A column of watt-hours. */
export const energyColumn = <Row>(
  name: string,
  title: string,
  says: string,
  value: (row: Row) => number | null,
  decimals = 0,
): Column<Row> => ({
  name,
  title,
  unit: "watt-hours",
  datatype: decimals === 0 ? "integer" : "decimal",
  says,
  value,
  decimals,
});
