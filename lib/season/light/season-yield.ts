import type { SeasonDay } from "../../sun/columns.ts";
import type { Aim } from "../../units/angle.ts";
import { bandOfSkies, type DayBand, meanOfSkies } from "./bands.ts";
import { type DayEnergies, dayEnergiesOver } from "./day-energy.ts";
import { totalWh } from "./day-sums.ts";
import type { PanelUnit } from "./panel-unit.ts";
import type { Setting } from "./settings.ts";
import type { ReadySky, SeasonSkies } from "./skies.ts";

/** What one setting of the stand brings in: all panels together, one value a day, Wh. */
export interface SettingYield {
  readonly setting: Setting;
  /** Under a clear sky: an upper bound that few days reach. */
  readonly clearWh: Float64Array;
  /** With cloud in it; `null` when only the clear sky is known. */
  readonly expectedWh: Float64Array | null;
  /** The spread between skies; `null` when there are too few to tell. */
  readonly band: DayBand | null;
  /** Wh of each day under each of the expected skies, in their order. */
  readonly underEachSky: readonly Float64Array[];
}

/** A season of watt-hours: days x settings. */
export interface SeasonYield {
  readonly days: readonly SeasonDay[];
  readonly settings: readonly SettingYield[];
  /** For each day, the index of the setting that brings most: by the expected sky where one is known. */
  readonly best: Uint8Array;
  /** Shares of the expected skies, in the order of `underEachSky`. */
  readonly weights: readonly number[];
}

/** What a setting is judged by: what is to be expected, or the clear-sky bound where nothing else is known. */
export const judgedWh = ({ expectedWh, clearWh }: SettingYield): Float64Array => expectedWh ?? clearWh;

/** The settings' day-by-day winner; of equals, the first. */
const bestOf = (days: number, judged: readonly Float64Array[]): Uint8Array =>
  Uint8Array.from({ length: days }, (_, day) => {
    let best = 0;
    for (let setting = 1; setting < judged.length; setting += 1) {
      if (judged[setting][day] > judged[best][day]) best = setting;
    }
    return best;
  });

/** Wh a day of every panel: those on the stand at an aim, fixed ones at their own. */
const harvest = (
  dayEnergies: DayEnergies,
  sky: ReadySky,
  units: readonly PanelUnit[],
  aim: Aim,
  days: number,
): Float64Array => {
  const out = new Float64Array(days);
  for (const unit of units) dayEnergies(sky, unit, unit.fixedAim ?? aim, out);
  return out;
};

/**
 * What each setting brings in on each day of a season.
 *
 * @param skies the season's skies, ready for any aim
 * @param units the panels, on the stand or fixed
 * @param settings ways to set the stand, at least one
 * @throws RangeError without a setting
 */
export const seasonYield = (
  skies: SeasonSkies,
  units: readonly PanelUnit[],
  settings: readonly Setting[],
): SeasonYield => {
  if (settings.length === 0)
    throw new RangeError("seasonYield: expected at least one setting, received none");
  const { sun, clear, expected } = skies;
  const { days } = sun;
  const dayEnergies = dayEnergiesOver(sun);
  const weights = expected.map(({ weight }) => weight);
  const yields = settings.map((setting): SettingYield => {
    const underEachSky = expected.map((sky) => harvest(dayEnergies, sky, units, setting, days.length));
    return {
      setting,
      clearWh: harvest(dayEnergies, clear, units, setting, days.length),
      expectedWh: underEachSky.length === 0 ? null : meanOfSkies(underEachSky, weights),
      band: bandOfSkies(underEachSky, weights),
      underEachSky,
    };
  });
  return { days, settings: yields, best: bestOf(days.length, yields.map(judgedWh)), weights };
};

/** Wh of a season in which every day's best setting is used. */
export const bestEachDayWh = ({ best, settings }: SeasonYield): number =>
  best.reduce((sum, setting, day) => sum + judgedWh(settings[setting])[day], 0);

/** The index of the setting that brings most over the whole season when it is never changed; of equals, the first. */
export const bestSingle = ({ settings }: SeasonYield): number => {
  const totals = settings.map((setting) => totalWh(judgedWh(setting)));
  return totals.indexOf(Math.max(...totals));
};
