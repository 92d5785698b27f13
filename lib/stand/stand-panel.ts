import type { Plan } from "../plan/plan.ts";
import { PlanError } from "../units/problem.ts";
import type { StandPanel } from "./steadiness.ts";

/** All panels on the stand as one: what is drawn, and what the wind meets. */
export interface StandPanels extends StandPanel {
  /** The shortest frame along the aim: legs must stow in that one. mm. */
  readonly shortestMm: number;
}

/**
 * The panels on a plan's stand, side by side: the longest frame, the widths and weights added up.
 *
 * @throws PlanError when no panel is on the stand
 */
export const standPanels = ({ panels, stand }: Pick<Plan, "panels" | "stand">): StandPanels => {
  const moved = panels.filter(({ mount }) => mount.kind === "stand");
  if (moved.length === 0) {
    throw new PlanError([
      {
        path: "panels",
        value: panels.map(({ name }) => name).join(", "),
        allowed: "must hold at least one panel on the stand",
        hint: 'legs move no fixed panel; give one the mount {"kind": "stand"}',
      },
    ]);
  }
  const lengths = moved.map(({ lengthMm }) => lengthMm);
  const added = (of: (panel: (typeof moved)[number]) => number): number =>
    moved.reduce((sum, panel) => sum + panel.howMany * of(panel), 0);
  return {
    lengthMm: Math.max(...lengths),
    shortestMm: Math.min(...lengths),
    depthMm: stand.frame.depthMm,
    widthMm: added(({ widthMm }) => widthMm),
    massKg: added(({ massKg }) => massKg),
  };
};
