import type { Plan } from "../plan/plan.ts";
import type { SeasonDay } from "../sun/columns.ts";
import { panelUnits } from "./panel-unit.ts";
import { facingOf, type Setting, settingsOf } from "./settings.ts";
import type { SeasonSkies } from "./skies.ts";
import { type SwapAnswer, swapCalendar } from "./swap-calendar.ts";
import { aimEnergyOver, tiltLadder, tiltsEvery } from "./tilt-ladder.ts";

/** When to change legs, and what it brings. Only panels on the stand are counted. */
export interface SwapsAnswer {
  readonly days: readonly SeasonDay[];
  /** What the calendar's setting numbers mean: flat first. */
  readonly settings: readonly Setting[];
  /** Wh of each day for each setting. */
  readonly dayWh: readonly Float64Array[];
  readonly calendar: SwapAnswer;
  /** The one tilt, of all that there are, that brings most when it is never changed. */
  readonly forgetTiltDeg: number;
  readonly forgetTiltWh: number;
  readonly cloudIn: boolean;
}

/** How good the calendar has to be. */
export interface SwapsQuestion {
  /** Share of what the legs gain over lying flat that must be kept, 0..1 [0.99]. */
  readonly keep?: number;
  /** Share of that gain that one swap done early or late may cost, 0..1 [0.01]. */
  readonly slack?: number;
}

/**
 * The swap calendar of a plan's stand.
 *
 * @param settings ways to set the stand, flat first [the plan's own]
 * @throws PlanError when no panel is on the stand, or a leg of the plan can't stand
 */
export const swapsAnswer = (
  plan: Plan,
  skies: SeasonSkies,
  { keep, slack }: SwapsQuestion = {},
  settings: readonly Setting[] = settingsOf(plan),
): SwapsAnswer => {
  const units = panelUnits(plan.panels);
  const energy = aimEnergyOver(skies, units);
  const dayWh = settings.map(({ tiltDeg, bearingDeg }) => energy(tiltDeg, bearingDeg));
  const ladder = tiltLadder(skies, units, facingOf(plan), tiltsEvery(1));
  const totals = ladder.dayWh.map((column) => column.reduce((sum, wh) => sum + wh, 0));
  const best = totals.indexOf(Math.max(...totals));
  return {
    days: skies.sun.days,
    settings,
    dayWh,
    calendar: swapCalendar(dayWh, keep, slack),
    forgetTiltDeg: ladder.tiltsDeg[best],
    forgetTiltWh: totals[best],
    cloudIn: ladder.cloudIn,
  };
};
