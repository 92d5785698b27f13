import { svgFile } from "../../lib/report/svg-file.ts";
import type { Table } from "../../lib/report/table.ts";
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

const SVG_TYPE = "image/svg+xml";

/** Plot drops a tip when a mouse leaves, and lets a pinned one go when the mouse presses beside it. */
const dropTip = (chart: SVGSVGElement): void => {
  for (const name of ["pointerleave", "pointerdown"]) {
    chart.dispatchEvent(new PointerEvent(name, { pointerType: "mouse" }));
  }
};

/** A tip under a finger goes away with a tap anywhere else, or with Escape. */
const letTipsGo = (chart: SVGSVGElement): void => {
  const stop = new AbortController();
  const when = (name: "pointerdown" | "keydown", isWayOut: (event: Event) => boolean): void =>
    addEventListener(
      name,
      (event) => {
        if (!chart.isConnected) stop.abort();
        else if (isWayOut(event)) dropTip(chart);
      },
      { signal: stop.signal },
    );
  when("pointerdown", ({ target }) => !(target instanceof Node && chart.contains(target)));
  when("keydown", (event) => event instanceof KeyboardEvent && event.key === "Escape");
};

/** A copy of a chart that may be changed for a file while the one on the page stays as it is. */
const copyOf = (chart: SVGSVGElement): SVGSVGElement => chart.cloneNode(true) as SVGSVGElement;

/**
 * A chart with all it owes its reader: a heading, how to read it, the numbers behind it, and files to take away.
 * `chart` is an SVG drawn by `lib/report`, which already carries its name for those who can't see it.
 */
export const figure = <Row>(
  chart: SVGSVGElement,
  { title, caption, file, table }: FigureOptions<Row>,
): HTMLElement => {
  letTipsGo(chart);
  measureRepaint();
  return el(
    "figure",
    { class: "picture" },
    el("figcaption", { class: "picture-title" }, title),
    chart as unknown as HTMLElement,
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
            onclick: () => saveText(`${file}.svg`, SVG_TYPE, svgFile(copyOf(chart))),
          },
          "Save SVG",
        ),
        el(
          "button",
          { type: "button", class: "quiet", onclick: () => void savePng(`${file}.png`, copyOf(chart)) },
          "Save PNG",
        ),
      ),
    ),
  );
};
