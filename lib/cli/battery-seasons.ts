import type { Plan } from "../plan/plan.ts";
import { livedPlan } from "../season/battery/lived-plan.ts";
import type { PlanSkies } from "../season/light/skies-of-plan.ts";
import { planSkies } from "./plan-skies.ts";
import { progressLine } from "./progress.ts";
import type { Voice } from "./verb.ts";

/** Skies that a plan's battery is put through, at its own step. */
export interface LivedSkies {
  /** The plan with the step that batteries are run at. */
  readonly plan: Plan;
  readonly skies: PlanSkies;
  /** Told how far the work has come, 0 to 1. */
  readonly progress: (share: number) => void;
  /** Wipes the progress line. */
  readonly end: () => void;
}

/** Makes the skies that a plan's battery lives through, at the battery's step, and the line that tells how far it has come. */
export const livedSkies = async (given: Plan, folder: string, voice: Voice): Promise<LivedSkies> => {
  const plan = livedPlan(given);
  const line = progressLine("living through the seasons", voice);
  return { plan, skies: await planSkies(plan, folder), progress: line.at, end: line.end };
};
