import type { Problem } from "../units/problem.ts";
import { cutOffProblems } from "./circuit-rules.ts";
import { nameplateProblems } from "./nameplate.ts";
import { stringProblems } from "./panel-rules.ts";
import type { Plan } from "./plan.ts";
import { zoneProblems } from "./site-rules.ts";
import { legProblems } from "./stand-rules.ts";

/** What must fit together between sections. Each rule is skipped while a section it needs is itself wrong. */
export const sectionRules = (plan: Partial<Plan>): readonly Problem[] => {
  const { site, season, panels, stand, circuit, battery } = plan;
  const problems: Problem[] = [];
  if (site && season) problems.push(...zoneProblems(site, season));
  if (stand) problems.push(...legProblems(stand));
  if (circuit && battery) problems.push(...cutOffProblems(circuit, battery));
  panels?.forEach((panel, index) => {
    const { module } = panel;
    problems.push(...stringProblems(panel, `panels[${index}]`));
    problems.push(...nameplateProblems(module, `panels[${index}].module`));
  });
  if (panels && stand) {
    panels.forEach((panel, index) => {
      if (panel.mount.kind === "stand" && stand.pivotMm > panel.lengthMm) {
        problems.push({
          path: "stand.pivotMm",
          value: stand.pivotMm,
          allowed: `must be at most ${panel.lengthMm} mm, the length of panels[${index}] "${panel.name}"`,
          hint: "it is measured along the frame from the panel's bottom edge",
        });
      }
    });
  }
  return problems;
};
