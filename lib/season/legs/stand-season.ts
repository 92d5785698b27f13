import type { Plan } from "../../plan/plan.ts";
import type { SeasonDay } from "../../sun/columns.ts";
import type { PanelUnit } from "../light/panel-unit.ts";
import { facingOf } from "../light/settings.ts";
import type { SeasonSkies } from "../light/skies.ts";
import {
  type AimEnergy,
  aimEnergyOver,
  finerLadder,
  type TiltLadder,
  tiltLadder,
  tiltsEvery,
} from "./tilt-ladder.ts";

/** A plan's season as the panels on its stand have it: what every question about legs is answered from. */
export interface StandSeason {
  readonly plan: Plan;
  readonly days: readonly SeasonDay[];
  /** Bearing that the stand faces, degrees from true north. */
  readonly facingDeg: number;
  /** Wh of each day at any aim, computed afresh. */
  readonly energy: AimEnergy;
  /** Every degree from flat to upright at that bearing: the tilt-by-date map. */
  readonly ladder: TiltLadder;
}

/** Coarse steps that the map is computed in before it is refined. */
const COARSE_STEP_DEG = 3;

/**
 * Makes a season ready for questions about legs.
 *
 * @throws PlanError when no panel is on the stand
 */
export const standSeason = (plan: Plan, skies: SeasonSkies, units: readonly PanelUnit[]): StandSeason => {
  const facingDeg = facingOf(plan);
  return {
    plan,
    days: skies.sun.days,
    facingDeg,
    energy: aimEnergyOver(skies, units),
    ladder: finerLadder(tiltLadder(skies, units, facingDeg, tiltsEvery(COARSE_STEP_DEG)), 1),
  };
};
