import type { OperatingCurve } from "../../circuit/operating-points.ts";
import type { Table } from "./table.ts";

/** What power tracking gains over holding the panel at the battery's voltage, at one cell temperature. */
export interface ControllerGain {
  readonly cellC: number;
  readonly mpptW: number;
  readonly pwmW: number;
  readonly gainPct: number;
}

/** Cell temperatures from a frosty morning to a hot roof, degC. */
const CELLS_C: readonly number[] = Array.from({ length: 19 }, (_, step) => -15 + 5 * step);

/** The gain at each temperature, for a circuit's curve made at it. */
export const controllerGains = (curveAtC: (cellC: number) => OperatingCurve): readonly ControllerGain[] =>
  CELLS_C.map((cellC) => {
    const { mppt, pwm } = curveAtC(cellC);
    const gainPct = pwm.watts > 0 ? 100 * (mppt.watts / pwm.watts - 1) : 0;
    return { cellC, mpptW: mppt.watts, pwmW: pwm.watts, gainPct };
  });

/** The gains as a table. */
export const controllerGainTable = (gains: readonly ControllerGain[]): Table<ControllerGain> => ({
  title: "What power tracking gains, by cell temperature",
  columns: [
    {
      name: "cell_degC",
      title: "cells",
      unit: "degrees Celsius",
      datatype: "integer",
      says: "Cell temperature.",
      value: ({ cellC }) => cellC,
    },
    {
      name: "mppt_W",
      title: "MPPT",
      unit: "watts",
      datatype: "decimal",
      says: "Maximum power at the controller's input.",
      value: ({ mpptW }) => mpptW,
      decimals: 1,
    },
    {
      name: "pwm_W",
      title: "PWM",
      unit: "watts",
      datatype: "decimal",
      says: "Power into a half-charged battery.",
      value: ({ pwmW }) => pwmW,
      decimals: 1,
    },
    {
      name: "gain_pct",
      title: "gain",
      unit: "per cent",
      datatype: "decimal",
      says: "How much more MPPT gives, before its own loss of a few per cent.",
      value: ({ gainPct }) => gainPct,
      decimals: 1,
    },
  ],
  rows: gains,
  key: ["cell_degC"],
});
