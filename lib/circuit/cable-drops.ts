import type { CableRun } from "../plan/circuit.ts";
import { completeNameplate } from "../plan/nameplate.ts";
import type { Plan } from "../plan/plan.ts";
import { PlanError, type Problem } from "../units/problem.ts";
import { nominalV } from "./chemistry.ts";
import { cableDrop } from "./drop.ts";

/** A drop of all the voltage there is cannot be meant: the current that makes it could not flow. */
const WHOLE_PCT = 100;

const dropProblem = (path: string, run: CableRun, amps: number, volts: number): readonly Problem[] => {
  const { dropPct } = cableDrop(run, amps, volts);
  return dropPct < WHOLE_PCT
    ? []
    : [
        {
          path,
          value: run.size,
          allowed: `a cable of ${run.lengthM} m one way in this size would drop ${Math.round(dropPct)} % of ${volts.toFixed(0)} V at ${amps.toFixed(1)} A: more than there is`,
          hint: "a thicker size (mm2 as a number, gauges as text), a shorter length in metres one way, or fewer milliohms of contacts",
        },
      ];
};

/** Cables of a plan that cannot be meant: at rated current they would drop all the voltage there is. */
export const cableProblems = ({
  circuit,
  panels,
  battery,
}: Pick<Plan, "circuit" | "panels" | "battery">): readonly Problem[] => [
  ...panels
    .flatMap(({ module, inSeries }) => {
      const { impA, vmpV } = completeNameplate(module);
      return dropProblem("circuit.panelCable.size", circuit.panelCable, impA, inSeries * vmpV);
    })
    .slice(0, 1),
  ...dropProblem(
    "circuit.batteryCable.size",
    circuit.batteryCable,
    circuit.controller.maxCurrentA,
    nominalV(battery),
  ),
];

/** @throws PlanError for a cable that cannot be meant */
export const checkCables = (plan: Pick<Plan, "circuit" | "panels" | "battery">): void => {
  const problems = cableProblems(plan);
  if (problems.length > 0) throw new PlanError(problems);
};
