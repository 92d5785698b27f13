import type { Stand } from "../plan/stand.ts";
import { PlanError } from "../units/problem.ts";
import { type LegSetting, legReach, tiltOfLeg } from "./leg.ts";
import { standGeometry } from "./settings.ts";
import type { Stowing } from "./stow.ts";

/** More lengths than this to choose among answer no better: the saw's step is then finer than any tilt that matters. */
const MOST_LENGTHS = 400;

/** Tilts below this are as good as flat: a leg for them is not worth its wood. */
const LEAST_TILT_DEG = 1;

/**
 * The lengths a leg could be cut to: whole steps of the saw, from the shortest that lifts the panel off the ground to
 * the longest that stands and stows, within the plan's own limits; longer than its rubber foot.
 *
 * @throws PlanError when none is left, or the step is so fine that there are too many
 */
export const sawableLegs = (stand: Stand, stow: Stowing): readonly LegSetting[] => {
  const { stepMm, leastMm = 0, greatestMm = Number.POSITIVE_INFINITY, footMm } = stand.cutting;
  const geometry = standGeometry(stand);
  const { lowest, highest } = legReach(geometry);
  const least = Math.max(lowest.legMm, leastMm, stepMm);
  const greatest = Math.min(highest.legMm, greatestMm, stow.limitMm);
  const first = Math.ceil(least / stepMm - 1e-9);
  const last = Math.floor(greatest / stepMm + 1e-9);
  if (last - first + 1 > MOST_LENGTHS) {
    throw new PlanError([
      {
        path: "stand.cutting.stepMm",
        value: stepMm,
        allowed: `must be at least ${Math.ceil((greatest - least) / (MOST_LENGTHS - 1))} mm for legs of ${Math.round(least)} to ${Math.round(greatest)} mm`,
        hint: "a coarser step, or a narrower range between leastMm and greatestMm",
      },
    ]);
  }
  const legs = Array.from({ length: Math.max(0, last - first + 1) }, (_, index) =>
    tiltOfLeg(geometry, (first + index) * stepMm),
  ).flatMap((fit): LegSetting[] =>
    fit.kind === "stands" && fit.legMm > footMm && fit.tiltDeg - lowest.tiltDeg >= LEAST_TILT_DEG
      ? [{ legMm: fit.legMm, tiltDeg: fit.tiltDeg }]
      : [],
  );
  if (legs.length === 0) {
    throw new PlanError([
      {
        path: "stand.cutting",
        value: `${leastMm} to ${Math.min(greatestMm, stow.limitMm).toFixed(0)} mm in steps of ${stepMm} mm`,
        allowed: `must leave a leg between ${lowest.legMm.toFixed(0)} and ${highest.legMm.toFixed(0)} mm that stands, and at most ${stow.limitMm.toFixed(0)} mm that stows`,
        hint: "look at leastMm, greatestMm, stepMm, stand.stowMm and stand.pivotMm",
      },
    ]);
  }
  return legs;
};
