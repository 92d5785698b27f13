import type { Plan } from "../../lib/plan/plan.ts";
import type { PanelUnit, SeasonSkies, StandSeason } from "../../lib/season/index.ts";
import { standSeason } from "../../lib/season/legs/stand-season.ts";
import { facingsOf } from "../../lib/season/light/settings.ts";
import { panelsOf } from "./panels.ts";

interface Made {
  readonly skies: SeasonSkies;
  readonly units: readonly PanelUnit[];
  readonly stand: StandSeason;
}

let last: Made | null = null;

/**
 * A plan's season as the panels on its stand have it. What every tilt brings is kept until skies, panels or bearing change:
 * moving a leg only asks anew which of the tilts are in use.
 *
 * @throws PlanError when no panel is on the stand
 */
export const standOf = (plan: Plan, skies: SeasonSkies): StandSeason => {
  const units = panelsOf(plan);
  if (
    last?.skies === skies &&
    last.units === units &&
    String(last.stand.ladders.map(({ bearingDeg }) => bearingDeg)) === String(facingsOf(plan))
  ) {
    return { ...last.stand, plan };
  }
  const stand = standSeason(plan, skies, units);
  last = { skies, units, stand };
  return stand;
};
