import type { Headline } from "../../lib/report/words/headline.ts";
import { el } from "./dom.ts";

/** A number with the word that belongs to it: never parted at a line's end. */
const TOGETHER = /(\d[\d.,]* \S+)/;

const together = (text: string): readonly (string | HTMLElement)[] =>
  text
    .split(TOGETHER)
    .filter((part) => part !== "")
    .map((part) => (TOGETHER.test(part) ? el("span", { class: "together" }, part) : part));

/** An answer in a sentence, its figures stressed. */
export const answerOf = (headline: Headline): HTMLElement =>
  el(
    "p",
    { class: "answer" },
    ...headline.flatMap((part) =>
      typeof part === "string" ? together(part) : [el("strong", {}, ...together(part.figure))],
    ),
  );

/** A headline that follows other words: its first letter is small. */
export const lowered = ([first = "", ...rest]: Headline): Headline => [
  typeof first === "string" ? `${first.charAt(0).toLowerCase()}${first.slice(1)}` : first,
  ...rest,
];
