import * as Plot from "@observablehq/plot";
import type { BatterySeason } from "../../season/battery/battery-season.ts";
import { DAY_MS } from "../../units/time.ts";
import { type ChartFrame, dayText, drawChart, isNarrow, valueAxis } from "./chart-base.ts";
import { colour } from "./theme.ts";

interface Point {
  readonly date: Date;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  readonly shortPct: number;
}

const pointsOf = ({ days, lowest, meanLowest, shortShare }: BatterySeason): readonly Point[] =>
  days.map(({ date }, day) => ({
    date: new Date(date),
    p10: 100 * (lowest?.p10[day] ?? meanLowest[day]),
    p50: 100 * (lowest?.p50[day] ?? meanLowest[day]),
    p90: 100 * (lowest?.p90[day] ?? meanLowest[day]),
    shortPct: 100 * shortShare[day],
  }));

/**
 * The battery through a season: each day's lowest charge as a band over the seasons with its middle, the floor below which
 * nothing is taken out, and along the foot how likely each day is to be short.
 *
 * With fewer than five seasons there is no band, only the line.
 */
export const chargeChart = (season: BatterySeason, frame: ChartFrame): SVGSVGElement => {
  const points = pointsOf(season);
  const narrow = isNarrow(frame);
  const banded = season.lowest !== null;
  const floor = 100 - season.setUp.battery.usablePct;
  const height = frame.height ?? (narrow ? 320 : 380);
  return drawChart(frame, {
    name: `Lowest charge of each day, ${season.setUp.name}`,
    description: `State of charge from ${season.days[0]?.date} to ${season.days.at(-1)?.date}${banded ? `, a band over ${season.outcomes.length} seasons` : ""}. The table below holds the same numbers.`,
    height,
    marginTop: 34,
    marginLeft: 44,
    marginRight: narrow ? 16 : 96,
    marginBottom: 64,
    x: { type: "utc" },
    y: { domain: [-12, 104] },
    marks: [
      ...valueAxis("% charge, the day's lowest", narrow ? 4 : 6),
      Plot.axisX({
        anchor: "bottom",
        dy: 14,
        tickSize: 0,
        ticks: narrow ? 4 : 8,
        label: null,
        color: colour("muted"),
      }),
      ...(banded
        ? [
            Plot.areaY(points, {
              x: "date",
              y1: "p10",
              y2: "p90",
              fill: colour("accent"),
              fillOpacity: 0.22,
              curve: "monotone-x",
            }),
          ]
        : []),
      Plot.line(points, {
        x: "date",
        y: "p50",
        stroke: colour("accent"),
        strokeWidth: 2.2,
        curve: "monotone-x",
      }),
      Plot.ruleY([floor], { stroke: colour("warning"), strokeDasharray: "4 3" }),
      Plot.text([`floor ${Math.round(floor)} %`], {
        frameAnchor: "right",
        y: floor,
        textAnchor: narrow ? "end" : "start",
        dx: narrow ? -4 : 6,
        dy: narrow ? 10 : 0,
        fill: colour("warning"),
        stroke: colour("paper"),
        strokeWidth: 4,
      }),
      Plot.rectY(points, {
        x1: "date",
        x2: ({ date }: Point) => new Date(date.getTime() + DAY_MS),
        y1: -10,
        y2: -4,
        fill: colour("warning"),
        fillOpacity: ({ shortPct }: Point) => shortPct / 100,
      }),
      Plot.text(["chance of a short day"], {
        frameAnchor: "bottom-left",
        dy: -2,
        textAnchor: "start",
        lineAnchor: "top",
        fill: colour("muted"),
      }),
      Plot.ruleX(points, Plot.pointerX({ x: "date", stroke: colour("ink"), strokeOpacity: 0.5 })),
      Plot.tip(
        points,
        Plot.pointerX({
          x: "date",
          y: "p50",
          title: ({ date, p10, p50, p90, shortPct }: Point) =>
            [
              dayText(date),
              banded
                ? `lowest charge ${Math.round(p50)} %, ${Math.round(p10)} to ${Math.round(p90)} % in eight seasons of ten`
                : `lowest charge ${Math.round(p50)} %`,
              `short in ${Math.round(shortPct)} % of seasons`,
            ].join("\n"),
          fill: colour("paper"),
          stroke: colour("muted"),
          lineHeight: 1.35,
        }),
      ),
    ],
  });
};
