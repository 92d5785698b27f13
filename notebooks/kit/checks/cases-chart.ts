import * as Plot from "@observablehq/plot";
import { ascending, max } from "d3";
import { type ChartFrame, drawChart, isNarrow, valueAxis } from "../../../lib/report/chart/chart-base.ts";
import { colour } from "../../../lib/report/chart/theme.ts";
import type { CheckedQuantity } from "./outcomes.ts";

const MARGIN = { top: 34, left: 56, right: 16, bottom: 34 };

/** Bars as thin as this run into each other. */
const LEAST_BAR_PX = 8;

const short = (value: number): string => String(Number(value.toPrecision(4)));

/** The cases of one comparison in the order of their published values: each difference between the limits it may have. */
export const casesChart = (checked: CheckedQuantity, frame: ChartFrame): SVGSVGElement => {
  const narrow = isNarrow(frame);
  const cases = [...checked.cases].sort(([, , a], [, , b]) => ascending(a, b));
  const bars = cases.map(([id, ours, theirs, difference, allowed], rank) => ({
    rank,
    difference,
    allowed,
    tip: `${id}\nours ${short(ours)}, theirs ${short(theirs)}\napart ${short(difference)}, allowed ${short(allowed)} ${checked.unit}`,
  }));
  const reach = 1.1 * (max(bars, ({ difference, allowed }) => Math.max(Math.abs(difference), allowed)) || 1);
  const many = bars.length > 120;
  const caseWidth = (frame.width - MARGIN.left - MARGIN.right) / (bars.length + 1);
  // Bars too thin to be told apart would only flicker: together they are one band.
  const fill = caseWidth < LEAST_BAR_PX ? 1.1 : 0.7;
  return drawChart(frame, {
    name: `Differences of ${checked.quantity}`,
    description: `${bars.length} cases against ${checked.reference}; each dot is ours minus theirs, each bar what is allowed.`,
    height: frame.height ?? (narrow ? 260 : 300),
    marginTop: MARGIN.top,
    marginLeft: MARGIN.left,
    marginRight: MARGIN.right,
    marginBottom: MARGIN.bottom,
    x: { domain: [-1, bars.length], axis: null },
    y: { domain: [-reach, reach] },
    marks: [
      ...valueAxis(`ours minus theirs, ${checked.unit}`, narrow ? 4 : 6),
      Plot.ruleX(bars, {
        x: "rank",
        y1: ({ allowed }: { readonly allowed: number }) => -allowed,
        y2: "allowed",
        stroke: colour("sun"),
        strokeWidth: Math.max(1, Math.min(14, fill * caseWidth)),
      }),
      Plot.ruleY([0], { stroke: colour("muted") }),
      Plot.dot(bars, {
        x: "rank",
        y: "difference",
        r: many ? 1.8 : 3.2,
        fill: ({ difference, allowed }: { readonly difference: number; readonly allowed: number }) =>
          Math.abs(difference) <= allowed ? colour("accent") : colour("warning"),
      }),
      Plot.text(
        [narrow ? "cases, by published value" : "cases, from the least published value to the greatest"],
        {
          frameAnchor: "bottom-left",
          textAnchor: "start",
          dy: 22,
          fill: colour("muted"),
        },
      ),
      Plot.tip(
        bars,
        Plot.pointer({
          x: "rank",
          y: "difference",
          title: "tip",
          fill: colour("raised"),
          stroke: colour("hairline"),
        }),
      ),
    ],
  });
};
