/**
 * Seasons that may come: seeded series of days with day-to-day memory and the climate's own means.
 */

import { randomLcg, randomNormal } from "d3";
import type { SeasonDay } from "../../../sun/columns.ts";
import { between } from "../../../units/interpolation.ts";
import type { ClimateUncertainty } from "../climate.ts";
import { PUBLISHED_DAY_MEMORY } from "../day-memory.ts";
import type { CloudSeason } from "./cloud-season.ts";
import { daySpreads, UNCERTAINTY_STEPS } from "./day-spread.ts";
import { firstTemperatures, nextTemperature } from "./temperature-memory.ts";

/** Day-to-day ratios to the clear sky, season after season. */
export interface LightSequences {
  readonly seasons: number;
  readonly days: number;
  /** One value for each day of each season: `ratio[season * days + day]`; NaN on a day without sun. */
  readonly ratio: Float64Array;
}

/** The light of drawn seasons, and the warmth that goes with it. */
export interface SkySequences extends LightSequences {
  /** How far each day's lowest and highest temperature lie from the date's usual, in standard deviations; laid out alike. */
  readonly lowScore: Float64Array;
  readonly highScore: Float64Array;
}

export interface SequenceOptions {
  /** How many seasons [200]. */
  readonly seasons?: number;
  /** Same seed, same skies [1]. */
  readonly seed?: number;
  /** Correlation of a day's normal score with the next [the published one, 0.29]; a climate carries its own. */
  readonly memory?: number;
  /** Told after each day how many of the season's days are drawn. */
  readonly onProgress?: (done: number, days: number) => void;
}

export const DEFAULT_SEASONS = 200;

/** One normal score for each season, moved and scaled so that mean and spread over the seasons are exactly 0 and 1. */
const evenScores = (seasons: number, draw: () => number): Float64Array => {
  const scores = Float64Array.from({ length: seasons }, draw);
  if (seasons < 2) return scores.fill(0);
  const mean = scores.reduce((sum, score) => sum + score, 0) / seasons;
  const deviation = Math.sqrt(scores.reduce((sum, score) => sum + (score - mean) ** 2, 0) / seasons);
  return scores.map((score) => (score - mean) / deviation);
};

/**
 * Standard normal errors of each season's months: one part shared by the year, the rest each month's own.
 * `null` without uncertainty.
 */
const monthErrors = (
  { month: spreads, year }: ClimateUncertainty,
  seasons: number,
  draw: () => number,
): readonly Float64Array[] | null => {
  if (spreads.every((spread) => spread === 0)) return null;
  const shared = evenScores(seasons, draw);
  return spreads.map((spread) => {
    const common = spread > 0 ? Math.min(1, year / spread) : 0;
    const own = evenScores(seasons, draw);
    return own.map((score, season) => common * shared[season] + Math.sqrt(1 - common * common) * score);
  });
};

/**
 * Ratios are kept to a ten-millionth: engines differ in the last bits of their exponentials, and the same seed must give
 * the same bytes in all of them.
 */
const GRAIN = 1e7;

/** Any number far from the seeds that people choose. */
const WARMTH_STREAM = 0x2545f491;

const LEAST_STEP = UNCERTAINTY_STEPS[0];

/** The column of an uncertain day's slices for an error between two steps; beyond the outer steps, the outer one. */
const betweenSteps = (columns: readonly Float64Array[], slice: number, error: number): number => {
  const at = Math.min(columns.length - 1, Math.max(0, error - LEAST_STEP));
  const lower = Math.min(columns.length - 2, Math.floor(at));
  const share = at - lower;
  return between(columns[lower][slice], columns[lower + 1][slice], share);
};

/**
 * Draws the skies of many seasons.
 *
 * Normal scores follow a first-order autoregression from day to day (the model of Graham et al. 1988). On each day the
 * seasons are ranked by their score and take, in that order, the equally likely slices of the day's distribution: so
 * over the seasons each day's mean is the climate's, not only nearly so, and one seed serves every setting and panel.
 * Each day's lowest and highest temperature are drawn along with its light, and tied to it (`temperature-memory.ts`).
 * With an uncertain climate each season has a year's and a month's error of its own.
 *
 * @throws RangeError for less than one season, or a memory that is not between -1 and 1
 */
export const skySequences = (
  calendar: readonly SeasonDay[],
  cloud: CloudSeason,
  uncertainty: ClimateUncertainty,
  { seasons = DEFAULT_SEASONS, seed = 1, memory = PUBLISHED_DAY_MEMORY, onProgress }: SequenceOptions = {},
): SkySequences => {
  if (!(Number.isInteger(seasons) && seasons >= 1)) {
    throw new RangeError(`skySequences: expected a whole number of seasons, at least 1, received ${seasons}`);
  }
  if (!(Math.abs(memory) < 1)) {
    throw new RangeError(`skySequences: expected a memory between -1 and 1, received ${memory}`);
  }
  const draw = randomNormal.source(randomLcg(seed))();
  const days = calendar.length;
  const ratio = new Float64Array(seasons * days).fill(Number.NaN);
  const [lowScore, highScore] = [new Float64Array(seasons * days), new Float64Array(seasons * days)];
  const errors = monthErrors(uncertainty, seasons, draw);
  const scores = Float64Array.from({ length: seasons }, draw);
  // The temperatures have draws of their own, so that a seed's light does not hang on them.
  const drawWarmth = randomNormal.source(randomLcg(seed + WARMTH_STREAM))();
  const warmth = firstTemperatures(scores, drawWarmth);
  const order = Uint32Array.from(scores, (_, season) => season);
  const fresh = Math.sqrt(1 - memory ** 2);
  const spreads = daySpreads();
  const columns = Array.from(
    { length: errors === null ? 1 : UNCERTAINTY_STEPS.length },
    () => new Float64Array(seasons),
  );

  for (const [day, { month }] of calendar.entries()) {
    for (let s = 0; s < seasons; s++) {
      if (day > 0) {
        const own = draw();
        nextTemperature(warmth, s, scores[s], own, drawWarmth);
        scores[s] = memory * scores[s] + fresh * own;
      }
      lowScore[s * days + day] = Math.round(warmth.low[s] * GRAIN) / GRAIN;
      highScore[s * days + day] = Math.round(warmth.high[s] * GRAIN) / GRAIN;
    }
    const mean = cloud.days[day];
    if (mean !== null && mean !== undefined) {
      order.sort((a, b) => scores[a] - scores[b]);
      const monthError = errors?.[month - 1];
      if (monthError === undefined) spreads.slices(mean, columns[0]);
      else spreads.slicesByUncertainty(mean, columns);
      for (let slice = 0; slice < seasons; slice++) {
        const season = order[slice];
        const drawn =
          monthError === undefined ? columns[0][slice] : betweenSteps(columns, slice, monthError[season]);
        ratio[season * days + day] = Math.round(drawn * GRAIN) / GRAIN;
      }
    }
    onProgress?.(day + 1, days);
  }
  return { seasons, days, ratio, lowScore, highScore };
};
