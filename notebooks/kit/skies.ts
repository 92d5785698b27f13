import { PlanError } from "../../lib/plan/index.ts";
import type { Plan } from "../../lib/plan/plan.ts";
import { type PlanSkies, type SeasonSkies, skiesOfPlan } from "../../lib/season/index.ts";
import type { ClimateTable } from "../../lib/sky/climate/table/climate-table.ts";
import { planClimates } from "./climate/tables.ts";
import { weatherText } from "./weather/files.ts";

/** The files that a plan's sky is made from. */
export interface PlanFiles {
  readonly weatherCsv: string | null;
  readonly climates: ClimateTable;
}

/**
 * Finds the files that a plan's sky names, among those the person has opened and those that travel with the notebooks.
 *
 * @throws PlanError when there is no such file
 */
export const planFiles = async ({ sky }: Plan): Promise<PlanFiles> => {
  if (sky.source === "clear") return { weatherCsv: null, climates: { stations: [] } };
  if (sky.source === "climate") return { weatherCsv: null, climates: await planClimates(sky.from) };
  const weatherCsv = await weatherText(sky.file);
  if (weatherCsv === null) {
    throw new PlanError([
      {
        path: "sky.file",
        value: sky.file,
        allowed: "must be a weather file that these notebooks hold",
        hint: "open it under Sky, or choose one of those that travel with them",
      },
    ]);
  }
  return { weatherCsv, climates: { stations: [] } };
};

/** What the skies depend on: everything else of a plan can change without the sun being looked up again. */
const skyKey = ({ site, season, air, sky }: Plan): string => JSON.stringify([site, season, air, sky]);

let last: { readonly key: string; readonly skies: Promise<PlanSkies> } | null = null;

const make = async (plan: Plan): Promise<PlanSkies> => {
  const { weatherCsv, climates } = await planFiles(plan);
  return skiesOfPlan(plan, weatherCsv, climates);
};

/** All about the skies of a plan's season, made once and kept until place, season, air or sky change. */
export const planSkiesOf = (plan: Plan): Promise<PlanSkies> => {
  const key = skyKey(plan);
  if (last?.key !== key) last = { key, skies: make(plan) };
  return last.skies;
};

/** The skies of a plan's season. */
export const skiesOf = async (plan: Plan): Promise<SeasonSkies> => (await planSkiesOf(plan)).skies;

/** What a reader must know about a plan's weather: what was mended in the file, and what is missing. */
export const skyNotesOf = async (plan: Plan): Promise<readonly string[]> => (await planSkiesOf(plan)).notes;
