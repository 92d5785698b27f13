import type { Plan } from "../../lib/plan/plan.ts";
import { modelWords } from "../../lib/report/words/model-words.ts";
import { el } from "./dom.ts";

/** The models behind a plan's figures, each with its source. */
export const modelList = (plan: Plan): HTMLElement =>
  el("ul", { class: "models" }, ...modelWords(plan).map((words) => el("li", {}, words)));
