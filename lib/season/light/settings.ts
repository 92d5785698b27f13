import type { Plan } from "../../plan/plan.ts";
import { tiltOfLeg } from "../../stand/leg.ts";
import { flatTiltDeg, type NamedLeg, namedLegs, standGeometry } from "../../stand/settings.ts";
import { sunVector } from "../../sun/position.ts";
import { solarDays } from "../../sun/solar-day.ts";
import { equatorwards, wrapBearing } from "../../units/angle.ts";

/** One way to set the stand: a leg in use, or none. */
export interface Setting {
  /** The leg's name, or `flat`; where a leg comes facing two ways, `long facing north`. */
  readonly name: string;
  /** Pivot-hole centre to foot; `null` when the panel lies flat. */
  readonly legMm: number | null;
  readonly tiltDeg: number;
  readonly bearingDeg: number;
}

/** The bearing the stand faces: as the plan says, or towards the equator. */
export const facingOf = ({ stand, site }: Pick<Plan, "stand" | "site">): number =>
  stand.facingDeg === undefined ? equatorwards(site.latitudeDeg) : wrapBearing(stand.facingDeg);

/** The sun never passes further from the equator than this. Degrees: the obliquity of 23.44 and a margin for refraction and parallax. */
const SUN_LIMIT_DEG = 24;

/** True on a day whose noon sun stands on the other side of the zenith than the equator's. */
const passesBehind = (noonMs: number, { latitudeDeg, longitudeDeg }: Plan["site"]): boolean => {
  const { north } = sunVector(noonMs, latitudeDeg, longitudeDeg);
  return equatorwards(latitudeDeg) === 180 ? north > 0 : north < 0;
};

/**
 * The ways a stand can face in a season. One, as the plan says or towards the equator; where the noon sun passes on the
 * other side of the zenith on some day of the season, and the plan states no facing, towards the pole too.
 *
 * @returns true bearings, degrees: the plan's own first
 * @example
 * const site = { latitudeDeg: 0.35, longitudeDeg: 32.6, timeZone: "Africa/Kampala" };
 * facingsOf(readPlan({ site, season: { from: "2027-04-01", to: "2027-08-31" }, panels: [{ name: "a", module: { powerW: 100 } }] })) // [180, 0]
 */
export const facingsOf = (plan: Pick<Plan, "stand" | "site" | "season">): readonly number[] => {
  const { stand, site, season } = plan;
  const facing = facingOf(plan);
  if (stand.facingDeg !== undefined || Math.abs(site.latitudeDeg) > SUN_LIMIT_DEG) return [facing];
  const both = solarDays(site, season).some(({ noonMs }) => passesBehind(noonMs, site));
  return both ? [facing, wrapBearing(facing + 180)] : [facing];
};

/** The tilt a leg gives with the stand turned round, where the ground slopes the other way; `null` where it can't stand. */
export const tiltTurnedRound = ({ stand }: Pick<Plan, "stand">, legMm: number): number | null => {
  const geometry = standGeometry(stand);
  const fit = tiltOfLeg({ ...geometry, groundSlopeDeg: -geometry.groundSlopeDeg }, legMm);
  return fit.kind === "stands" ? fit.tiltDeg : null;
};

/** Flat, then each of those legs, facing every way that can matter in the plan's season. */
export const legSettings = (
  plan: Pick<Plan, "stand" | "site" | "season">,
  legs: readonly NamedLeg[],
): readonly Setting[] => {
  const [facing, other] = facingsOf(plan);
  const flat: Setting = {
    name: "flat",
    legMm: null,
    tiltDeg: flatTiltDeg(plan.stand),
    bearingDeg: facing,
  };
  if (other === undefined) {
    return [flat, ...legs.map(({ name, legMm, tiltDeg }) => ({ name, legMm, tiltDeg, bearingDeg: facing }))];
  }
  const named = (name: string, bearingDeg: number): string =>
    `${name} facing ${bearingDeg === 0 ? "north" : "south"}`;
  return [
    flat,
    ...legs.flatMap(({ name, legMm, tiltDeg }): Setting[] => {
      const turned = tiltTurnedRound(plan, legMm);
      const kept = { name: named(name, facing), legMm, tiltDeg, bearingDeg: facing };
      return turned === null
        ? [kept]
        : [kept, { name: named(name, other), legMm, tiltDeg: turned, bearingDeg: other }];
    }),
  ];
};

/**
 * The settings of a plan's stand: flat first, then every leg in the plan's order, facing north and south where both can
 * matter in the season (`facingsOf`).
 *
 * @throws PlanError naming every leg that can't stand, why, and what would
 */
export const settingsOf = (plan: Pick<Plan, "stand" | "site" | "season">): readonly Setting[] =>
  legSettings(plan, namedLegs(plan.stand));
