import type { Headline } from "../../lib/report/headline.ts";
import { el } from "./dom.ts";

/** An answer in a sentence, its figures stressed. */
export const answerOf = (headline: Headline): HTMLElement =>
  el(
    "p",
    { class: "answer" },
    ...headline.map((part) => (typeof part === "string" ? part : el("strong", {}, part.figure))),
  );

/** A headline that follows other words: its first letter is small. */
export const lowered = ([first = "", ...rest]: Headline): Headline => [
  typeof first === "string" ? `${first.charAt(0).toLowerCase()}${first.slice(1)}` : first,
  ...rest,
];
