import { markup } from "../markup.ts";
import { colour, type SchemeChoice, themeCss } from "./theme.ts";

/**
 * Makes a chart stand alone, as a file does: its colours, its paper and its size travel with it.
 * Changes the element it is given; hand over a copy of one that is on show.
 */
export const standaloneSvg = (chart: SVGSVGElement, choice: SchemeChoice = "reader"): SVGSVGElement => {
  const { ownerDocument: document } = chart;
  chart.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  chart.classList.add("season-chart");
  const style = document.createElementNS("http://www.w3.org/2000/svg", "style");
  style.textContent = themeCss(".season-chart", choice);
  const paper = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  for (const [name, value] of Object.entries({ width: "100%", height: "100%", fill: colour("paper") })) {
    paper.setAttribute(name, value);
  }
  chart.prepend(style, paper);
  return chart;
};

/** A chart as the text of an SVG file. */
export const svgFile = (chart: SVGSVGElement, choice: SchemeChoice = "reader"): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n${markup(standaloneSvg(chart, choice))}\n`;
