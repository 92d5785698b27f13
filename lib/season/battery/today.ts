import { checkCables } from "../../circuit/cable-drops.ts";
import type { Plan } from "../../plan/plan.ts";
import { bestLegForGood, legsInUse } from "../aiming/aims-of-plan.ts";
import { type AimPlan, heldAim } from "../light/aim-plan.ts";
import { type PanelUnit, panelUnits } from "../light/panel-unit.ts";
import { settingsOf } from "../light/settings.ts";
import type { SeasonSkies } from "../light/skies.ts";
import type { PlacedPanels, SetUp } from "./set-up.ts";

/** A plan's set-up as it is, and what a change to it starts from. */
export interface Today {
  readonly asIs: SetUp;
  /** Panels that the stand holds. */
  readonly onStand: readonly PanelUnit[];
  readonly hasLegs: boolean;
  /** The legs in use, changed by the calendar; lying flat where there are none. Worked out when first asked for. */
  readonly legAims: () => AimPlan;
  /** All panels of the plan, those on the stand aimed so. */
  readonly place: (aims: AimPlan) => readonly PlacedPanels[];
}

/**
 * A plan's set-up as it is: fixed panels where they are, those on the stand on its legs, or flat where the plan says so.
 *
 * @param skies of the season, by which legs are chosen
 * @throws PlanError for a nameplate that can't be true, a leg that can't stand or a cable that can't be meant
 */
export const todayOf = (plan: Plan, skies: SeasonSkies): Today => {
  const { circuit, battery, loads, worth } = plan;
  checkCables(plan);
  const units = panelUnits(plan.panels);
  const onStand = units.filter(({ fixedAim }) => fixedAim === null);
  const settings = settingsOf(plan);
  const [flat] = settings;
  const flatAims = heldAim(flat);
  const hasLegs = settings.length > 1;
  const onLegs = onStand.length > 0 ? onStand : units;
  let inUse: AimPlan | null = null;
  const legAims = (): AimPlan => {
    inUse ??= hasLegs ? legsInUse(skies, onLegs, settings) : flatAims;
    return inUse;
  };
  // One plan of aims each, so that light on a fixed panel is worked out once for all set-ups.
  const fixed = units.map(({ fixedAim }) => (fixedAim === null ? null : heldAim(fixedAim)));
  const place = (aims: AimPlan): readonly PlacedPanels[] =>
    units.map((unit, index) => ({ unit, aims: fixed[index] ?? aims }));
  const standAims = (): AimPlan => {
    if (!hasLegs || worth.now === "flat") return flatAims;
    return worth.now === "legs" ? legAims() : bestLegForGood(skies, onLegs, settings);
  };
  return {
    asIs: { name: "as is", panels: place(standAims()), circuit, battery, loads },
    onStand,
    hasLegs,
    legAims,
    place,
  };
};
