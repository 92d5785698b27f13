import type { Plan } from "../../lib/plan/plan.ts";
import { readySkies, type SeasonSkies, seasonClearSky, seasonSun } from "../../lib/season/index.ts";

/** What the skies depend on: everything else of a plan can change without the sun being looked up again. */
const skyKey = ({ site, season, air, sky }: Plan): string => JSON.stringify([site, season, air, sky]);

let last: { readonly key: string; readonly skies: Promise<SeasonSkies> } | null = null;

const make = async (plan: Plan): Promise<SeasonSkies> => {
  const sun = seasonSun(plan);
  return readySkies(sun, seasonClearSky(plan, sun), [], plan.sky.toPlane);
};

/** The skies of a plan's season, made once and kept until place, season, air or sky change. */
export const skiesOf = (plan: Plan): Promise<SeasonSkies> => {
  const key = skyKey(plan);
  if (last?.key !== key) last = { key, skies: make(plan) };
  return last.skies;
};
