import { select } from "d3";
import { CHART_FONT } from "../chart/theme.ts";

/** Drawings to be printed at true size: one unit of the drawing is one millimetre of paper, black on white. */

/** An empty sheet of that many millimetres, with a name and a description for those who can't see it. */
export const paperDrawing = (
  document: Document,
  widthMm: number,
  heightMm: number,
  { name, description }: { readonly name: string; readonly description: string },
): SVGSVGElement => {
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  const root = select(svg)
    .attr("xmlns", "http://www.w3.org/2000/svg")
    .attr("viewBox", `0 0 ${widthMm} ${heightMm}`)
    .attr("width", `${widthMm}mm`)
    .attr("height", `${heightMm}mm`)
    .attr("role", "img")
    .attr("aria-label", name)
    .attr("font-family", CHART_FONT)
    .attr("fill", "black");
  root.append("desc").text(description);
  root.append("rect").attr("width", widthMm).attr("height", heightMm).attr("fill", "white");
  return svg;
};

/** Length of the bar that tells whether a print came out at true size, mm. */
export const CHECK_BAR_MM = 100;

/** Draws the bar to check a print by, its upper left end at a place. */
export const checkBar = (svg: SVGSVGElement, x: number, y: number): void => {
  const root = select(svg);
  root
    .append("path")
    .attr("d", `M${x},${y}v3M${x},${y + 1.5}h${CHECK_BAR_MM}M${x + CHECK_BAR_MM},${y}v3`)
    .attr("class", "check-bar")
    .attr("fill", "none")
    .attr("stroke", "black")
    .attr("stroke-width", 0.3);
  root
    .append("text")
    .attr("x", x + CHECK_BAR_MM / 2)
    .attr("y", y + 7)
    .attr("font-size", 3.2)
    .attr("text-anchor", "middle")
    .text(
      `This bar must measure ${CHECK_BAR_MM} mm. If it does not, print again at 100 %, with no fitting to the page.`,
    );
};
