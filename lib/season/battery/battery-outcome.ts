import type { SeasonDay } from "../../sun/columns.ts";
import { totalWh } from "../light/day-sums.ts";
import type { BatteryDays } from "./battery-run.ts";

/** A day is short when the loads went without at least this much, Wh: less is within what the model can tell. */
export const SHORT_DAY_WH = 1;

/** A day is full by noon when the battery was full no later than this long after solar noon, h. */
const NOON_H = 0.5;

/** What a season came to under one sky. */
export interface SeasonOutcome {
  readonly shortDays: number;
  /** Nights and days in a row without a short day are survived; the longest run of them with too little light. */
  readonly longestBadRunSurvived: number;
  /** Civil date of the first short day; `null` when there was none. */
  readonly firstShort: string | null;
  readonly wantedWh: number;
  readonly usedWh: number;
  readonly shortWh: number;
  readonly offeredWh: number;
  readonly curtailedWh: number;
  readonly lostWh: number;
  /** Lowest state of charge of the season, 0 to 1 of the whole capacity. */
  readonly lowest: number;
  /** Times that the battery was topped up, hours that it took, and what it gave. */
  readonly topUps: number;
  readonly topUpHours: number;
  readonly toppedUpWh: number;
  /** Days on which the cold kept from the battery a watt-hour or more that it would have taken, and all that it kept. */
  readonly blockedDays: number;
  readonly tooColdWh: number;
  /** Days on which the battery was full by noon. */
  readonly fullByNoonDays: number;
  /** The most days in a row on which light did not fill the battery. */
  readonly longestWithoutFull: number;
  readonly residual: number;
}

/**
 * The longest run of bad days that was survived: days that brought less than the loads and losses took, one after
 * another, none of them short. A run that ends in a short day counts up to the day before.
 */
const longestBadRun = ({ offeredWh, wantedWh, lostWh, shortWh }: BatteryDays): number => {
  let longest = 0;
  let run = 0;
  for (let day = 0; day < offeredWh.length; day += 1) {
    const bad = offeredWh[day] < wantedWh[day] + lostWh[day];
    run = bad && shortWh[day] < SHORT_DAY_WH ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
};

/** The most days in a row on which the battery was never full. */
const longestWithoutFull = ({ fullAfterNoonH }: BatteryDays): number => {
  let [longest, run] = [0, 0];
  for (const hour of fullAfterNoonH) {
    run = Number.isNaN(hour) ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
};

/** Sums up a season's days. */
export const outcomeOfDays = (calendar: readonly SeasonDay[], days: BatteryDays): SeasonOutcome => {
  const first = days.shortWh.findIndex((wh) => wh >= SHORT_DAY_WH);
  return {
    shortDays: days.shortWh.reduce((count, wh) => count + (wh >= SHORT_DAY_WH ? 1 : 0), 0),
    longestBadRunSurvived: longestBadRun(days),
    firstShort: first === -1 ? null : calendar[first].date,
    wantedWh: totalWh(days.wantedWh),
    usedWh: totalWh(days.usedWh),
    shortWh: totalWh(days.shortWh),
    offeredWh: totalWh(days.offeredWh),
    curtailedWh: totalWh(days.curtailedWh),
    lostWh: totalWh(days.lostWh),
    lowest: days.lowest.reduce((least, share) => Math.min(least, share), 1),
    topUps: totalWh(days.topUps),
    topUpHours: totalWh(days.topUpHours),
    toppedUpWh: totalWh(days.toppedUpWh),
    blockedDays: days.tooColdWh.reduce((count, wh) => count + (wh >= SHORT_DAY_WH ? 1 : 0), 0),
    tooColdWh: totalWh(days.tooColdWh),
    fullByNoonDays: days.fullAfterNoonH.reduce((count, hour) => count + (hour <= NOON_H ? 1 : 0), 0),
    longestWithoutFull: longestWithoutFull(days),
    residual: days.residual,
  };
};
