import * as Plot from "@observablehq/plot";
import { blur, max } from "d3";
import { bestSingle, judgedWh, type SeasonYield } from "../../season/light/season-yield.ts";
import { DAY_MS } from "../../units/time.ts";
import { energyWords, tiltShort } from "../words/words.ts";
import { type ChartFrame, dayText, drawChart, isNarrow, valueAxis } from "./chart-base.ts";
import { endLabels } from "./setting-marks.ts";
import { type SettingStyle, settingStyles } from "./setting-styles.ts";
import { colour } from "./theme.ts";

/** Days either side that a smoothed line looks at: about two weeks in all, which leaves weather out and the season in. */
const SMOOTHING_DAYS = 4;

const MARGIN = { top: 34, left: 44, bottom: 62 };
/** The strip along the foot that tells which setting is best. */
const FOOT_PX = 12;

interface Point {
  readonly date: Date;
  readonly name: string;
  readonly colour: string;
  readonly dayWh: number;
  readonly smoothWh: number;
  readonly clearWh: number;
}

/** A season's values without the weather of single days; a season too short to smooth is left as it is. */
const smoothed = (dayWh: Float64Array): ArrayLike<number> =>
  dayWh.length < 3 * SMOOTHING_DAYS ? dayWh : blur(Array.from(dayWh), SMOOTHING_DAYS);

/** What a chart of a season is drawn from. */
interface Drawn {
  readonly yields: SeasonYield;
  readonly styles: readonly SettingStyle[];
  readonly dates: readonly Date[];
  readonly points: readonly Point[];
  /** The most that any setting brings on each day under a clear sky. */
  readonly ceiling: readonly { readonly date: Date; readonly clearWh: number }[];
}

const drawnOf = (yields: SeasonYield): Drawn => {
  const { days, settings } = yields;
  const styles = settingStyles(settings);
  const dates = days.map(({ date }) => new Date(date));
  const points = settings.flatMap((setting, index): Point[] => {
    const dayWh = judgedWh(setting);
    const smooth = smoothed(dayWh);
    return dates.map((date, day) => ({
      date,
      name: styles[index].name,
      colour: styles[index].colour,
      dayWh: dayWh[day],
      smoothWh: smooth[day],
      clearWh: setting.clearWh[day],
    }));
  });
  const ceiling = dates.map((date, day) => ({
    date,
    clearWh: max(settings, ({ clearWh }) => clearWh[day]) ?? 0,
  }));
  return { yields, styles, dates, points, ceiling };
};

interface BestRun {
  readonly setting: number;
  readonly first: number;
  readonly last: number;
}

/** Days in a row on which the same setting is best. */
const bestRuns = (best: Uint8Array): readonly BestRun[] =>
  Array.from(best).reduce<BestRun[]>((runs, setting, day) => {
    const run = runs.at(-1);
    if (run?.setting === setting) runs[runs.length - 1] = { ...run, last: day };
    else runs.push({ setting, first: day, last: day });
    return runs;
  }, []);

/** The p10 to p90 band of the setting that does best when left alone, where a spread between skies is known. */
const bandArea = ({ yields, dates, styles }: Drawn): readonly Plot.Markish[] => {
  const single = bestSingle(yields);
  const { band } = yields.settings[single];
  if (band === null) return [];
  const [low, high] = [smoothed(band.p10Wh), smoothed(band.p90Wh)];
  return [
    Plot.areaY(dates, {
      x: (date: Date) => date,
      y1: (_: Date, day: number) => low[day],
      y2: (_: Date, day: number) => high[day],
      fill: styles[single].colour,
      fillOpacity: 0.16,
      curve: "monotone-x",
    }),
  ];
};

/** What the shaded areas are. */
const areaWords = (yields: SeasonYield, narrow: boolean): string => {
  const { band, setting } = yields.settings[bestSingle(yields)];
  if (narrow) return band === null ? "shaded: clear sky" : "band: 8 days in 10";
  const clear = "clear sky: the most a day can bring";
  return band === null ? clear : `band: eight days in ten (${setting.name}); ${clear}`;
};

const tipText = (yields: SeasonYield, day: number): string => {
  const lines = yields.settings.map(({ setting, clearWh, expectedWh }, index) => {
    const value =
      expectedWh === null
        ? `${energyWords(clearWh[day])} clear sky`
        : `${energyWords(expectedWh[day])}, clear sky ${energyWords(clearWh[day])}`;
    return `${yields.best[day] === index ? "\u25b8 " : ""}${setting.name} ${tiltShort(setting.tiltDeg)}: ${value}`;
  });
  return [dayText(new Date(yields.days[day].date)), ...lines].join("\n");
};

/** Each day's own value as a dot, and the clear-sky bound of each setting as a dashed line. */
const singleDays = ({ points }: Drawn): readonly Plot.Markish[] => [
  Plot.line(points, {
    x: "date",
    y: "clearWh",
    z: "name",
    stroke: "colour",
    strokeWidth: 1,
    strokeDasharray: "2 3",
    strokeOpacity: 0.75,
  }),
  Plot.dot(points, { x: "date", y: "dayWh", r: 1.4, fill: "colour", fillOpacity: 0.45 }),
];

/** The strip along the foot that tells which setting is best on each day. */
const bestStrip = ({ yields, styles, dates }: Drawn, pxPerUnit: number): readonly Plot.Markish[] => {
  const topWh = -FOOT_PX / pxPerUnit / 2;
  return [
    Plot.rectY(bestRuns(yields.best), {
      x1: ({ first }: BestRun) => dates[first],
      x2: ({ last }: BestRun) => new Date(dates[last].getTime() + DAY_MS),
      y1: topWh,
      y2: topWh - FOOT_PX / pxPerUnit,
      fill: ({ setting }: BestRun) => styles[setting].colour,
      shapeRendering: "crispEdges",
      clip: false,
      ariaLabel: "best setting of each day",
    }),
    Plot.text(["best setting"], {
      frameAnchor: "bottom-right",
      textAnchor: "start",
      dx: 8,
      dy: FOOT_PX + 6,
      fill: colour("muted"),
    }),
  ];
};

/** The line and the words that follow the pointer. */
const pointed = ({ yields, dates, ceiling }: Drawn): readonly Plot.Markish[] => [
  Plot.ruleX(dates, Plot.pointerX({ x: (date: Date) => date, stroke: colour("ink"), strokeOpacity: 0.5 })),
  Plot.tip(
    dates,
    Plot.pointerX({
      x: (date: Date) => date,
      y: (_: Date, day: number) => ceiling[day].clearWh,
      title: (_: Date, day: number) => tipText(yields, day),
      fill: colour("paper"),
      stroke: colour("muted"),
      lineHeight: 1.35,
    }),
  ),
];

/**
 * Watt-hours a day for each setting across a season: what is expected as a smoothed line over the days' own points,
 * the clear-sky bound as the envelope behind them, and along the foot the setting that is best on each day.
 *
 * @returns an SVG element whose `value` is the day under the pointer
 */
export const seasonChart = (yields: SeasonYield, frame: ChartFrame): SVGSVGElement => {
  const { days, settings } = yields;
  const drawn = drawnOf(yields);
  const { styles, points, ceiling } = drawn;
  const cloudIn = settings.some(({ expectedWh }) => expectedWh !== null);
  const top = Math.max(1, max(points, ({ dayWh, clearWh }) => Math.max(dayWh, clearWh)) ?? 1) * 1.04;
  const narrow = isNarrow(frame);
  const room = narrow ? 96 : 132;
  const height = frame.height ?? (narrow ? 340 : 430);
  const pxPerUnit = (height - MARGIN.top - MARGIN.bottom) / top;
  const ends = styles.map((style, index) => ({
    ...style,
    endsAt: points[(index + 1) * days.length - 1].smoothWh,
  }));
  return drawChart(frame, {
    name: cloudIn
      ? "Expected watt-hours a day for each setting"
      : "Clear-sky watt-hours a day for each setting",
    description: `${settings.length} settings over ${days.length} days, ${days[0]?.date} to ${days.at(-1)?.date}. The table below holds the same numbers.`,
    height,
    marginTop: MARGIN.top,
    marginLeft: MARGIN.left,
    marginBottom: MARGIN.bottom,
    marginRight: room,
    x: { type: "utc" },
    y: { domain: [0, top] },
    marks: [
      Plot.areaY(ceiling, {
        x: "date",
        y: "clearWh",
        fill: colour("sun"),
        fillOpacity: 0.55,
        curve: "monotone-x",
      }),
      ...bandArea(drawn),
      ...valueAxis(cloudIn ? "Wh a day" : "Wh a day, clear sky", narrow ? 4 : 6),
      Plot.axisX({
        anchor: "bottom",
        dy: FOOT_PX + 8,
        tickSize: 0,
        ticks: narrow ? 4 : 8,
        label: null,
        color: colour("muted"),
      }),
      ...(cloudIn ? singleDays(drawn) : []),
      Plot.line(points, {
        x: "date",
        y: "smoothWh",
        z: "name",
        stroke: "colour",
        strokeWidth: 2.5,
        curve: "monotone-x",
      }),
      Plot.ruleY([0], { stroke: colour("muted") }),
      ...bestStrip(drawn, pxPerUnit),
      ...(cloudIn
        ? [
            Plot.text([areaWords(yields, narrow)], {
              frameAnchor: "top-right",
              dx: -4,
              dy: -14,
              textAnchor: "end",
              fill: colour("muted"),
            }),
          ]
        : []),
      ...endLabels(ends, { pxPerUnit, top, room }),
      ...pointed(drawn),
    ],
  });
};
