import type { Provenance } from "../../lib/report/table/table-metadata.ts";
import { modelWords } from "../../lib/report/words/model-words.ts";
import type { Setup } from "./plan/panel.ts";
import { skyNotesOf } from "./skies.ts";

/**
 * What made a notebook's tables, asked for when one is saved: the plan as typed, the models behind it, what a reader must
 * know of its sky, and this version of the library.
 */
export const provenanceOf =
  ({ plan, given }: Setup) =>
  async (): Promise<Provenance> => ({
    plan: given,
    models: modelWords(plan),
    notes: await skyNotesOf(plan),
    version: import.meta.env.PANEL_SEASON_VERSION,
  });
