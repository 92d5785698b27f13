import type { Plan } from "../../plan/plan.ts";
import type { LegSetAnswer } from "./leg-set.ts";

/** Share of a season's energy that nobody walks or saws for, where the plan states none, % (our own choice). */
const LEAST_GAIN_PCT = 2;

/** What a further leg or changing legs has to bring to be recommended, as a share of the season's energy, 0..1. */
export const leastGainOf = ({ stand }: Pick<Plan, "stand">): number =>
  (stand.leastGainPct ?? LEAST_GAIN_PCT) / 100;

/**
 * The smallest set that no larger one beats by more than a share of what it brings.
 *
 * @param sets the best ones, smallest first, at least one
 * @param leastGain share, 0..1
 */
export const enoughLegs = (sets: readonly LegSetAnswer[], leastGain: number): LegSetAnswer => {
  const mostWh = Math.max(...sets.map(({ scoreWh }) => scoreWh));
  return sets.find(({ scoreWh }) => mostWh <= (1 + leastGain) * scoreWh) ?? sets[sets.length - 1];
};
