import { checkPlan, type Plan, problemLine, readPlan } from "../../lib/plan/index.ts";

const LEAST = {
  site: { latitudeDeg: 53.5, longitudeDeg: 8.5 },
  season: { from: "2027-04-01", to: "2027-10-01" },
  panels: [{ name: "prop", module: { powerW: 100 } }],
};

/** The least plan with sections put in or changed. */
export const planWith = (sections: object): Plan => readPlan({ ...LEAST, ...sections });

/** What is said of the least plan with sections put in or changed; empty when nothing is wrong. */
export const linesOf = (sections: object): readonly string[] => {
  const reading = checkPlan({ ...LEAST, ...sections });
  return reading.ok ? [] : reading.problems.map(problemLine);
};
