import * as Plot from "@observablehq/plot";
import { utcFormat } from "d3";
import { CHART_FONT, colour } from "./theme.ts";

/** What every chart is told by whoever shows it. */
export interface ChartFrame {
  /** Where to draw: a browser's document, or one made for it. */
  readonly document: Document;
  /** Outer width, px; from 280 up. */
  readonly width: number;
  /** Outer height, px; left out, it suits the chart and its width. */
  readonly height?: number;
}

/** Below this a chart is on a phone: fewer ticks, shorter labels. */
const NARROW_PX = 560;

/** A page that is still being laid out may say that it has no width at all. */
const LEAST_WIDTH_PX = 280;

export const isNarrow = ({ width }: ChartFrame): boolean => width < NARROW_PX;

/** What all charts share: one typeface, ink on paper, and no colour that is not in the theme. */
export const chartStyle = {
  background: "none",
  color: colour("ink"),
  fontFamily: CHART_FONT,
  fontSize: "12px",
  overflow: "visible",
} as const;

/** A day as a chart's tip names it: `Mon 21 Jun`. */
export const dayText = utcFormat("%a %-d %b");

/** Horizontal hairlines with their numbers, and the unit written out once at the top. */
export const valueAxis = (label: string, ticks: number): readonly Plot.Markish[] => [
  Plot.gridY({ stroke: colour("hairline"), strokeOpacity: 1, ticks }),
  Plot.axisY({ label: null, ticks, tickSize: 0, color: colour("muted") }),
  Plot.text([label], {
    frameAnchor: "top-left",
    dx: -36,
    dy: -20,
    textAnchor: "start",
    fill: colour("muted"),
  }),
];

/** A chart as an SVG element with a name and a description for those who can't see it. */
export const drawChart = (
  { document, width }: ChartFrame,
  {
    name,
    description,
    ...options
  }: Plot.PlotOptions & { readonly name: string; readonly description: string },
): SVGSVGElement => {
  const chart = Plot.plot({
    ...options,
    document,
    width: Math.max(LEAST_WIDTH_PX, width),
    figure: false,
    style: chartStyle,
    ariaLabel: name,
    ariaDescription: description,
  });
  // With `figure: false` and no legend Plot always answers with the SVG itself.
  const svg = chart as unknown as SVGSVGElement;
  svg.setAttribute("role", "img");
  // Plot names each group of marks for assistive tools, which may not read inside a picture: kept as a plain note.
  for (const group of svg.querySelectorAll("[aria-label]")) {
    group.setAttribute("data-marks", group.getAttribute("aria-label") ?? "");
    group.removeAttribute("aria-label");
  }
  return svg;
};
