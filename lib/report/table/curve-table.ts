import type { CurveToShow } from "../words/curve-to-show.ts";
import type { Table } from "./table.ts";

/** A point on a circuit's curve. */
export interface CurveRow {
  readonly label: string;
  readonly point: string;
  readonly volts: number;
  readonly amps: number;
  readonly watts: number;
}

/** Points written out between short and open circuit. */
const POINTS = 24;

const rowsOf = ({ label, curve }: CurveToShow): readonly CurveRow[] => [
  { label, point: "MPPT", ...curve.mppt },
  { label, point: "PWM", ...curve.pwm },
  ...Array.from({ length: POINTS + 1 }, (_, step): CurveRow => {
    const volts = (curve.openV * step) / POINTS;
    const amps = curve.ampsAt(volts);
    return { label, point: "curve", volts, amps, watts: volts * amps };
  }),
];

/** The curve and the operating points as numbers. A PWM point's watts are those that reach the battery. */
export const curveTable = (shown: readonly CurveToShow[]): Table<CurveRow> => ({
  title: "Current against voltage",
  columns: [
    { name: "curve", title: "curve", datatype: "string", says: "Which curve.", value: ({ label }) => label },
    {
      name: "point",
      title: "point",
      datatype: "string",
      says: "Where a controller works, or a point of the curve.",
      value: ({ point }) => point,
    },
    {
      name: "voltage_V",
      title: "voltage",
      unit: "volts",
      datatype: "decimal",
      says: "At the controller's input.",
      value: ({ volts }) => volts,
      decimals: 2,
    },
    {
      name: "current_A",
      title: "current",
      unit: "amperes",
      datatype: "decimal",
      says: "All panels together.",
      value: ({ amps }) => amps,
      decimals: 3,
    },
    {
      name: "power_W",
      title: "power",
      unit: "watts",
      datatype: "decimal",
      says: "At the controller's input; for PWM into the battery.",
      value: ({ watts }) => watts,
      decimals: 1,
    },
  ],
  rows: shown.flatMap(rowsOf),
  key: ["curve", "voltage_V"],
});
