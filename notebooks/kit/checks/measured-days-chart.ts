import * as Plot from "@observablehq/plot";
import { max } from "d3";
import { type ChartFrame, drawChart, isNarrow } from "../../../lib/report/chart/chart-base.ts";
import { colour } from "../../../lib/report/chart/theme.ts";
import { compassPoint } from "../../../lib/report/words/words.ts";
import { dateWords } from "../../../lib/units/dates.ts";
import type { MeasuredPlane, MeasuredStation } from "./outcomes.ts";

const MARGIN = { top: 34, left: 40, right: 12, bottom: 44 };
/** Room between rows of planes, as a share of a row. */
const ROW_GAP = 0.16;
/** A plane's own picture is square, but no larger than this. */
const LARGEST_SQUARE_PX = 270;

const kilo = (wattHours: number): number => wattHours / 1000;

const errorText = ({ errors }: MeasuredPlane): string => {
  const perez = errors.find(({ model }) => model === "perez");
  if (perez === undefined) return "";
  const sign = perez.biasPct < 0 ? "\u2212" : "+";
  return `bias ${sign}${Math.abs(perez.biasPct).toFixed(1)} %\nerror ${perez.rmsePct.toFixed(1)} %`;
};

/** Each day of each plane of a station: computed against measured. On the line the two agree. */
export const measuredDaysChart = ({ station, planes }: MeasuredStation, frame: ChartFrame): SVGSVGElement => {
  const narrow = isNarrow(frame);
  const columns = narrow ? 2 : 4;
  const cells = planes.map((plane, index) => ({
    plane,
    fx: index % columns,
    fy: Math.floor(index / columns),
  }));
  const points = cells.flatMap(({ plane, fx, fy }) =>
    plane.days.map(([date, computed, measured]) => ({
      fx,
      fy,
      computed: kilo(computed),
      measured: kilo(measured),
      tip: `${dateWords(date)}\ncomputed ${kilo(computed).toFixed(2)}\nmeasured ${kilo(measured).toFixed(2)} kWh/m\u00b2`,
    })),
  );
  const top = 1.05 * (max(points, ({ computed, measured }) => Math.max(computed, measured)) ?? 1);
  const rows = Math.ceil(planes.length / columns);
  const square = Math.min(LARGEST_SQUARE_PX, (frame.width - MARGIN.left - MARGIN.right) / columns);
  return drawChart(frame, {
    name: `Days on tilted sensors, computed against measured: ${station}`,
    description: `${planes.length} planes. ${planes.map((plane) => `${compassPoint(plane.bearingDeg)}: ${errorText(plane).replace("\n", ", ")}`).join("; ")}.`,
    height: frame.height ?? MARGIN.top + MARGIN.bottom + square * (1 + (rows - 1) * (1 + ROW_GAP)),
    marginTop: MARGIN.top,
    marginLeft: MARGIN.left,
    marginRight: MARGIN.right,
    marginBottom: MARGIN.bottom,
    x: { domain: [0, top], label: null },
    y: { domain: [0, top], label: null },
    fx: { axis: null, paddingInner: 0.1, paddingOuter: 0 },
    fy: { axis: null, paddingInner: ROW_GAP, paddingOuter: 0 },
    marks: [
      Plot.gridX({ stroke: colour("hairline"), strokeOpacity: 1, ticks: 4 }),
      Plot.gridY({ stroke: colour("hairline"), strokeOpacity: 1, ticks: 4 }),
      Plot.axisX({ anchor: "bottom", ticks: 4, tickSize: 0, label: null, color: colour("muted") }),
      Plot.axisY({ anchor: "left", ticks: 4, tickSize: 0, label: null, color: colour("muted") }),
      Plot.link([0], { x1: 0, y1: 0, x2: top, y2: top, stroke: colour("muted"), strokeDasharray: "3 3" }),
      Plot.dot(points, {
        fx: "fx",
        fy: "fy",
        x: "measured",
        y: "computed",
        r: 2,
        fill: colour("accent"),
        fillOpacity: 0.75,
        title: "tip",
        tip: { fill: colour("raised"), stroke: colour("hairline") },
      }),
      Plot.text(cells, {
        fx: "fx",
        fy: "fy",
        text: ({ plane }: { readonly plane: MeasuredPlane }) => compassPoint(plane.bearingDeg),
        frameAnchor: "top-left",
        dx: 4,
        dy: 4,
        textAnchor: "start",
        lineAnchor: "top",
        fontWeight: "bold",
        fill: colour("ink"),
      }),
      Plot.text(cells, {
        fx: "fx",
        fy: "fy",
        text: ({ plane }: { readonly plane: MeasuredPlane }) => errorText(plane),
        frameAnchor: "bottom-right",
        dx: -4,
        dy: -4,
        textAnchor: "end",
        lineAnchor: "bottom",
        fontSize: narrow ? 10 : 11,
        fill: colour("muted"),
      }),
      Plot.text(["computed, kWh/m\u00b2 a day"], {
        fx: [0],
        fy: [0],
        frameAnchor: "top-left",
        dx: -32,
        dy: -22,
        textAnchor: "start",
        fill: colour("muted"),
      }),
      Plot.text(["measured, kWh/m\u00b2 a day"], {
        fx: [columns - 1],
        fy: [rows - 1],
        frameAnchor: "bottom-right",
        dy: 34,
        textAnchor: "end",
        fill: colour("muted"),
      }),
    ],
  });
};
