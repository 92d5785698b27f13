import * as Plot from "@observablehq/plot";
import { CUSTOMARY_DROP_PCT } from "../../circuit/drop.ts";
import type { RunAnswer } from "../../season/battery/wiring.ts";
import { type ChartFrame, drawChart, isNarrow, valueAxis } from "./chart-base.ts";
import { colour } from "./theme.ts";

/**
 * Voltage drop of a cable run for today's size and the next ones up, against the customary limit, with what each costs a
 * day written above it.
 */
export const dropChart = ({ run, choices }: RunAnswer, frame: ChartFrame): SVGSVGElement => {
  const most = Math.max(CUSTOMARY_DROP_PCT, ...choices.map(({ dropPct }) => dropPct));
  return drawChart(frame, {
    name: `Voltage drop of the ${run} by size`,
    description: choices
      .map(
        ({ size, dropPct, lostWhADay }) =>
          `${size}: ${dropPct.toFixed(1)} %, ${lostWhADay.toFixed(1)} Wh a day`,
      )
      .join("; "),
    height: frame.height ?? (isNarrow(frame) ? 260 : 300),
    marginTop: 34,
    marginLeft: 44,
    marginRight: 76,
    marginBottom: 40,
    x: { type: "band", domain: choices.map(({ size }) => size), padding: 0.4 },
    y: { domain: [0, most * 1.25] },
    marks: [
      ...valueAxis("% of the voltage lost", 5),
      Plot.axisX({ anchor: "bottom", label: null, tickSize: 0 }),
      Plot.barY(choices, {
        x: "size",
        y: "dropPct",
        fill: ({ withinCustom }: { readonly withinCustom: boolean }) =>
          withinCustom ? colour("accent") : colour("warning"),
        fillOpacity: ({ today }: { readonly today: boolean }) => (today ? 0.95 : 0.55),
      }),
      Plot.ruleY([CUSTOMARY_DROP_PCT], { stroke: colour("ink"), strokeDasharray: "4 3" }),
      Plot.text([`customary\n${CUSTOMARY_DROP_PCT} %`], {
        frameAnchor: "right",
        y: CUSTOMARY_DROP_PCT,
        textAnchor: "start",
        dx: 6,
        fill: colour("muted"),
      }),
      Plot.text(choices, {
        x: "size",
        y: "dropPct",
        text: ({ lostWhADay }: { readonly lostWhADay: number }) => `${lostWhADay.toFixed(1)} Wh`,
        dy: -8,
        fontWeight: 600,
        fill: colour("ink"),
        stroke: colour("paper"),
        strokeWidth: 4,
      }),
      Plot.ruleY([0], { stroke: colour("muted") }),
    ],
  });
};
