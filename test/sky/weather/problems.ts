import { PlanError, type Problem } from "../../../lib/units/problem.ts";

/** The complaints that some work ends in; none when it ends well. */
export const complaintsOf = (work: () => unknown): readonly Problem[] => {
  try {
    work();
    return [];
  } catch (error) {
    if (error instanceof PlanError) return error.problems;
    throw error;
  }
};
