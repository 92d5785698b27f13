import { z } from "zod";
import { ANALOGY_KINDS, type ClimateFrom } from "../plan/climate.ts";
import { problemsOf } from "../plan/issues.ts";
import type { Plan } from "../plan/plan.ts";
import { seasonSchema } from "../plan/season.ts";
import { skySchema } from "../plan/sky.ts";
import { PlanError } from "../units/problem.ts";
import { textOption, type VerbWords } from "./verb.ts";

/** Options that stand in for the plan's season and sky, the same in every verb. */
export const PLAN_OPTIONS = {
  from: { type: "string" },
  to: { type: "string" },
  step: { type: "string" },
  climate: { type: "string" },
} as const;

/** What those options said, as plain text: it can travel to a worker, and it is part of what a batch was asked. */
export interface PlanChanges {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly step?: string | undefined;
  readonly climate?: string | undefined;
}

export const planChanges = (words: VerbWords): PlanChanges => ({
  from: textOption(words, "from"),
  to: textOption(words, "to"),
  step: textOption(words, "step"),
  climate: textOption(words, "climate"),
});

const changeable = z.strictObject({ season: seasonSchema, sky: skySchema });

/** What a climate is called on the command line: `nearest`, a kind of climate, or a place. */
const climateFrom = (name: string): ClimateFrom => {
  if (name === "nearest") return { kind: "nearest" };
  const like = ANALOGY_KINDS.find((kind) => kind === name.toLowerCase());
  return like === undefined ? { kind: "place", name } : { kind: "analogy", like };
};

/** The plan's sky, or the climate asked for in its stead; how seasons are drawn stays as the plan has it. */
const changedSky = ({ sky }: Plan, climate: string | undefined): unknown => {
  if (climate === undefined) return sky;
  const own = sky.source === "climate" ? sky : {};
  return { ...own, source: "climate", from: climateFrom(climate), toPlane: sky.toPlane };
};

/**
 * The plan with its season, and where asked its sky, changed.
 *
 * @throws PlanError when the changed season or sky is not one, with everything wrong in both
 */
export const changedPlan = (plan: Plan, { from, to, step, climate }: PlanChanges): Plan => {
  const changed = {
    season: {
      from: from ?? plan.season.from,
      to: to ?? plan.season.to,
      stepMinutes: step === undefined ? plan.season.stepMinutes : Number(step),
    },
    sky: changedSky(plan, climate),
  };
  const read = changeable.safeParse(changed);
  if (!read.success) throw new PlanError(problemsOf(changeable, changed, read.error.issues));
  const { stepMinutes } = read.data.season;
  // One step asked for is that of the light and of the battery alike.
  const worth = step === undefined ? plan.worth : { ...plan.worth, stepMinutes };
  return { ...plan, ...read.data, worth };
};

/**
 * The plan with its season, and where asked its sky, changed by the options that were given.
 *
 * @throws PlanError as `changedPlan`
 */
export const planWithOptions = (plan: Plan, words: VerbWords): Plan => changedPlan(plan, planChanges(words));
