import { cableProblems } from "../../../lib/circuit/cable-drops.ts";
import { PlanError } from "../../../lib/plan/index.ts";
import type { Plan } from "../../../lib/plan/plan.ts";
import { settingsOf } from "../../../lib/season/index.ts";
import { type Problem, problemLine } from "../../../lib/units/problem.ts";
import { panelsOf } from "../panels.ts";
import { planSkiesOf } from "../skies.ts";

/** Rows of a weather file can be wrong by the thousand; the first few tell what to do. */
const MOST_FROM_A_FILE = 3;

const problemsOf = async (work: () => unknown): Promise<readonly Problem[]> => {
  try {
    await work();
    return [];
  } catch (cause) {
    if (cause instanceof PlanError) return cause.problems;
    throw cause;
  }
};

/** A complaint about a file belongs to the field that names the file. */
const atItsField = ({ sky }: Plan, problem: Problem): Problem =>
  /^(site|season|air|sky|panels|stand)\b/.test(problem.path)
    ? problem
    : {
        path: "sky.file",
        value: sky.source === "weather" ? sky.file : sky.source,
        allowed: `does not suit this plan: ${problemLine(problem)}`,
      };

/**
 * What is wrong with a plan that only comes up when it is worked with: a leg that can't stand, a nameplate that can't be
 * true, a weather file of another place.
 */
export const problemsInUse = async (plan: Plan): Promise<readonly Problem[]> => {
  const skies = await problemsOf(() => planSkiesOf(plan));
  return [
    ...(await problemsOf(() => settingsOf(plan))),
    ...(await problemsOf(() => panelsOf(plan))),
    ...cableProblems(plan),
    ...skies.slice(0, MOST_FROM_A_FILE).map((problem) => atItsField(plan, problem)),
  ];
};
