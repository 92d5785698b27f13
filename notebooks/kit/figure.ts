import { svgFile } from "../../lib/report/chart/svg-file.ts";
import type { Table } from "../../lib/report/table/table.ts";
import { type Chart, chartFrame } from "./chart-frame.ts";
import { dataTable } from "./data-table.ts";
import { el } from "./dom.ts";
import { measureRepaint } from "./pace.ts";
import { saveText } from "./save.ts";
import { savePng } from "./save-png.ts";

export interface FigureOptions<Row> {
  /** What the picture shows, as its heading. */
  readonly title: string;
  /** One or two sentences under it: how to read it, and what its numbers are (clear sky, expected, a band). */
  readonly caption: string;
  /** Name of the files it is saved as, without ending. */
  readonly file: string;
  /** The numbers behind it. */
  readonly table: Table<Row>;
}

/**
 * A chart with all it owes its reader: a heading, how to read it, the numbers behind it, and files to take away.
 *
 * @param chart an SVG drawn by `lib/report`, which already carries its name for those who can't see it; or, for one
 *   below the fold, a function that draws it, called when its reader comes near
 */
export const figure = <Row>(
  chart: Chart,
  { title, caption, file, table }: FigureOptions<Row>,
): HTMLElement => {
  const frame = chartFrame(chart, title);
  if (typeof chart !== "function") measureRepaint();
  // A file's colours and paper are put into a copy: the chart on the page stays as it is.
  const copy = (): SVGSVGElement => frame.chart().cloneNode(true) as SVGSVGElement;
  return el(
    "figure",
    { class: "picture" },
    el("figcaption", { class: "picture-title" }, title),
    frame.element,
    el("p", { class: "picture-caption" }, caption),
    el(
      "div",
      { class: "take-away-row" },
      dataTable(table, { file, folded: true }),
      el(
        "div",
        { class: "buttons" },
        el(
          "button",
          {
            type: "button",
            class: "quiet",
            onclick: () => saveText(`${file}.svg`, "image/svg+xml", svgFile(copy())),
          },
          "Save SVG",
        ),
        el(
          "button",
          { type: "button", class: "quiet", onclick: () => void savePng(`${file}.png`, copy()) },
          "Save PNG",
        ),
      ),
    ),
  );
};
