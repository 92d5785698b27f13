import type { Plan } from "../../plan/plan.ts";
import type { LegSetAnswer } from "./leg-set.ts";
import type { SwapAnswer } from "./swap-calendar.ts";

/** What a calendar of leg changes came to, and the share that is worth a walk. */
interface Judged {
  readonly calendar: SwapAnswer;
  readonly leastGain: number;
}

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

/** Whether changing legs by the calendar brings enough over never changing to be recommended. */
export const changingPays = ({ calendar, leastGain }: Judged): boolean =>
  calendar.totalWh > (1 + leastGain) * calendar.forgetWh;

/** The setting to keep where changing does not pay: flat where even the best leg brings too little over it. */
export const keptSetting = ({ calendar, leastGain }: Judged): { index: number; totalWh: number } =>
  calendar.totalWh <= (1 + leastGain) * calendar.firstWh
    ? { index: 0, totalWh: calendar.firstWh }
    : { index: calendar.forgetSetting, totalWh: calendar.forgetWh };
