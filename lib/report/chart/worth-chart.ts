import * as Plot from "@observablehq/plot";
import type { Worth } from "../../plan/worth.ts";
import type { WorthAnswer } from "../../season/battery/worth.ts";
import { type ChartFrame, drawChart, isNarrow } from "./chart-base.ts";
import { colour } from "./theme.ts";

interface Bar {
  readonly name: string;
  readonly shortDays: number;
  readonly p90: number | null;
  readonly price: number | null;
  readonly enough: boolean;
}

const BAR_PX = 34;

/**
 * Short days a season for each set-up, today's first: a bar to the mean, a whisker to what one season in ten exceeds, both
 * figures at its end (the second in brackets), and the line of what is accepted.
 */
export const worthChart = ({ asIs, rows }: WorthAnswer, worth: Worth, frame: ChartFrame): SVGSVGElement => {
  const bars: readonly Bar[] = [
    {
      name: "as is",
      shortDays: asIs.shortDays,
      p90: asIs.shortDaysP90,
      price: null,
      enough: asIs.shortDays <= worth.wantedShortDays,
    },
    ...rows.map(({ name, shortDays, shortDaysP90, price, enough }) => ({
      name,
      shortDays,
      p90: shortDaysP90,
      price,
      enough,
    })),
  ];
  const most = Math.max(
    1,
    worth.wantedShortDays,
    ...bars.map(({ shortDays, p90 }) => Math.max(shortDays, p90 ?? 0)),
  );
  const narrow = isNarrow(frame);
  const left = narrow ? 118 : 176;
  return drawChart(frame, {
    name: "Short days a season for each set-up",
    description: `${bars.length} set-ups under the same skies. The table below holds the same numbers.`,
    height: frame.height ?? bars.length * BAR_PX + 70,
    marginLeft: left,
    marginRight: narrow ? 54 : 92,
    marginTop: 24,
    marginBottom: 44,
    x: { domain: [0, most * 1.05] },
    y: { type: "band", domain: bars.map(({ name }) => name), padding: 0.35 },
    marks: [
      Plot.gridX({ stroke: colour("hairline"), strokeOpacity: 1, ticks: narrow ? 4 : 8 }),
      Plot.axisX({
        anchor: "bottom",
        label: null,
        ticks: narrow ? 4 : 8,
        tickSize: 0,
        color: colour("muted"),
      }),
      Plot.ruleX([worth.wantedShortDays], { stroke: colour("warning"), strokeDasharray: "4 3" }),
      Plot.text(["short days a season"], {
        frameAnchor: "bottom-right",
        dy: 36,
        textAnchor: "end",
        fill: colour("muted"),
      }),
      Plot.axisY({ label: null, tickSize: 0, lineWidth: narrow ? 9 : 14 }),
      Plot.barX(bars, {
        x: "shortDays",
        y: "name",
        fill: ({ enough }: Bar) => (enough ? colour("accent") : colour("muted")),
        fillOpacity: ({ enough }: Bar) => (enough ? 1 : 0.6),
      }),
      Plot.ruleY(
        bars.filter(({ p90 }) => p90 !== null),
        { x1: "shortDays", x2: "p90", y: "name", stroke: colour("ink"), strokeWidth: 1.2 },
      ),
      Plot.tickX(
        bars.filter(({ p90 }) => p90 !== null),
        { x: "p90", y: "name", stroke: colour("ink"), strokeWidth: 1.2, inset: 4 },
      ),
      Plot.text(bars, {
        x: ({ shortDays, p90 }: Bar) => Math.max(shortDays, p90 ?? 0),
        y: "name",
        text: ({ shortDays, p90, price }: Bar) =>
          [
            // Means over many seasons have a part of a day in them; the days of one season do not.
            shortDays.toFixed(shortDays < 9.95 && p90 !== null ? 1 : 0),
            p90 === null ? "" : ` (${Math.round(p90)})`,
            price === null || narrow ? "" : `  ${worth.currency} ${Math.round(price)}`,
          ].join(""),
        textAnchor: "start",
        dx: 6,
        fontWeight: 600,
        fill: colour("ink"),
        stroke: colour("paper"),
        strokeWidth: 4,
      }),
      Plot.text([`accepted: ${worth.wantedShortDays}`], {
        x: worth.wantedShortDays,
        frameAnchor: "top",
        dy: -10,
        dx: -4,
        textAnchor: "start",
        fill: colour("warning"),
      }),
    ],
  });
};
