import type { Plan } from "../../lib/plan/plan.ts";
import { bandSentences } from "../../lib/report/words/band-words.ts";
import { type SeasonYield, seasonBands } from "../../lib/season/index.ts";
import { el } from "./dom.ts";
import { planSkiesOf } from "./skies.ts";

/** What a reader must know of the sky behind the figures: whose climate, how sure, what was mended in a file. */
export const skyNotes = async (plan: Plan): Promise<HTMLElement> =>
  el("div", { class: "sky-words" }, ...(await planSkiesOf(plan)).notes.map((note) => el("p", {}, note)));

/**
 * How far days and seasons scatter, and what a reader must know of the sky behind the figures: whose climate, how sure,
 * what was mended. Empty when there is nothing to say.
 */
export const skyWords = async (plan: Plan, yields: SeasonYield): Promise<HTMLElement> => {
  const { cloud, notes } = await planSkiesOf(plan);
  // The figures may be a step behind the plan while a new sky is being made.
  const own = cloud !== null && cloud.skies.length === yields.weights.length ? cloud : null;
  const words = [...bandSentences(yields, own === null ? null : seasonBands(yields, own)), ...notes];
  return el("div", { class: "sky-words" }, ...words.map((each) => el("p", {}, each)));
};
