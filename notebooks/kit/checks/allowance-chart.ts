import * as Plot from "@observablehq/plot";
import { type ChartFrame, drawChart, isNarrow } from "../../../lib/report/chart/chart-base.ts";
import { colour } from "../../../lib/report/chart/theme.ts";
import { type CheckedQuantity, type Checks, shareUsed } from "./outcomes.ts";

const ROW_PX = 56;
const MARGIN = { top: 34, bottom: 40 };

const small = (value: number): string => String(Number(value.toPrecision(2)));

const tipText = ({ quantity, reference, unit, cases, greatestDifference }: CheckedQuantity): string =>
  `${quantity}\n${reference}\n${cases.length} cases, furthest apart ${small(greatestDifference)} ${unit}`;

/**
 * Every comparison as a dot: how much of what is allowed its worst case uses. Left is exact, the line is the limit.
 */
export const allowanceChart = ({ sections }: Pick<Checks, "sections">, frame: ChartFrame): SVGSVGElement => {
  const narrow = isNarrow(frame);
  const dots = sections.flatMap(({ room, comparisons }) =>
    comparisons.map((each) => ({ room, share: shareUsed(each), tip: tipText(each) })),
  );
  const rooms = sections.map(({ room }) => room);
  const failed = dots.filter(({ share }) => share > 1).length;
  return drawChart(frame, {
    name: "How much of what is allowed each comparison uses",
    description: `${dots.length} comparisons in ${rooms.length} rooms of the library; ${failed} beyond what is allowed.`,
    height: frame.height ?? MARGIN.top + MARGIN.bottom + ROW_PX * rooms.length,
    marginTop: MARGIN.top,
    marginBottom: MARGIN.bottom,
    marginLeft: narrow ? 64 : 84,
    marginRight: 24,
    x: { domain: [0, Math.max(1, ...dots.map(({ share }) => share))], nice: false },
    fy: { domain: rooms, label: null, axis: "left" },
    marks: [
      Plot.gridX({ stroke: colour("hairline"), strokeOpacity: 1, ticks: 5 }),
      Plot.axisFy({ anchor: "left", label: null, color: colour("ink"), tickSize: 0 }),
      Plot.axisX({
        anchor: "bottom",
        label: null,
        ticks: 5,
        tickSize: 0,
        color: colour("muted"),
        tickFormat: (share: number) => `${Math.round(share * 100)} %`,
      }),
      Plot.ruleX([1], { stroke: colour("warning"), strokeWidth: 1.5 }),
      Plot.text(["allowed"], {
        x: [1],
        fy: [rooms[0]],
        frameAnchor: "top",
        dy: -14,
        textAnchor: "end",
        fill: colour("warning"),
      }),
      Plot.text([narrow ? "share of what is allowed" : "worst case, share of what is allowed"], {
        fy: [rooms[0]],
        frameAnchor: "top-left",
        dy: -22,
        textAnchor: "start",
        fill: colour("muted"),
      }),
      Plot.dot(
        dots,
        Plot.dodgeY("middle", {
          x: "share",
          fy: "room",
          r: narrow ? 3.5 : 4.5,
          fill: colour("accent"),
          stroke: colour("paper"),
          padding: 0.5,
          title: "tip",
          tip: { fill: colour("raised"), stroke: colour("hairline"), lineWidth: narrow ? 18 : 32 },
        }),
      ),
    ],
  });
};
