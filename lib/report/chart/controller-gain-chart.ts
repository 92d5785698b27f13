import * as Plot from "@observablehq/plot";
import type { ControllerGain } from "../table/controller-gain-table.ts";
import { type ChartFrame, drawChart, isNarrow, valueAxis } from "./chart-base.ts";
import { colour } from "./theme.ts";

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
