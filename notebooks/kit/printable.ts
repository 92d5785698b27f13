import { svgFile } from "../../lib/report/chart/svg-file.ts";
import { el } from "./dom.ts";
import { saveText } from "./save.ts";

/**
 * A drawing to be printed at true size, shown as wide as the column: the file that is saved keeps its millimetres.
 *
 * @param file name of the file, without ending
 */
export const printable = (drawing: SVGSVGElement, file: string): HTMLElement => {
  const trueSize = svgFile(drawing.cloneNode(true) as SVGSVGElement, "light");
  drawing.removeAttribute("width");
  drawing.removeAttribute("height");
  return el(
    "figure",
    { class: "picture printable" },
    el("div", { class: "chart" }, drawing as unknown as HTMLElement),
    el(
      "p",
      { class: "picture-caption" },
      "Print the saved file at 100 %, not fitted to the page, and check its bar with a ruler.",
    ),
    el(
      "div",
      { class: "buttons" },
      el(
        "button",
        { type: "button", class: "quiet", onclick: () => saveText(`${file}.svg`, "image/svg+xml", trueSize) },
        "Save SVG to print",
      ),
    ),
  );
};
