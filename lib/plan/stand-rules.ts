import type { Problem } from "../units/problem.ts";
import type { Stand } from "./stand.ts";

/** What must fit together inside the stand section. */
export const legProblems = (stand: Stand): readonly Problem[] => {
  const problems: Problem[] = [];
  const seen = new Map<string, number>([["flat", -1]]);
  stand.legs.forEach(({ name }, index) => {
    if (seen.has(name)) {
      problems.push({
        path: `stand.legs[${index}].name`,
        value: name,
        allowed: "must differ from the other legs' names",
        ...(name === "flat" ? { hint: '"flat" is the setting with no leg' } : {}),
      });
    }
    seen.set(name, index);
  });
  if (stand.legStyle === "strap" && stand.strapMm === undefined) {
    problems.push({
      path: "stand.strapMm",
      value: undefined,
      allowed: "is needed for legs held by a strap, 50 to 3000 mm",
      hint: "the distance on the ground from the panel's bottom edge to the leg's foot",
    });
  }
  const { leastMm, greatestMm } = stand.cutting;
  if (leastMm !== undefined && greatestMm !== undefined && leastMm > greatestMm) {
    problems.push({
      path: "stand.cutting.leastMm",
      value: leastMm,
      allowed: `must be at most stand.cutting.greatestMm, ${greatestMm} mm`,
    });
  }
  if (stand.frame.laminateMm > stand.frame.depthMm) {
    problems.push({
      path: "stand.frame.laminateMm",
      value: stand.frame.laminateMm,
      allowed: `must be at most stand.frame.depthMm, ${stand.frame.depthMm} mm`,
    });
  }
  return problems;
};
