import { el } from "./dom.ts";
import { NOTEBOOK_ORDER } from "./notebook-order.ts";

/** The way through the notebooks: each question in the order in which it comes up. */
export const notebookList = (): HTMLElement =>
  el(
    "ol",
    { class: "questions" },
    ...NOTEBOOK_ORDER.map(({ file, word, question }) =>
      el("li", {}, el("a", { href: `./${file}` }, word), el("span", {}, question)),
    ),
  );
