import type { Plan } from "../../plan/plan.ts";
import { type NamedLeg, namedLegs } from "../../stand/settings.ts";
import { legSettings, type Setting } from "../light/settings.ts";
import type { LegSetAnswer } from "./leg-set.ts";

/** A set's legs under names of their own, beside the owned ones. */
export const legsOfSet = (plan: Plan, { legs }: LegSetAnswer): readonly NamedLeg[] => [
  ...namedLegs({ ...plan.stand, legs: plan.stand.legs.filter((leg) => "lengthMm" in leg && leg.owned) }),
  ...legs.map(({ legMm, tiltDeg }) => ({
    name: `leg ${Math.round(legMm)}`,
    owned: false,
    legMm,
    tiltDeg,
  })),
];

/**
 * The legs to make things for: the plan's own, unless a set of that many was asked for or the plan has none.
 *
 * @param size legs in the set, or `undefined` for the plan's own
 */
export const chosenLegs = (
  plan: Plan,
  sets: readonly LegSetAnswer[],
  size: number | undefined,
): readonly NamedLeg[] => {
  if (size === undefined && plan.stand.legs.length > 0) return namedLegs(plan.stand);
  // A larger set than pays is not there: then the largest one that does.
  const set = sets.findLast(({ legs }) => legs.length <= (size ?? sets.length));
  return set === undefined ? [] : legsOfSet(plan, set);
};

/** Flat, then those legs, facing every way that can matter in the season. */
export const legsAsSettings = (plan: Plan, legs: readonly NamedLeg[]): readonly Setting[] =>
  legSettings(plan, legs);
