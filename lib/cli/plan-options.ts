import { z } from "zod";
import { ANALOGY_KINDS, type ClimateFrom } from "../plan/climate.ts";
import { problemsOf } from "../plan/issues.ts";
import type { Plan } from "../plan/plan.ts";
import { PlanError } from "../plan/problem.ts";
import { seasonSchema } from "../plan/season.ts";
import { skySchema } from "../plan/sky.ts";
import { textOption, type VerbWords } from "./verb.ts";

/** Options that stand in for the plan's season and sky, the same in every verb. */
export const PLAN_OPTIONS = {
  from: { type: "string" },
  to: { type: "string" },
  step: { type: "string" },
  climate: { type: "string" },
} as const;

const seasonOnly = z.strictObject({ season: seasonSchema });

/** What a climate is called on the command line: `nearest`, a kind of climate, or a place. */
const climateFrom = (name: string): ClimateFrom => {
  if (name === "nearest") return { kind: "nearest" };
  const like = ANALOGY_KINDS.find((kind) => kind === name.toLowerCase());
  return like === undefined ? { kind: "place", name } : { kind: "analogy", like };
};

/**
 * The plan with its season, and where asked its sky, changed by the options that were given.
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
  const climate = textOption(words, "climate");
  const sky =
    climate === undefined
      ? plan.sky
      : skySchema.parse({ source: "climate", from: climateFrom(climate), toPlane: plan.sky.toPlane });
  return { ...plan, season: read.data.season, sky };
};
