import type { Leg, Stand } from "../plan/stand.ts";
import { PlanError, type Problem } from "../units/problem.ts";
import type { LegHold, StandGeometry } from "./geometry.ts";
import { type LegFit, type LegSetting, legOfTilt, tiltOfLeg } from "./leg.ts";
import { tiltOfReading } from "./reading.ts";

/** One leg of the plan, with the tilt it gives. */
export interface NamedLeg extends LegSetting {
  readonly name: string;
  readonly owned: boolean;
}

const holdOf = (stand: Stand): LegHold => {
  if (stand.legStyle !== "strap") return { kind: stand.legStyle };
  // The plan's own check has already asked for it; a strap as long as the pivot distance is the even choice.
  return { kind: "strap", strapMm: stand.strapMm ?? stand.pivotMm };
};

/** The geometry of a plan's stand. */
export const standGeometry = (stand: Stand): StandGeometry => ({
  hold: holdOf(stand),
  pivotMm: stand.pivotMm,
  pivotInsetMm: stand.pivotInsetMm,
  heelSpacerMm: stand.heelSpacerMm,
  groundSlopeDeg: stand.groundSlopeDeg,
});

const fitOf = (geometry: StandGeometry, leg: Leg): LegFit =>
  "lengthMm" in leg
    ? tiltOfLeg(geometry, leg.lengthMm)
    : legOfTilt(geometry, tiltOfReading({ deg: leg.tiltDeg, from: leg.readFrom }));

/** A leg's length or tilt as the plan states it, so that a complaint quotes what was written. */
const asStated = (leg: Leg): string =>
  "lengthMm" in leg
    ? `${leg.lengthMm} mm`
    : `${leg.tiltDeg} degrees from ${leg.readFrom === "post" ? "a post" : "the ground"}`;

/**
 * The plan's legs with their tilts, in the plan's order. Flat (no leg) is not among them.
 *
 * @throws PlanError naming every leg that can't stand, why, and what would fit
 */
export const namedLegs = (stand: Stand): readonly NamedLeg[] => {
  const geometry = standGeometry(stand);
  const problems: Problem[] = [];
  const legs = stand.legs.flatMap((leg, index): NamedLeg[] => {
    const fit = fitOf(geometry, leg);
    if (fit.kind === "impossible") {
      const key = "lengthMm" in leg ? "lengthMm" : "tiltDeg";
      problems.push({ ...fit.problem, path: `stand.legs[${index}].${key}`, value: asStated(leg) });
      return [];
    }
    const owned = "lengthMm" in leg && leg.owned;
    return [{ name: leg.name, owned, legMm: fit.legMm, tiltDeg: fit.tiltDeg }];
  });
  if (problems.length > 0) throw new PlanError(problems);
  return legs;
};

/** The tilt of the setting with no leg: the lie of the ground, or level. Degrees. */
export const flatTiltDeg = (stand: Stand): number => Math.max(0, stand.groundSlopeDeg);
