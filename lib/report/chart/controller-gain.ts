import * as Plot from "@observablehq/plot";
import type { OperatingCurve } from "../../circuit/operating-points.ts";
import type { Table } from "../table/table.ts";
import { type ChartFrame, drawChart, isNarrow, valueAxis } from "./chart-base.ts";
import { colour } from "./theme.ts";

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
  title: "What power tracking gains, by warmth",
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
      says: "What MPPT gives more, before its own loss of a few per cent.",
      value: ({ gainPct }) => gainPct,
      decimals: 1,
    },
  ],
  rows: gains,
  key: ["cell_degC"],
});

/** What power tracking gains over PWM, against the warmth of the cells: it falls as the panel's voltage does. */
export const controllerGainChart = (gains: readonly ControllerGain[], frame: ChartFrame): SVGSVGElement =>
  drawChart(frame, {
    name: "What power tracking gains over PWM, by cell temperature",
    description: `From ${gains[0]?.gainPct.toFixed(0)} % at ${gains[0]?.cellC} °C to ${gains.at(-1)?.gainPct.toFixed(0)} % at ${gains.at(-1)?.cellC} °C.`,
    height: frame.height ?? (isNarrow(frame) ? 260 : 300),
    marginTop: 34,
    marginLeft: 44,
    marginRight: 20,
    marginBottom: 44,
    x: { domain: [-15, 75] },
    y: {
      domain: [
        Math.min(0, ...gains.map(({ gainPct }) => gainPct)),
        Math.max(5, ...gains.map(({ gainPct }) => gainPct)) * 1.1,
      ],
    },
    marks: [
      ...valueAxis("% more from MPPT", 5),
      Plot.axisX({ anchor: "bottom", label: null, tickSize: 0, color: colour("muted") }),
      Plot.text(["cells, °C"], { frameAnchor: "bottom-right", dy: 32, fill: colour("muted") }),
      Plot.ruleY([0], { stroke: colour("muted") }),
      Plot.areaY(gains, { x: "cellC", y: "gainPct", fill: colour("accent"), fillOpacity: 0.16 }),
      Plot.line(gains, { x: "cellC", y: "gainPct", stroke: colour("accent"), strokeWidth: 2.5 }),
      Plot.tip(
        gains,
        Plot.pointerX({
          x: "cellC",
          y: "gainPct",
          title: ({ cellC, mpptW, pwmW, gainPct }: ControllerGain) =>
            `cells at ${cellC} °C\nMPPT ${mpptW.toFixed(0)} W, PWM ${pwmW.toFixed(0)} W: ${gainPct.toFixed(0)} % more`,
          fill: colour("paper"),
          stroke: colour("muted"),
          lineHeight: 1.35,
        }),
      ),
    ],
  });
