import type { SeasonDay } from "../../sun/columns.ts";
import { totalWh } from "../light/day-sums.ts";
import { type Setting, settingsOf } from "../light/settings.ts";
import type { StandSeason } from "./stand-season.ts";
import { type SwapAnswer, swapCalendar } from "./swap-calendar.ts";
import { leastGainOf } from "./worthwhile.ts";

/** When to change legs, and what it brings. Only panels on the stand are counted. */
export interface SwapsAnswer {
  readonly days: readonly SeasonDay[];
  /** What the calendar's setting numbers mean: flat first. */
  readonly settings: readonly Setting[];
  /** Wh of each day for each setting. */
  readonly dayWh: readonly Float64Array[];
  readonly calendar: SwapAnswer;
  /** Share of the season that changing has to bring over never changing to be recommended, 0..1. */
  readonly leastGain: number;
  /** The one tilt, of all that there are, that brings most when it is never changed. */
  readonly forgetTiltDeg: number;
  /** The bearing it faces then, degrees from true north. */
  readonly forgetBearingDeg: number;
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
 * @throws PlanError when a leg of the plan can't stand
 */
export const swapsAnswer = (
  { plan, days, energy, ladder }: StandSeason,
  { keep, slack }: SwapsQuestion = {},
  settings: readonly Setting[] = settingsOf(plan),
): SwapsAnswer => {
  const dayWh = settings.map(({ tiltDeg, bearingDeg }) => energy(tiltDeg, bearingDeg));
  const totals = ladder.dayWh.map(totalWh);
  const best = totals.indexOf(Math.max(...totals));
  return {
    days,
    settings,
    dayWh,
    leastGain: leastGainOf(plan),
    calendar: swapCalendar(dayWh, keep, slack),
    forgetBearingDeg: ladder.bearingDeg,
    forgetTiltDeg: ladder.tiltsDeg[best],
    forgetTiltWh: totals[best],
    cloudIn: ladder.cloudIn,
  };
};
