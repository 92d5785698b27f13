import * as Plot from "@observablehq/plot";
import { max } from "d3";
import type { Reaim, ReaimPeriod } from "../../season/aiming/reaim.ts";
import { NOON_ROUTINE, routineName } from "../table/aims-table.ts";
import { energyWords, periodWords } from "../words/words.ts";
import { type ChartFrame, drawChart, isNarrow, valueAxis } from "./chart-base.ts";
import { LINE } from "./setting-marks.ts";
import { spreadLabels } from "./spread-labels.ts";
import { colour } from "./theme.ts";

const MARGIN = { top: 34, left: 44, bottom: 34 };
const LABEL_SPACING_PX = 16;

/** How strongly each further aim's share of a bar is inked: the first stands out, the rest fade as they bring less. */
const INK = [0.22, 0.95, 0.72, 0.5, 0.32];

/** One share of a month's bar: what a routine brings beyond the one before it. */
interface Share {
  readonly month: string;
  readonly routine: string;
  readonly rank: number;
  readonly from: number;
  readonly to: number;
}

const shareColour = (rank: number): string => colour(rank === 0 ? "muted" : "accent");

/** What a colour stands for, at the height where the last bar has it; `rank` is `null` for the dashed limit. */
interface Label {
  readonly routine: string;
  readonly rank: number | null;
  readonly at: number;
}

const sharesOf = ({ period, noon, routines }: ReaimPeriod): readonly Share[] => {
  const tops = [
    { routine: NOON_ROUTINE, to: noon.dayWh },
    ...routines.map(({ dayWh }, index) => ({ routine: routineName(index + 1), to: dayWh })),
  ];
  return tops.map(({ routine, to }, rank) => ({
    month: period.name,
    routine,
    rank,
    from: rank === 0 ? 0 : tops[rank - 1].to,
    to,
  }));
};

const tipText = ({ period, noon, routines, limitDayWh }: ReaimPeriod): string =>
  [
    periodWords(period.name),
    `${NOON_ROUTINE}: ${energyWords(noon.dayWh)}`,
    ...routines.map(({ dayWh }, index) => `${routineName(index + 1)}: ${energyWords(dayWh)}`),
    `facing the sun: ${energyWords(limitDayWh)}`,
  ].join("\n");

/**
 * What turning the panel brings, month by month: each bar grows from facing noon by what every further aim adds, up to the
 * line that no stand reaches.
 */
export const aimGainChart = ({ periods, cloudIn }: Reaim, frame: ChartFrame): SVGSVGElement => {
  const months = periods.slice(1);
  const shares = months.flatMap(sharesOf);
  const top = Math.max(1, (max(months, ({ limitDayWh }) => limitDayWh) ?? 1) * 1.05);
  const narrow = isNarrow(frame);
  const room = narrow ? 108 : 124;
  const height = frame.height ?? (narrow ? 320 : 380);
  const pxPerUnit = (height - MARGIN.top - MARGIN.bottom) / top;
  const last = months[months.length - 1];
  const ends = [
    ...sharesOf(last).map(({ routine, from, to, rank }) => ({
      routine,
      rank,
      at: rank === 0 ? to / 2 : (from + to) / 2,
    })),
    { routine: "facing the sun", rank: null, at: last.limitDayWh },
  ];
  const places = spreadLabels(
    ends.map(({ at }) => at * pxPerUnit),
    LABEL_SPACING_PX,
    [0, top * pxPerUnit],
  );
  const labels = ends.map((end, index): Label => ({ ...end, at: places[index] / pxPerUnit }));
  const shown = (name: string): string =>
    narrow ? periodWords(name).slice(0, 3) : periodWords(name).split(" ")[0];

  return drawChart(frame, {
    name: cloudIn
      ? "Expected watt-hours a day by number of aims"
      : "Clear-sky watt-hours a day by number of aims",
    description: `${months.length} months; each bar from facing noon up to four aims a day, with the limit of always facing the sun. The table below holds the same numbers.`,
    height,
    marginTop: MARGIN.top,
    marginLeft: MARGIN.left,
    marginBottom: MARGIN.bottom,
    marginRight: room,
    x: { type: "band", domain: months.map(({ period }) => period.name), padding: 0.28 },
    y: { domain: [0, top] },
    marks: [
      ...valueAxis(cloudIn ? "Wh a day" : "Wh a day, clear sky", narrow ? 4 : 6),
      Plot.axisX({ anchor: "bottom", label: null, tickSize: 0, tickFormat: shown, color: colour("muted") }),
      Plot.barY(shares, {
        x: "month",
        y1: "from",
        y2: "to",
        fill: ({ rank }: Share) => shareColour(rank),
        fillOpacity: ({ rank }: Share) => INK[rank],
      }),
      Plot.tickY(
        shares.filter(({ rank }) => rank > 0),
        { x: "month", y: "from", stroke: colour("paper"), strokeWidth: 1 },
      ),
      Plot.tickY(months, {
        x: ({ period }: ReaimPeriod) => period.name,
        y: "limitDayWh",
        stroke: colour("ink"),
        strokeWidth: 2,
        strokeDasharray: "3 2",
      }),
      Plot.ruleY([0], { stroke: colour("muted") }),
      Plot.dot(labels, {
        y: "at",
        frameAnchor: "right",
        dx: 13,
        symbol: "square",
        r: 5,
        fill: ({ rank }: Label) => shareColour(rank ?? 0),
        fillOpacity: ({ rank }: Label) => (rank === null ? 0 : INK[rank]),
      }),
      Plot.vector(
        labels.filter(({ rank }) => rank === null),
        {
          y: "at",
          frameAnchor: "right",
          dx: 13,
          length: 10,
          rotate: 90,
          anchor: "middle",
          shape: LINE,
          stroke: colour("ink"),
          strokeWidth: 2,
          strokeDasharray: "3 2",
        },
      ),
      Plot.text(labels, {
        y: "at",
        text: "routine",
        frameAnchor: "right",
        textAnchor: "start",
        dx: 24,
        fill: colour("ink"),
      }),
      Plot.tip(
        months,
        Plot.pointerX({
          x: ({ period }: ReaimPeriod) => period.name,
          y: "limitDayWh",
          title: tipText,
          fill: colour("paper"),
          stroke: colour("muted"),
          lineHeight: 1.35,
        }),
      ),
    ],
  });
};
