/**
 * Cloudy skies for the season's loop: equally likely days, each as full sky columns.
 */
import type { SeasonDay, SunColumns } from "../../../sun/columns.ts";
import { sunsetHourAngleDeg } from "../../../sun/hour-angle.ts";
import { spencerDeclinationDeg } from "../../../sun/orbit.ts";
import type { SkyColumns } from "../../columns.ts";
import { erbsDaily, erbsHourly } from "../../diffuse-share/erbs.ts";
import type { CloudSeason } from "./cloud-season.ts";
import { daySpreads } from "./day-spread.ts";

/** One of several equally likely skies: every day of it stands at the same place among the days that may come. */
export interface ClimateSky {
  /** Share of this sky; the shares sum to 1. */
  readonly weight: number;
  readonly sky: SkyColumns;
  /** Each day's light as a ratio to the clear day's; NaN on a day without sun. */
  readonly ratio: Float64Array;
}

/**
 * With fifteen slices p10, p50 and p90 each fall on the middle of one sky. Against five times as many, totals differ by
 * less than 0.05 % and a day's p10 by less than 0.4 % at the six typical years.
 */
export const DEFAULT_SLICES = 15;

/**
 * Twilight can be brighter than the clear-sky model has it, but not in the beam: at most this part of the clear beam. And
 * from here to the next ratio such a day's beam goes over to what the hourly correlation says of its own clearness: its
 * ratio to a clear day that is too dark tells nothing of cloud (Barrow's November, 1.16, has 0.24 of the clear beam).
 */
const MOST_BEAM_RATIO = 1.05;
const TWILIGHT_RATIO = 1.15;

/**
 * Splits one day's light, `ratio` times the clear day's, into beam and diffuse.
 *
 * Beam over clear-sky beam is the mean of what the hourly and the daily correlation of Erbs, Klein & Duffie 1982 make of
 * it, each taken relative to what it says of the clear sky: so a clear day is the clear-sky day itself. Alone, the
 * hourly one reads too little beam on broken days (it does not see the hours scatter about the day's course), the
 * daily one too much in summer; chosen by the tilted light of six stations and of a 30-year manual.
 *
 * Tried in its place, all from memory and none better on the whole: hours scattered about the day's course by Graham &
 * Hollands 1990 or Aguiar & Collares-Pereira 1992 (cloudy coasts 2 to 3 % too bright a year); Ridley, Boland & Lauret
 * 2010, alone (1 % too dark) or with that scatter (Bremerhaven 1.5 %, Aachen 1.6 % too bright); light sent back and forth
 * between snow and cloud taken out first, Hay 1979 (Barrow's October a fifth nearer, its spring 27 to 40 % too dark).
 */
const splitDay = (
  sun: SunColumns,
  clear: SkyColumns,
  { first, end }: SeasonDay,
  ratio: number,
  dayBeamRatio: number,
  out: SkyColumns,
): void => {
  const { up } = sun;
  const most = Math.min(MOST_BEAM_RATIO, Math.max(1, ratio));
  const twilight = Math.min(1, Math.max(0, (ratio - MOST_BEAM_RATIO) / (TWILIGHT_RATIO - MOST_BEAM_RATIO)));
  for (let row = first; row < end; row++) {
    const clearGlobal = clear.global[row];
    // A midpoint on the horizon itself: columns start out as zeros.
    if (clearGlobal <= 0) continue;
    const clearness = clearGlobal / (clear.extraterrestrial[row] * up[row]);
    const beamShare = 1 - erbsHourly(ratio * clearness);
    const hourBeamRatio = (ratio * beamShare) / (1 - erbsHourly(clearness));
    const global = ratio * clearGlobal;
    const share = Math.min(most, 0.5 * (hourBeamRatio + dayBeamRatio));
    const relative = Math.min(share * clear.beamNormal[row], global / up[row]);
    const own = (global * beamShare) / up[row];
    const beam = own < relative ? relative + twilight * (own - relative) : relative;
    out.beamNormal[row] = beam;
    out.global[row] = global;
    out.diffuse[row] = global - beam * up[row];
  }
};

/** New columns for the light; what surrounds it is that of the clear sky. */
const sameSurroundings = (clear: SkyColumns): SkyColumns => ({
  ...clear,
  beamNormal: new Float64Array(clear.length),
  diffuse: new Float64Array(clear.length),
  global: new Float64Array(clear.length),
});

/** Lays one day's light, `ratio` times the clear day's, into a sky; a day without sun is left dark. */
const layDay = (
  sun: SunColumns,
  clear: SkyColumns,
  { latitudeDeg, days }: CloudSeason,
  index: number,
  ratio: number,
  out: SkyColumns,
): void => {
  const day = sun.days[index];
  const mean = days[index];
  if (mean === null || mean === undefined) return;
  const sunset = sunsetHourAngleDeg(latitudeDeg, spencerDeclinationDeg(day.dayOfYear));
  const clearBeamShare = 1 - erbsDaily(mean.clearClearness, sunset);
  const beamShare = 1 - erbsDaily(ratio * mean.clearClearness, sunset);
  splitDay(sun, clear, day, ratio, (ratio * beamShare) / clearBeamShare, out);
};

/**
 * The sky of a season whose every day has the same ratio of its light to the clear day's: a rung between which the
 * days of drawn seasons lie.
 *
 * @param ratio 0 or more; 1 is the clear sky itself
 */
export const skyAtRatio = (
  sun: SunColumns,
  clear: SkyColumns,
  cloud: CloudSeason,
  ratio: number,
): SkyColumns => {
  const sky = sameSurroundings(clear);
  for (let index = 0; index < sun.days.length; index++) layDay(sun, clear, cloud, index, ratio, sky);
  return sky;
};

/**
 * Equally likely skies of a season under a climate, darkest first. Their mean light is the climate's, exactly; the mean
 * of what a panel makes of them is the expected day, and their spread its band.
 *
 * The course within a day is that of the clear sky, the split by correlation (see `splitDay`). Uncertainty about the climate
 * widens the spread and leaves the mean.
 *
 * @param slices how many [15]
 */
export const climateSkies = (
  sun: SunColumns,
  clear: SkyColumns,
  cloud: CloudSeason,
  slices: number = DEFAULT_SLICES,
): readonly ClimateSky[] => {
  const skies = Array.from({ length: slices }, () => ({
    weight: 1 / slices,
    sky: sameSurroundings(clear),
    ratio: new Float64Array(sun.days.length).fill(Number.NaN),
  }));
  const spreads = daySpreads();
  const ratios = new Float64Array(slices);
  for (let index = 0; index < sun.days.length; index++) {
    const mean = cloud.days[index];
    if (mean === null || mean === undefined) continue;
    spreads.slices(mean, ratios);
    for (const [slice, { sky, ratio }] of skies.entries()) {
      ratio[index] = ratios[slice];
      layDay(sun, clear, cloud, index, ratios[slice], sky);
    }
  }
  return skies;
};
