import type { Plan } from "../../plan/plan.ts";
import { beaufortOf } from "../../stand/beaufort.ts";
import { standGeometry } from "../../stand/settings.ts";
import { standPanels } from "../../stand/stand-panel.ts";
import { type Steadiness, steadiness } from "../../stand/steadiness.ts";

/** The wind that a stand holds as it is told: whole m/s, rounded down, with its Beaufort force. */
export const windHeldWords = ({ forecastMs }: Pick<Steadiness, "forecastMs">): string => {
  const shown = Math.floor(forecastMs);
  const { force, name } = beaufortOf(shown);
  return `${shown} m/s (Beaufort ${force}, ${name})`;
};

/** The ballast that would hold the plan's wind, rounded up to whole kg. */
export const ballastWords = ({ ballastKg }: Pick<Steadiness, "ballastKg">, holdWindMs: number): string => {
  const wind = `${Math.round(holdWindMs)} m/s`;
  if (ballastKg === null) return `no ballast holds ${wind} here`;
  if (ballastKg === 0) return `it holds ${wind} without ballast`;
  return `${Math.ceil(ballastKg)} kg of ballast, half on the bottom edge and half on the leg's foot, would hold ${wind}`;
};

const steadyWords = (name: string, steady: Steadiness, holdWindMs: number): string => {
  const { first, gustMs } = steady;
  const ballast = ballastWords(steady, holdWindMs);
  return gustMs[first] === 0
    ? `${name}: does not stand by itself, it ${first} without any wind. Move the pivot further up the frame, or weigh it down: ${ballast}.`
    : `${name}: unstaked, it may move above a forecast wind of ${windHeldWords(steady)}; it ${first} first. ` +
        `Stake it, and bring it in above that; ${ballast}.`;
};

/** How steady a plan's stand is at a tilt. */
export const steadyAt = (plan: Pick<Plan, "panels" | "stand">, tiltDeg: number): Steadiness =>
  steadiness(standGeometry(plan.stand), standPanels(plan), plan.stand.steadying, tiltDeg);

/**
 * What the wind may do to each setting of a stand, what to do about it, and what ballast holds the plan's wind: a
 * paragraph a setting, to stand beside `WIND_CAUTION`.
 *
 * @throws PlanError when no panel is on the stand
 */
export const steadySentences = (
  plan: Pick<Plan, "panels" | "stand">,
  settings: readonly { readonly name: string; readonly tiltDeg: number }[],
): readonly string[] =>
  settings.map(({ name, tiltDeg }) =>
    steadyWords(name, steadyAt(plan, tiltDeg), plan.stand.steadying.holdWindMs),
  );
