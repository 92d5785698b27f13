import { modelWords } from "../../lib/report/model-words.ts";
import type { Provenance } from "../../lib/report/table-metadata.ts";
import type { Setup } from "./plan/panel.ts";

/** What made a notebook's tables: the plan as typed, the models behind it, and this version of the library. */
export const provenanceOf = ({ plan, given }: Setup): Provenance => ({
  plan: given,
  models: modelWords(plan),
  version: import.meta.env.PANEL_SEASON_VERSION,
});
