import type { Plan } from "../../lib/plan/plan.ts";
import { type PanelUnit, panelUnits } from "../../lib/season/index.ts";

let last: { readonly key: string; readonly units: readonly PanelUnit[] } | null = null;

/** A plan's panels, ready for the loop over a season: fitted once and kept until they change. */
export const panelsOf = (plan: Pick<Plan, "panels">): readonly PanelUnit[] => {
  const key = JSON.stringify(plan.panels);
  if (last?.key !== key) last = { key, units: panelUnits(plan.panels) };
  return last.units;
};
