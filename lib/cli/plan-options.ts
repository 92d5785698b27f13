import { z } from "zod";
import { problemsOf } from "../plan/issues.ts";
import type { Plan } from "../plan/plan.ts";
import { PlanError } from "../plan/problem.ts";
import { seasonSchema } from "../plan/season.ts";
import { textOption, type VerbWords } from "./verb.ts";

/** Options that stand in for the plan's season, the same in every verb. */
export const PLAN_OPTIONS = {
  from: { type: "string" },
  to: { type: "string" },
  step: { type: "string" },
} as const;

const seasonOnly = z.strictObject({ season: seasonSchema });

/**
 * The plan with its season changed by the options that were given.
 *
 * @throws PlanError when the changed season is not one
 */
export const planWithOptions = (plan: Plan, words: VerbWords): Plan => {
  const step = textOption(words, "step");
  const season = {
    from: textOption(words, "from") ?? plan.season.from,
    to: textOption(words, "to") ?? plan.season.to,
    stepMinutes: step === undefined ? plan.season.stepMinutes : Number(step),
  };
  const read = seasonOnly.safeParse({ season });
  if (!read.success) throw new PlanError(problemsOf(seasonOnly, { season }, read.error.issues));
  return { ...plan, season: read.data.season };
};
