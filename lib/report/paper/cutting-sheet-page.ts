import { select } from "d3";
import type { Plan } from "../../plan/plan.ts";
import { type CuttingSheet, cuttingSheet } from "../../stand/cutting-sheet.ts";
import { flatTiltDeg, type NamedLeg, standGeometry } from "../../stand/settings.ts";
import { standPanels } from "../../stand/stand-panel.ts";
import { WIND_CAUTION } from "../../stand/steadiness.ts";
import { millimetresText } from "../../units/length.ts";
import { settingStyles } from "../chart/setting-styles.ts";
import { themeCss } from "../chart/theme.ts";
import { markup } from "../markup.ts";
import { piecesTable } from "../table/pieces-table.ts";
import { cellText, type Table } from "../table/table.ts";
import { CUTTING_CAUTION } from "../words/legs-summary.ts";
import { steadySentences } from "../words/steady-words.ts";
import { lengthWords } from "../words/words.ts";
import { sideViewDrawing } from "./side-view-drawing.ts";

const DRAWING_PX = 310;

const PAGE_CSS = `
@page { size: A4 portrait; margin: 14mm }
body { font: 10.5pt/1.4 system-ui, sans-serif; color: #17251f; background: #fff; max-width: 182mm; margin: 0 auto; padding: 4mm }
h1 { font-size: 17pt; margin: 0 0 1mm } h2 { font-size: 12pt; margin: 6mm 0 2mm }
p { margin: 0 0 2mm } .caution { border-left: 1mm solid #a3271b; padding-left: 3mm }
.wide { overflow-x: auto } table { border-collapse: collapse; width: 100%; font-size: 9.5pt }
th, td { border-bottom: 0.2mm solid #999; padding: 1mm 2mm 1mm 0; text-align: left; vertical-align: top }
td.number, th.number { text-align: right }
.drawings { display: flex; flex-wrap: wrap; gap: 4mm } .drawings svg { max-width: 100%; height: auto; break-inside: avoid }
svg.bar { width: 100%; height: auto; display: block; margin: 0 0 2mm; break-inside: avoid }
@media print { body { padding: 0 } }
`;

/** One bar of stock to scale, its pieces marked with their letters. */
const barDrawing = (
  document: Document,
  { stockMm, piecesMm, offcutMm }: CuttingSheet["stock"]["bars"][number],
  { legs }: CuttingSheet,
  longestMm: number,
): SVGSVGElement => {
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  const width = 700;
  const scale = width / longestMm;
  const root = select(svg)
    .attr("class", "bar")
    .attr("viewBox", `0 0 ${width} 30`)
    .attr("role", "img")
    .attr(
      "aria-label",
      `A bar of ${millimetresText(stockMm)}: ${piecesMm.map((piece) => millimetresText(piece)).join(", ")}, ${millimetresText(offcutMm)} left over`,
    )
    .attr("font-size", 11);
  root
    .append("rect")
    .attr("width", stockMm * scale)
    .attr("height", 18)
    .attr("fill", "#e6e6e6");
  const kerfs = Math.max(1, piecesMm.length);
  const kerfMm = (stockMm - offcutMm - piecesMm.reduce((sum, piece) => sum + piece, 0)) / kerfs;
  let at = 0;
  for (const piece of piecesMm) {
    const mark = legs.find(({ pieceMm, howMany }) => pieceMm === piece && howMany > 0)?.mark ?? "";
    root
      .append("rect")
      .attr("x", at * scale)
      .attr("width", piece * scale)
      .attr("height", 18)
      .attr("fill", "#fff")
      .attr("stroke", "#17251f");
    root
      .append("text")
      .attr("x", (at + piece / 2) * scale)
      .attr("y", 13)
      .attr("text-anchor", "middle")
      .text(`${mark} ${piece.toFixed(0)}`);
    at += piece + kerfMm;
  }
  root
    .append("text")
    .attr("y", 29)
    .text(`stock ${stockMm} mm, ${offcutMm.toFixed(0)} mm left over`);
  return svg;
};

const tableElement = <Row>(document: Document, { columns, rows }: Table<Row>): HTMLElement => {
  const frame = document.createElement("div");
  frame.className = "wide";
  const numeric = (datatype: string): string =>
    datatype === "decimal" || datatype === "integer" ? "number" : "";
  const table = select(frame).append("table");
  const head = table.append("thead").append("tr");
  for (const { title, unit, datatype } of columns) {
    head
      .append("th")
      .attr("scope", "col")
      .attr("class", numeric(datatype))
      .text(unit === "millimetres" ? `${title}, mm` : unit === "degrees" ? `${title}, °` : title);
  }
  const body = table.append("tbody");
  for (const row of rows) {
    const line = body.append("tr");
    for (const column of columns)
      line.append("td").attr("class", numeric(column.datatype)).text(cellText(column, row));
  }
  return frame;
};

/**
 * The cutting sheet: one page to print, whole in itself. Pieces, holes, stock with its cuts, a side view of every
 * setting, stowing, wind, and the cautions beside them.
 *
 * @param document an empty document to build the page in
 * @param legs the legs to cut or to keep
 * @returns the page as HTML text
 * @throws PlanError when no panel is on the stand, or a piece is longer than all stock
 */
export const cuttingSheetPage = (document: Document, plan: Plan, legs: readonly NamedLeg[]): string => {
  const { stand } = plan;
  const panels = standPanels(plan);
  const geometry = standGeometry(stand);
  const sheet = cuttingSheet(stand, panels.shortestMm, legs);
  document.documentElement.setAttribute("lang", "en");
  const head = select(document.head);
  head.append("meta").attr("charset", "utf-8");
  head.append("meta").attr("name", "viewport").attr("content", "width=device-width, initial-scale=1");
  head.append("title").text(`Cutting sheet: ${plan.name}`);
  head.append("style").text(`${themeCss(":root", "light")}${PAGE_CSS}`);
  const body = select(document.body);
  const heading = (words: string) => body.append("h2").text(words);
  const say = (words: string, kind = "") => body.append("p").attr("class", kind).text(words);

  body.append("h1").text(`Cutting sheet: ${plan.name}`);
  say(
    `Legs ${stand.legStyle === "strap" ? "held by a strap" : `standing ${stand.legStyle}`}, pivot hole ${lengthWords(stand.pivotMm)} up the frame from its bottom edge. ` +
      "Lengths run from the centre of the pivot hole to the foot.",
  );
  heading("Pieces");
  body.node()?.append(tableElement(document, piecesTable(sheet)));
  say(
    `Write its letter on each leg. Holes ${stand.cutting.holeMm} mm, centred ${stand.cutting.holeMarginMm} mm from the upper end. Stock ${stand.cutting.legWidthMm} x ${stand.cutting.legThicknessMm} mm.`,
  );
  say(CUTTING_CAUTION, "caution");

  heading("Stock");
  if (sheet.stock.bars.length === 0) say("Nothing to cut: every leg is there already.");
  else {
    say(
      `${sheet.stock.bars.length} ${sheet.stock.bars.length === 1 ? "bar" : "bars"}, ${lengthWords(sheet.stock.stockMm)} in all; each cut takes ${stand.cutting.kerfMm} mm.`,
    );
    const longest = Math.max(...sheet.stock.bars.map(({ stockMm }) => stockMm));
    for (const bar of sheet.stock.bars) body.node()?.append(barDrawing(document, bar, sheet, longest));
  }

  heading("Settings");
  const flat = { name: "flat", legMm: null, tiltDeg: flatTiltDeg(stand) };
  const settings = [
    flat,
    ...sheet.legs.map(({ mark, name, legMm, tiltDeg }) => ({ name: `${mark} ${name}`, legMm, tiltDeg })),
  ];
  const styles = settingStyles(settings.map((setting) => ({ setting: { ...setting, bearingDeg: 0 } })));
  const drawings = document.createElement("div");
  drawings.className = "drawings";
  settings.forEach((setting, index) => {
    drawings.append(
      sideViewDrawing(
        geometry,
        panels,
        { ...setting, colour: styles[index].colour },
        { document, width: DRAWING_PX },
      ),
    );
  });
  body.node()?.append(drawings);

  heading("Stowing");
  say(
    `A leg up to ${lengthWords(sheet.stow.foldedMm)} folds into the frame on its pivot, up to ${lengthWords(sheet.stow.looseMm)} lies in it loose; ` +
      `${sheet.stow.layers} ${sheet.stow.layers === 1 ? "leg stacks" : "legs stack"} in the depth at each side. Keep clear of the junction box and its cables.`,
  );
  if (sheet.legs.length > sheet.stow.layers) {
    say(`${sheet.legs.length} lengths are more than stack there: the rest travels outside the frame.`);
  }
  for (const { mark, stowing } of sheet.legs)
    if (stowing) say(`${mark} ${stowing.allowed}; ${stowing.hint ?? ""}.`);

  heading("Wind");
  say(WIND_CAUTION, "caution");
  for (const words of steadySentences(plan, settings)) say(words);
  return `<!doctype html>\n${markup(document.documentElement)}\n`;
};
