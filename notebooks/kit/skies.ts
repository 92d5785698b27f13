import { PlanError } from "../../lib/plan/index.ts";
import type { Plan } from "../../lib/plan/plan.ts";
import { type PlanSkies, type SeasonSkies, skiesOfPlan } from "../../lib/season/index.ts";
import { planClimates } from "./climate/tables.ts";
import { weatherText } from "./weather/files.ts";

/** What the skies depend on: everything else of a plan can change without the sun being looked up again. */
const skyKey = ({ site, season, air, sky }: Plan): string => JSON.stringify([site, season, air, sky]);

let last: { readonly key: string; readonly skies: Promise<PlanSkies> } | null = null;

/** The text of a file that travels with the notebooks or was opened in them. */
const heldText = async (path: string, file: string): Promise<string> => {
  const text = await weatherText(file);
  if (text === null) {
    throw new PlanError([
      {
        path,
        value: file,
        allowed: "must be a weather file that these notebooks hold",
        hint: "open it under Sky, or choose one of those that travel with them",
      },
    ]);
  }
  return text;
};

const make = async (plan: Plan): Promise<PlanSkies> => {
  const { sky } = plan;
  if (sky.source === "clear") return skiesOfPlan(plan, null);
  if (sky.source === "climate") return skiesOfPlan(plan, null, await planClimates(sky.from));
  const { file, airFile } = sky;
  const airCsv = airFile === undefined ? null : await heldText("sky.airFile", airFile);
  return skiesOfPlan(plan, await heldText("sky.file", file), undefined, airCsv);
};

const planSkies = (plan: Plan): Promise<PlanSkies> => {
  const key = skyKey(plan);
  if (last?.key !== key) last = { key, skies: make(plan) };
  return last.skies;
};

/** The skies of a plan's season, made once and kept until place, season, air or sky change. */
export const skiesOf = async (plan: Plan): Promise<SeasonSkies> => (await planSkies(plan)).skies;

/** What a reader must know about a plan's weather: what was mended in the file, and what is missing. */
export const skyNotesOf = async (plan: Plan): Promise<readonly string[]> => (await planSkies(plan)).notes;
