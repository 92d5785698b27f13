import { PlanError, type Problem } from "../units/problem.ts";
import { doubleKeys } from "./double-keys.ts";
import { problemsOf } from "./issues.ts";
import { type Plan, planSchema, sectionSchemas } from "./plan.ts";
import { sectionRules } from "./rules.ts";

/** What became of a reading: a plan, or every problem found. */
export type PlanReading =
  | { readonly ok: true; readonly plan: Plan }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/**
 * Reads a plan and says everything that is wrong with it at once: types, ranges, unknown keys (with the nearest
 * known one), and what does not fit together between sections that are right by themselves.
 *
 * @param given a plan as parsed from JSON
 */
export const checkPlan = (given: unknown): PlanReading => {
  const parsed = planSchema.safeParse(given);
  if (parsed.success) {
    const problems = sectionRules(parsed.data);
    return problems.length === 0 ? { ok: true, plan: parsed.data } : { ok: false, problems };
  }
  const problems = problemsOf(planSchema, given, parsed.error.issues);
  if (!isRecord(given)) return { ok: false, problems };
  // Sections that are right by themselves are still checked against each other.
  const sections = Object.entries(sectionSchemas).flatMap(([name, schema]) => {
    const section = schema.safeParse(given[name]);
    return section.success ? [[name, section.data] as const] : [];
  });
  return { ok: false, problems: [...problems, ...sectionRules(Object.fromEntries(sections))] };
};

/**
 * Reads a plan.
 *
 * @throws PlanError with every problem found
 */
export const readPlan = (given: unknown): Plan => {
  const reading = checkPlan(given);
  if (!reading.ok) throw new PlanError(reading.problems);
  return reading.plan;
};

/**
 * Reads a plan from the text of a plan file.
 *
 * @throws PlanError when the text is not JSON (with the place where it breaks off), when a key stands twice in it, or as `readPlan`
 */
export const readPlanText = (text: string): Plan => {
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch (cause) {
    const said = cause instanceof Error ? cause.message : String(cause);
    throw new PlanError([
      {
        path: "plan",
        value: text.slice(0, 40),
        allowed: `must be JSON: ${said}`,
        hint: "check the commas and quotes near that place",
      },
    ]);
  }
  const twice = doubleKeys(text);
  if (twice.length > 0) throw new PlanError(twice);
  return readPlan(given);
};
