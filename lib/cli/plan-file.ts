import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import type { Plan } from "../plan/plan.ts";
import { readPlanText } from "../plan/read-plan.ts";
import { PlanError } from "../units/problem.ts";
import { LARGEST_PLAN_BYTES, readTextFile } from "./read-file.ts";

/** A plan as read from a file, and the folder that file names inside it are relative to. */
export interface PlanFile {
  readonly plan: Plan;
  readonly folder: string;
  /** Whether this is the demo, because no plan was named. */
  readonly isDemo: boolean;
}

/** What stands above an answer: the plan's name, and that it is the demo where it is. */
export const planHeading = ({ plan, isDemo }: PlanFile): string =>
  `${plan.name}${isDemo ? " (the demo plan)" : ""}`;

/** The plan that runs when none is named. Its folder lies beside `lib` and beside `dist` alike. */
const DEMO = fileURLToPath(new URL("../../data/plans/warden-hut.json", import.meta.url));

/**
 * Reads the plan named on the command line, or the demo plan.
 *
 * @throws PlanError with every problem, each under the file's name
 */
export const readPlanFile = async (path: string | undefined): Promise<PlanFile> => {
  const file = path ?? DEMO;
  const text = await readTextFile(file, LARGEST_PLAN_BYTES);
  try {
    return { plan: readPlanText(text), folder: dirname(resolve(file)), isDemo: path === undefined };
  } catch (error) {
    if (error instanceof PlanError && path !== undefined) {
      throw new PlanError(
        error.problems.map((problem) => ({ ...problem, path: `${path}: ${problem.path}` })),
      );
    }
    throw error;
  }
};
