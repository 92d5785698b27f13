import { type Selection as D3Selection, select } from "d3";
import { planRemarks } from "../../circuit/checks.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Setting } from "../../season/light/settings.ts";
import type { FieldSheet } from "../../season/sheet/field-sheet.ts";
import { tiltWords } from "../../stand/reading.ts";
import { dateWords, dayMonthWords, monthWords } from "../../units/dates.ts";
import { inchesText, millimetresText } from "../../units/length.ts";
import { markup } from "../markup.ts";
import { dangerWords } from "../words/circuit-cautions.ts";
import { smallShare } from "../words/enough-words.ts";
import { type FieldSheetWords, fieldSheetWords } from "../words/field-sheet-words.ts";
import { placeWords } from "../words/place-words.ts";
import { turnWords } from "../words/swaps-summary.ts";
import { compassPoint, energyWords, gainWords, tiltShort } from "../words/words.ts";
import { FIELD_SHEET_CSS, type Paper, paperCss } from "./field-sheet-css.ts";
import { calendarBand, monthBars, tiltPicture } from "./field-sheet-drawings.ts";

const SETTING_UP = [
  "Cover the panel, or turn it face down.",
  "Battery to the controller: fuse close to the battery's positive terminal, polarity checked with a meter.",
  "Panel to the controller, polarity checked. Then uncover it.",
  "To take it down, the other way round: cover, panel off, battery off.",
];

const lengthBoth = (lengthMm: number): string => `${millimetresText(lengthMm)} (${inchesText(lengthMm)})`;

type Selection<Kind extends HTMLElement> = D3Selection<Kind, unknown, null, undefined>;
type Part = Selection<HTMLElement>;

/** One part of the sheet under its own heading. */
const part = (document: Document, heading: string, kind = "") => {
  const section = select(document.createElement("section") as HTMLElement).attr("class", kind);
  section.append("h2").text(heading);
  return section;
};

const list = (section: Part, kind: "ol" | "ul", lines: readonly string[]): void => {
  const items = section.append(kind);
  for (const line of lines) items.append("li").text(line);
};

const table = (section: Part, heads: readonly string[], rows: readonly (readonly string[])[]): void => {
  const element = section.append("table");
  const kind = (column: number): string => (column > 0 ? "number" : "");
  const head = element.append("thead").append("tr");
  for (const [column, text] of heads.entries()) {
    head.append("th").attr("scope", "col").attr("class", kind(column)).text(text);
  }
  const body = element.append("tbody");
  for (const row of rows) {
    const line = body.append("tr");
    for (const [column, text] of row.entries()) line.append("td").attr("class", kind(column)).text(text);
  }
};

const legsPart = (
  document: Document,
  { cutting, swaps, turning }: FieldSheet,
  words: FieldSheetWords,
): Part => {
  const section = part(document, "Legs");
  if (cutting.legs.length === 0) {
    section.append("p").text("No leg in the plan: the panel lies flat.");
    return section;
  }
  const used = new Set([
    ...swaps.map(({ to }) => to.legMm),
    ...(turning?.pays ? turning.routine.parts : []).map(({ setting }) => setting.legMm),
  ]);
  const body = section.append("table").append("tbody");
  for (const [index, { mark, name, legMm, pieceMm, howMany, tiltDeg }] of cutting.legs.entries()) {
    const line = body.append("tr");
    line.append("td").attr("class", "middle").append("span").attr("class", "mark").text(mark);
    line
      .append("td")
      .attr("class", "middle")
      .append(() => tiltPicture(document, tiltDeg));
    const cell = line.append("td");
    cell.append("strong").text(`${name}: ${lengthBoth(legMm)}`);
    cell.append("div").text(tiltWords(tiltDeg));
    cell
      .append("div")
      .attr("class", "small")
      .text(howMany === 0 ? "at hand already" : `cut ${howMany} pieces of ${lengthBoth(pieceMm)}`);
    cell.append("div").attr("class", "small").text(words.wind[index]);
    if (!used.has(legMm)) cell.append("div").attr("class", "small").text("not in use in this season");
  }
  section
    .append("p")
    .attr("class", "small")
    .text(
      "Leg lengths run from the centre of the pivot hole to the foot. Measure the stand itself before cutting; no new hole in the panel's frame.",
    );
  return section;
};

const calendarPart = (document: Document, sheet: FieldSheet): Part => {
  const section = part(document, "Which leg when");
  section.append(() => calendarBand(document, sheet));
  const markOf = ({ name, legMm }: Setting): string => {
    const mark = sheet.cutting.legs.find((leg) => leg.legMm === legMm)?.mark;
    return mark === undefined ? name : `${mark} (${name})`;
  };
  if (sheet.kept !== null) {
    const { setting, moreShare } = sheet.kept;
    section
      .append("p")
      .append("strong")
      .text(
        `Never change it: ${markOf(setting)}, tilt ${tiltShort(setting.tiltDeg)}, all season. The changes below bring ${smallShare(moreShare)} more.`,
      );
  }
  list(
    section,
    "ul",
    sheet.swaps.map(({ date, from, to, swap, earliest, latest }) =>
      swap === null
        ? `Begin with ${markOf(to)}, tilt ${tiltShort(to.tiltDeg)}.`
        : `${dayMonthWords(date)}: ${turnWords({ from, to }) ?? `change to ${markOf(to)}`}, tilt ${tiltShort(to.tiltDeg)}${earliest === latest ? "" : `; any day from ${dayMonthWords(earliest)} to ${dayMonthWords(latest)} will do`}.`,
    ),
  );
  return section;
};

const facingPart = (
  document: Document,
  { facingDeg, turning, panelsDayWh }: FieldSheet,
  words: FieldSheetWords,
): Part => {
  const section = part(document, "Which way to face");
  section
    .append("p")
    .attr("class", "big")
    .text(`${Math.round(facingDeg)}° true, ${compassPoint(facingDeg)}`);
  section.append("p").text(words.compass);
  if (turning === null) return section;
  if (!turning.pays) {
    section
      .append("p")
      .text("Turning it in the course of the day brings hardly more than changing legs by date: leave it.");
    return section;
  }
  const gain = gainWords(turning.dayWh, panelsDayWh);
  section
    .append("p")
    .append("strong")
    .text(`Or turn it in the course of the day${gain === null ? "" : `: ${gain} from all panels`}`);
  list(
    section,
    "ol",
    words.turning.map(
      ({ when, setting, compassDeg }, index) =>
        `${index === 0 ? `Set ${when}` : `At ${when}`}: ${setting.name}, ${Math.round(setting.bearingDeg)}° true${compassDeg === null ? "" : `, ${Math.round(compassDeg) % 360}° by compass`}.`,
    ),
  );
  const shadow = words.turning[0].byShadow;
  if (shadow !== null)
    section.append("p").attr("class", "small").text(`Without a compass, for the first: ${shadow}`);
  return section;
};

/** What lies between the two figures of a month. */
const reaches = ({ circuit }: Plan): string =>
  `"Into the battery" is what comes through the plan's cables and ${circuit.controller.kind.toUpperCase()} controller, as its display counts it; a full battery takes less.`;

const monthsPart = (document: Document, { plan, months, cloudIn }: FieldSheet): Part => {
  const section = part(document, "What to expect, Wh a day");
  section.append(() => monthBars(document, months));
  const figure = (value: number | null): string => (value === null ? "" : String(Math.round(value)));
  table(
    section,
    ["month", "panels", "into the battery", ...(cloudIn ? ["9 days in 10 above", "1 day in 10 above"] : [])],
    months.map(({ month, panelsWh, batteryWh, p10Wh, p90Wh }) => [
      monthWords(month),
      figure(panelsWh),
      figure(batteryWh),
      ...(cloudIn ? [figure(p10Wh), figure(p90Wh)] : []),
    ]),
  );
  section
    .append("p")
    .attr("class", "small")
    .text(
      cloudIn
        ? `All panels, cloud in it, legs changed as above. ${reaches(plan)} Single days (last columns) lie far to either side.`
        : `All panels under a clear sky every day: an upper bound, not what to expect. ${reaches(plan)}`,
    );
  return section;
};

/** A sheet with more to say than a page holds at the usual size is set smaller. */
const isCrowded = ({ months, swaps, cutting, turning }: FieldSheet): boolean =>
  months.length +
    swaps.length +
    4 * cutting.legs.length +
    2 * (turning?.pays ? turning.routine.parts.length : 0) >
  20;

/**
 * The field sheet as one element, to be put on a page. It carries no style of its own: see `FIELD_SHEET_CSS`.
 *
 * @param foot what stands small at its foot: what the figures rest on, how far that is to be trusted, whose data it is
 */
export const fieldSheetArticle = (
  document: Document,
  sheet: FieldSheet,
  foot: readonly string[] = [],
): HTMLElement => {
  const { plan, swaps, days, panelsDayWh, batteryDayWh } = sheet;
  const words = fieldSheetWords(sheet);
  const article = select(document.createElement("article") as HTMLElement).attr(
    "class",
    isCrowded(sheet) ? "field-sheet crowded" : "field-sheet",
  );
  const header = article.append("header");
  header.append("h1").text(plan.name);
  header
    .append("p")
    .text(
      `${placeWords(plan.site)} · ${dateWords(swaps[0].date)} to ${dateWords(days[days.length - 1].date)} · about ${energyWords(batteryDayWh)} a day into the battery (panels ${energyWords(panelsDayWh)})`,
    );
  const wiring = part(document, "Wiring, in this order");
  for (const danger of dangerWords(planRemarks(plan)))
    wiring.append("p").attr("class", "danger").text(danger);
  list(wiring, "ol", SETTING_UP);
  const care = part(document, "Take care", "care");
  list(care, "ul", words.cautions);
  const put = <Kind extends HTMLElement>(into: Selection<Kind>, sections: readonly Part[]): void => {
    for (const section of sections) into.append(() => section.node() as HTMLElement);
  };
  put(article, [calendarPart(document, sheet)]);
  const columns = article.append("div").attr("class", "columns");
  put(columns.append("div"), [legsPart(document, sheet, words), monthsPart(document, sheet)]);
  put(columns.append("div"), [facingPart(document, sheet, words), wiring]);
  put(article, [care]);
  if (foot.length > 0) {
    const small = article.append("footer");
    for (const line of foot) small.append("p").text(line);
  }
  return article.node() as HTMLElement;
};

/**
 * The field sheet as a document of its own: one page, whole in itself.
 *
 * @param document an empty document to build it in
 */
export const fieldSheetPage = (
  document: Document,
  sheet: FieldSheet,
  paper: Paper,
  foot: readonly string[] = [],
): string => {
  document.documentElement.setAttribute("lang", "en");
  const head = select(document.head);
  head.append("meta").attr("charset", "utf-8");
  head.append("meta").attr("name", "viewport").attr("content", "width=device-width, initial-scale=1");
  head.append("title").text(`Field sheet: ${sheet.plan.name}`);
  head.append("style").text(`${paperCss(paper)}${FIELD_SHEET_CSS}`);
  document.body.append(fieldSheetArticle(document, sheet, foot));
  return `<!doctype html>\n${markup(document.documentElement)}\n`;
};
