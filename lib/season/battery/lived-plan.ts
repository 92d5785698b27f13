import type { Plan } from "../../plan/plan.ts";

/**
 * A plan at the step at which its battery is lived through, `worth.stepMinutes`: every answer about short days makes its
 * skies of this plan, so that no two of them can differ by their step.
 */
export const livedPlan = (plan: Plan): Plan => ({
  ...plan,
  season: { ...plan.season, stepMinutes: plan.worth.stepMinutes },
});
