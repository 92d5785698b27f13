import type { Plan } from "../../plan/plan.ts";
import type { SeasonDay } from "../../sun/columns.ts";
import { totalWh } from "../light/day-sums.ts";
import type { PanelUnit } from "../light/panel-unit.ts";
import { facingsOf } from "../light/settings.ts";
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
  /** Bearing that the stand faces when it is never turned, degrees from true north: of two, the one that brings more. */
  readonly facingDeg: number;
  /** Wh of each day at any aim, computed afresh. */
  readonly energy: AimEnergy;
  /** Every degree from flat to upright at that bearing: the tilt-by-date map. */
  readonly ladder: TiltLadder;
  /** The same at every bearing that the stand may face in this season (`facingsOf`), the plan's own first. */
  readonly ladders: readonly TiltLadder[];
}

/** Coarse steps that the map is computed in before it is refined. */
const COARSE_STEP_DEG = 3;

/** What the best tilt of a map brings when it is never changed, Wh. */
const mostWh = ({ dayWh }: TiltLadder): number => Math.max(...dayWh.map(totalWh));

/**
 * Makes a season ready for questions about legs.
 *
 * @throws PlanError when no panel is on the stand
 */
export const standSeason = (plan: Plan, skies: SeasonSkies, units: readonly PanelUnit[]): StandSeason => {
  const ladders = facingsOf(plan).map((facingDeg) =>
    finerLadder(tiltLadder(skies, units, facingDeg, tiltsEvery(COARSE_STEP_DEG)), 1),
  );
  const ladder = ladders.reduce((best, one) => (mostWh(one) > mostWh(best) ? one : best));
  return {
    plan,
    days: skies.sun.days,
    facingDeg: ladder.bearingDeg,
    energy: aimEnergyOver(skies, units),
    ladder,
    ladders,
  };
};
