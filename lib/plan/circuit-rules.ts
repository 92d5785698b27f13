import type { Problem } from "../units/problem.ts";
import type { Battery } from "./battery.ts";
import type { Circuit } from "./circuit.ts";

/** A battery's terminals stand between these shares of its voltage class whenever loads could come back. */
const RECONNECT_SHARES = [0.9, 1.2] as const;

/** What must fit together between the load cut-off and the battery. */
export const cutOffProblems = (
  { loadCutOff }: Pick<Circuit, "loadCutOff">,
  { systemV, usablePct }: Pick<Battery, "systemV" | "usablePct">,
): readonly Problem[] => {
  if (loadCutOff === undefined) return [];
  const { reconnectV, reconnectPct } = loadCutOff;
  const [leastV, mostV] = RECONNECT_SHARES.map((share) => Number((share * systemV).toFixed(1)));
  const problems: Problem[] = [];
  if (reconnectV !== undefined && !(reconnectV >= leastV && reconnectV <= mostV)) {
    problems.push({
      path: "circuit.loadCutOff.reconnectV",
      value: reconnectV,
      allowed: `must be ${leastV} to ${mostV} V for a battery of ${systemV} V`,
      hint: "the voltage at the battery's terminals at which loads come back",
    });
  }
  const floorPct = 100 - usablePct;
  if (reconnectPct !== undefined && !(reconnectPct > floorPct)) {
    problems.push({
      path: "circuit.loadCutOff.reconnectPct",
      value: reconnectPct,
      allowed: `must be above ${floorPct} %, the state of charge at which nothing more is taken out`,
      hint: "battery.usablePct sets that floor",
    });
  }
  return problems;
};
