import type { Plan } from "../../plan/plan.ts";
import { flatTiltDeg, namedLegs } from "../../stand/settings.ts";
import { equatorwards, wrapBearing } from "../../units/angle.ts";

/** One way to set the stand: a leg in use, or none. */
export interface Setting {
  /** The leg's name, or `flat`. */
  readonly name: string;
  /** Pivot-hole centre to foot; `null` when the panel lies flat. */
  readonly legMm: number | null;
  readonly tiltDeg: number;
  readonly bearingDeg: number;
}

/** The bearing the stand faces: as the plan says, or towards the equator. */
export const facingOf = ({ stand, site }: Pick<Plan, "stand" | "site">): number =>
  stand.facingDeg === undefined ? equatorwards(site.latitudeDeg) : wrapBearing(stand.facingDeg);

/**
 * The settings of a plan's stand: flat first, then every leg in the plan's order.
 *
 * @throws PlanError naming every leg that can't stand, why, and what would
 */
export const settingsOf = (plan: Pick<Plan, "stand" | "site">): readonly Setting[] => {
  const bearingDeg = facingOf(plan);
  return [
    { name: "flat", legMm: null, tiltDeg: flatTiltDeg(plan.stand), bearingDeg },
    ...namedLegs(plan.stand).map(({ name, legMm, tiltDeg }) => ({ name, legMm, tiltDeg, bearingDeg })),
  ];
};
