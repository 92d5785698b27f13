import { FIELD_SHEET_CSS, type Paper, paperCss } from "../../lib/report/paper/field-sheet-css.ts";
import { fieldSheetArticle, fieldSheetPage } from "../../lib/report/paper/field-sheet-page.ts";
import type { FieldSheet } from "../../lib/season/sheet/field-sheet.ts";
import { dataCredit } from "./credits.ts";
import { el } from "./dom.ts";
import { saveText } from "./save.ts";

/** The field sheet as it will lie on the paper, to print or to save as a page of its own. */
export const fieldSheetView = (sheet: FieldSheet, paper: Paper, notes: readonly string[]): HTMLElement => {
  const foot = [...notes, dataCredit()];
  const saved = (): string =>
    fieldSheetPage(document.implementation.createHTMLDocument(), sheet, paper, foot);
  return el(
    "div",
    { class: "paper" },
    el("style", {}, paperCss(paper), FIELD_SHEET_CSS),
    el(
      "div",
      { class: "buttons" },
      el("button", { type: "button", onclick: () => print() }, "Print"),
      el(
        "button",
        { type: "button", onclick: () => saveText("field-sheet.html", "text/html", saved()) },
        "Save as a page",
      ),
    ),
    fieldSheetArticle(document, sheet, foot),
  );
};
