import * as Plot from "@observablehq/plot";
import { greatest, range, select } from "d3";
import type { Calendar } from "../../season/legs/swap-calendar.ts";
import { bestTilts, type TiltLadder } from "../../season/legs/tilt-ladder.ts";
import { DAY_MS } from "../../units/time.ts";
import { energyWords, tiltShort } from "../words/words.ts";
import { type ChartFrame, dayText, drawChart, isNarrow } from "./chart-base.ts";
import { colour } from "./theme.ts";
import { mostWh, SHADES, shadeColour, shadesMark } from "./tilt-shades.ts";

const MARGIN = { top: 46, left: 40, right: 16, bottom: 30 };
const RAMP = { width: 120, height: 9 };

/** The tilt in use on each day of a calendar, for the steps of {@link tiltMapChart}. */
export const tiltsInUse = (
  { stays }: Pick<Calendar, "stays">,
  tiltsDeg: readonly number[],
): readonly number[] =>
  stays.flatMap(({ setting, first, end }) => new Array<number>(end - first).fill(tiltsDeg[setting]));

const rangeWords = (tilts: Float64Array): string => {
  const known = tilts.filter((tilt) => !Number.isNaN(tilt));
  return known.length === 0
    ? "The sun stays down."
    : `The best tilt runs from ${Math.min(...known).toFixed(0)} to ${Math.max(...known).toFixed(0)} degrees up from level.`;
};

/** A line that shows on light and dark shades alike. */
const clearLine = (
  data: readonly Step[],
  ink: string,
  halo: string,
  curve: Plot.CurveName,
): readonly Plot.Markish[] => {
  const options = { x: "date", y: "tilt", curve, strokeLinejoin: "round" } as const;
  return [
    Plot.lineY(data, { ...options, stroke: halo, strokeWidth: 5, strokeOpacity: 0.6 }),
    Plot.lineY(data, { ...options, stroke: ink, strokeWidth: 2.25 }),
  ];
};

/** Names stand this share of the season in from either end, and as far from each other. */
const NAME_MARGIN = 0.12;

/** Names both lines where they are farthest apart, each on its own far side; with one line, where it is highest. */
const lineNames = (best: readonly Step[], inUse: readonly number[] | null): readonly Plot.Markish[] => {
  const days = best.length;
  const margin = Math.round(days * NAME_MARGIN);
  const apart = (day: number): number => (inUse === null ? best[day].tilt : best[day].tilt - inUse[day]);
  // A name beside a step would be struck through by it.
  const isCalm = (day: number): boolean =>
    inUse === null ||
    range(-margin / 2, margin / 2).every((off) => inUse[day + Math.round(off)] === inUse[day]);
  const inside = range(margin, days - margin).filter((day) => Number.isFinite(apart(day)) && isCalm(day));
  const at = greatest(inside, (day) => Math.abs(apart(day)));
  if (at === undefined) return [];
  const other = greatest(
    inside.filter((day) => Math.abs(day - at) > 2 * margin),
    (day) => Math.abs(apart(day)),
  );
  const name = (day: number, tilt: number, text: string, ink: string, halo: string, upwards: boolean) =>
    Plot.text([{ date: best[day].date, tilt }], {
      x: "date",
      y: "tilt",
      text: [text],
      dy: upwards ? -12 : 13,
      fill: ink,
      stroke: halo,
      strokeWidth: 3,
      strokeOpacity: 0.7,
      fontWeight: 600,
    });
  return [
    name(at, best[at].tilt, "best tilt", "white", "black", apart(at) >= 0),
    ...(inUse === null || other === undefined
      ? []
      : [name(other, inUse[other], "in use", "black", "white", apart(other) < 0)]),
  ];
};

interface Step {
  readonly date: Date;
  readonly tilt: number;
}

/**
 * Watt-hours a day by date and tilt. Colour is the day's harvest (Cividis, alike for every kind of colour vision), the
 * white line the best tilt, the dark steps the tilt in use.
 *
 * @param ladder tilts in equal steps from 0 to 90 degrees; at least two days
 * @param inUse the tilt in use on each day, `null` to leave the steps out
 */
export const tiltMapChart = (
  ladder: TiltLadder,
  inUse: readonly number[] | null,
  frame: ChartFrame,
): SVGSVGElement => {
  const { days, tiltsDeg, cloudIn, dayWh } = ladder;
  const top = mostWh(ladder);
  const dates = days.map(({ date }) => new Date(date));
  const end = new Date(dates[dates.length - 1].getTime() + DAY_MS);
  const best = bestTilts(ladder);
  const bestLine = dates.map(
    (date, day): Step => ({ date: new Date(date.getTime() + DAY_MS / 2), tilt: best[day] }),
  );
  const steps =
    inUse === null
      ? []
      : [
          ...dates.map((date, day): Step => ({ date, tilt: inUse[day] })),
          { date: end, tilt: inUse[days.length - 1] },
        ];
  const narrow = isNarrow(frame);
  const tipText = (day: number): string => {
    const rung = Math.round((best[day] / 90) * (tiltsDeg.length - 1));
    return Number.isNaN(best[day])
      ? `${dayText(dates[day])}\nthe sun stays down`
      : [
          dayText(dates[day]),
          `best ${tiltShort(best[day])} from the ground: ${energyWords(dayWh[rung][day])}`,
          ...(inUse === null ? [] : [`in use ${tiltShort(inUse[day])}`]),
        ].join("\n");
  };

  const chart = drawChart(frame, {
    name: `${cloudIn ? "Expected" : "Clear-sky"} watt-hours a day by date and tilt`,
    description: `Tilts from flat to upright, ${days[0].date} to ${days[days.length - 1].date}. ${rangeWords(best)}`,
    height: frame.height ?? (narrow ? 330 : 400),
    marginTop: MARGIN.top,
    marginLeft: MARGIN.left,
    marginRight: MARGIN.right,
    marginBottom: MARGIN.bottom,
    x: { type: "utc", domain: [dates[0], end] },
    y: { domain: [0, 90] },
    marks: [
      shadesMark(ladder),
      Plot.axisX({
        anchor: "bottom",
        label: null,
        tickSize: 0,
        ticks: narrow ? 4 : 8,
        color: colour("muted"),
      }),
      Plot.axisY({
        label: null,
        tickSize: 0,
        ticks: [0, 15, 30, 45, 60, 75, 90],
        tickFormat: (tilt: number) => tiltShort(tilt),
        color: colour("muted"),
      }),
      Plot.text(["tilt from the ground"], {
        frameAnchor: "top-left",
        dx: -MARGIN.left + 4,
        dy: -24,
        textAnchor: "start",
        fill: colour("muted"),
      }),
      ...clearLine(bestLine, "white", "black", "monotone-x"),
      ...clearLine(steps, "black", "white", "step-after"),
      ...lineNames(bestLine, inUse),
      Plot.ruleX(dates, Plot.pointerX({ x: (date: Date) => date, stroke: "white", strokeOpacity: 0.7 })),
      Plot.tip(
        dates,
        Plot.pointerX({
          x: (date: Date) => date,
          y: (_: Date, day: number) => (Number.isNaN(best[day]) ? 45 : best[day]),
          title: (_: Date, day: number) => tipText(day),
          fill: colour("paper"),
          stroke: colour("muted"),
          lineHeight: 1.35,
        }),
      ),
    ],
  });
  drawRamp(chart, frame.width - MARGIN.right - RAMP.width, 6, top);
  return chart;
};

/** What the shades mean: a strip from nothing to the day that brings most. */
const drawRamp = (chart: SVGSVGElement, x: number, y: number, top: number): void => {
  const ramp = select(chart)
    .append("g")
    .attr("transform", `translate(${x} ${y})`)
    .attr("fill", colour("muted"));
  for (const step of range(SHADES)) {
    ramp
      .append("rect")
      .attr("x", (step * RAMP.width) / SHADES)
      .attr("width", RAMP.width / SHADES + 0.5)
      .attr("height", RAMP.height)
      .attr("fill", shadeColour((step + 0.5) / SHADES));
  }
  ramp
    .append("text")
    .attr("y", RAMP.height + 13)
    .text("0");
  ramp
    .append("text")
    .attr("x", RAMP.width)
    .attr("y", RAMP.height + 13)
    .attr("text-anchor", "end")
    .text(`${energyWords(top)} a day`);
};
