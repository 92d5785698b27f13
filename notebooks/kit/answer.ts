import type { Headline } from "../../lib/report/headline.ts";
import { el } from "./dom.ts";

/** An answer in a sentence, its figures stressed. */
export const answerOf = (headline: Headline): HTMLElement =>
  el(
    "p",
    { class: "answer" },
    ...headline.map((part) => (typeof part === "string" ? part : el("strong", {}, part.figure))),
  );
