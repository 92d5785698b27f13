import { clockMinutes } from "../../plan/clock.ts";
import type { Plan } from "../../plan/plan.ts";
import { sunVector } from "../../sun/position.ts";
import { panelsOnStand } from "../legs/tilt-ladder.ts";
import { totalWh } from "../light/day-sums.ts";
import type { PanelUnit } from "../light/panel-unit.ts";
import { type Period, periodsOf } from "../light/periods.ts";
import type { Setting } from "../light/settings.ts";
import type { SeasonSkies } from "../light/skies.ts";
import { aimEnergies, dayBins, joinedEnergies } from "./aim-energies.ts";
import { bestSplitDays, type SplitDay } from "./aim-stays.ts";
import { candidateAims } from "./candidate-aims.ts";
import { meanClock, noonClocks } from "./walk-clock.ts";

/** An aim held through a part of the day. */
export interface AimedPart {
  /** The leg and the bearing. */
  readonly setting: Setting;
  /** Minutes after solar noon at which it begins and ends; negative in the morning. The day runs from -720 to 720. */
  readonly fromMinutes: number;
  readonly toMinutes: number;
}

/** A day's aims, the same on every day of a period, and what they bring. */
export interface DayRoutine {
  readonly parts: readonly AimedPart[];
  /** Mean of a day, Wh: expected where a sky with cloud is known, else clear. */
  readonly dayWh: number;
  /** Mean of a day under a clear sky, Wh. */
  readonly clearDayWh: number;
}

/** What re-aiming brings in a period: the whole season, or one calendar month. */
export interface ReaimPeriod {
  readonly period: Period;
  /** The best leg facing the noon sun all day: the lower end. */
  readonly noon: DayRoutine;
  /** The best routine with at most 1, 2 ... aims a day; where one more brings nothing, the one before again. */
  readonly routines: readonly DayRoutine[];
  /** Wh a day for a panel that always faces the sun, or lies flatter where cloud makes that better: the upper end. */
  readonly limitDayWh: number;
}

/** The answer to how often to turn the panel. */
export interface Reaim {
  /** Whether cloud is in the figures; if not they are an upper bound. */
  readonly cloudIn: boolean;
  /** One routine for the whole season first, then one for every month. */
  readonly periods: readonly ReaimPeriod[];
}

const MIDNIGHT_TO_NOON_MINUTES = 720;

/** The bearing, among true north and south, that the noon sun of a period's middle day is nearer to. */
const noonBearing = ({ sun }: SeasonSkies, { site }: Pick<Plan, "site">, { first, end }: Period): number => {
  const { noonMs } = sun.days[Math.floor((first + end - 1) / 2)];
  return sunVector(noonMs, site.latitudeDeg, site.longitudeDeg).north > 0 ? 0 : 180;
};

/** Wh a day of the best aim among some, held all day. */
const bestHeld = (binWh: readonly Float64Array[], among: readonly number[]): SplitDay => {
  const bins = binWh[0].length;
  return among
    .map((aim) => ({ stays: [{ aim, from: 0, to: bins }], energyWh: totalWh(binWh[aim]) }))
    .reduce((best, day) => (day.energyWh > best.energyWh ? day : best));
};

/**
 * The best aims of a day, from the legs at hand and free bearings, by month and for the whole season: which leg, facing
 * where, from when to when, and what each further walk out brings.
 *
 * Exact on its grid: every leg at every bearing of the plan's step, changed at any ten minutes between the plan's
 * earliest and latest clock time. Only panels on the stand count.
 *
 * @param skies the season's skies; judged by the expected ones where there are any
 * @param onProgress told how much is done, 0 to 1
 * @throws PlanError when no panel is on the stand, or a leg can't stand
 */
export const reaim = (
  plan: Pick<Plan, "site" | "stand" | "aiming">,
  skies: SeasonSkies,
  units: readonly PanelUnit[],
  onProgress: (share: number) => void = () => {},
): Reaim => {
  const { aiming, site } = plan;
  const moved = panelsOnStand(units);
  const aims = candidateAims(plan, aiming.bearingStepDeg);
  const { sun, clear, expected } = skies;
  const cloudIn = expected.length > 0;
  const bins = dayBins(sun.stepMinutes);
  const [season, ...months] = periodsOf(sun.days);
  const ofMonths = aimEnergies(sun, cloudIn ? expected : [clear], moved, aims, months, onProgress);
  const all = [joinedEnergies(season.name, ofMonths), ...ofMonths];

  const clocks = noonClocks(sun.days, site.timeZone);
  const [earliest, latest] = [clockMinutes(aiming.earliest), clockMinutes(aiming.latest)];
  const chosen = all.map(({ period, binWh }) => {
    const noonAt = meanClock(clocks, period);
    const mayChange = (edge: number): boolean => {
      const clock = noonAt - MIDNIGHT_TO_NOON_MINUTES + edge * bins.minutes;
      return clock >= earliest && clock <= latest;
    };
    const facingNoon = noonBearing(skies, plan, period);
    const atNoon = aims.flatMap(({ bearingDeg, legMm }, index) =>
      legMm === null || bearingDeg === facingNoon ? [index] : [],
    );
    return {
      noon: bestHeld(binWh, atNoon),
      days: bestSplitDays(binWh, aiming.mostAims, mayChange),
    };
  });

  const clearWh = cloudIn
    ? clearLookup(
        skies,
        moved,
        aims,
        chosen.flatMap(({ noon, days }) => [noon, ...days]),
      )
    : null;
  const routineOf = (day: SplitDay, index: number): DayRoutine => ({
    parts: day.stays.map(({ aim, from, to }) => ({
      setting: aims[aim],
      fromMinutes: from * bins.minutes - MIDNIGHT_TO_NOON_MINUTES,
      toMinutes: to * bins.minutes - MIDNIGHT_TO_NOON_MINUTES,
    })),
    dayWh: day.energyWh,
    clearDayWh: clearWh === null ? day.energyWh : clearWh(day, index),
  });
  return {
    cloudIn,
    periods: all.map(({ period, limitWh }, index) => ({
      period,
      noon: routineOf(chosen[index].noon, index),
      routines: chosen[index].days.map((day) => routineOf(day, index)),
      limitDayWh: limitWh,
    })),
  };
};

/** Makes the function that tells what a split day brings under a clear sky, for the aims that some days use. */
const clearLookup = (
  { sun, clear }: SeasonSkies,
  units: readonly PanelUnit[],
  aims: readonly Setting[],
  days: readonly SplitDay[],
): ((day: SplitDay, period: number) => number) => {
  const used = [...new Set(days.flatMap(({ stays }) => stays.map(({ aim }) => aim)))];
  const placeOf = new Map(used.map((aim, place) => [aim, place]));
  const [season, ...months] = periodsOf(sun.days);
  const ofMonths = aimEnergies(
    sun,
    [clear],
    units,
    used.map((aim) => aims[aim]),
    months,
  );
  const all = [joinedEnergies(season.name, ofMonths), ...ofMonths];
  return ({ stays }, period) =>
    stays.reduce((sum, { aim, from, to }) => {
      const wh = all[period].binWh[placeOf.get(aim) ?? 0];
      return sum + totalWh(wh.subarray(from, to));
    }, 0);
};
