import type { Plan } from "../../plan/plan.ts";
import { tiltOfLeg } from "../../stand/leg.ts";
import { flatTiltDeg, namedLegs, standGeometry } from "../../stand/settings.ts";
import { toDegrees, toRadians, turnBetween } from "../../units/angle.ts";
import { facingOf, type Setting } from "../light/settings.ts";

const HALF_CIRCLE_DEG = 180;

/** The slope of the ground along one bearing, when it is known along another: tan(slope) shrinks with the cosine of the turn. */
const slopeAlong = (slopeDeg: number, turnDeg: number): number =>
  toDegrees(Math.atan(Math.tan(toRadians(slopeDeg)) * Math.cos(toRadians(turnDeg))));

/**
 * Every way to set the stand when its bearing is free: lying flat, and each leg at each bearing. On sloping ground a
 * leg gives another tilt towards another bearing (the slope across the aim is left out); where it can't stand at
 * all, that bearing is left out for it.
 *
 * @param bearingStepDeg goes evenly into 180 degrees, so that true north and south are among the bearings
 * @throws PlanError as `namedLegs` does
 * @throws RangeError for a step that does not go evenly into 180 degrees
 */
export const candidateAims = (
  plan: Pick<Plan, "stand" | "site">,
  bearingStepDeg: number,
): readonly Setting[] => {
  if (!(bearingStepDeg > 0 && Number.isInteger(HALF_CIRCLE_DEG / bearingStepDeg))) {
    throw new RangeError(
      `candidateAims: expected a step that divides 180 degrees evenly, received ${bearingStepDeg}`,
    );
  }
  const flat: Setting = {
    name: "flat",
    legMm: null,
    tiltDeg: flatTiltDeg(plan.stand),
    bearingDeg: facingOf(plan),
  };
  const geometry = standGeometry(plan.stand);
  const bearings = Array.from(
    { length: (2 * HALF_CIRCLE_DEG) / bearingStepDeg },
    (_, step) => step * bearingStepDeg,
  );
  const legs = namedLegs(plan.stand).flatMap(({ name, legMm }) =>
    bearings.flatMap((bearingDeg): Setting[] => {
      const groundSlopeDeg = slopeAlong(geometry.groundSlopeDeg, turnBetween(flat.bearingDeg, bearingDeg));
      const fit = tiltOfLeg({ ...geometry, groundSlopeDeg }, legMm);
      return fit.kind === "stands" ? [{ name, legMm, tiltDeg: fit.tiltDeg, bearingDeg }] : [];
    }),
  );
  return [flat, ...legs];
};
