/**
 * Whole seasons under drawn skies: every setting and every number of panels judged under the same ones.
 */
import { quantileSorted } from "d3";
import { type LightSequences, type SkySequences, skySequences } from "../../sky/climate/days/sequences.ts";
import type { SeasonCloud } from "./season-cloud.ts";
import type { SeasonYield } from "./season-yield.ts";

/** The spread of a season's total, Wh: nine seasons in ten bring more than p10, one more than p90. */
export interface TotalBand {
  readonly p10Wh: number;
  readonly p50Wh: number;
  readonly p90Wh: number;
}

/**
 * A day's watt-hours against its light, straight from one of the equally likely skies to the next and on beyond the
 * outer ones; never below 0.
 *
 * @param ratios of the skies to the clear day, ascending
 */
const harvestAt = (ratio: number, ratios: Float64Array, dayWh: Float64Array): number => {
  const last = ratios.length - 1;
  let upper = 1;
  while (upper < last && ratios[upper] < ratio) upper++;
  const reach = ratios[upper] - ratios[upper - 1];
  // Skies that are all alike: the day's watt-hours go with its light.
  if (!(reach > 0)) return ratios[last] > 0 ? dayWh[last] * (ratio / ratios[last]) : dayWh[last];
  const rise = (dayWh[upper] - dayWh[upper - 1]) / reach;
  return Math.max(0, dayWh[upper - 1] + (ratio - ratios[upper - 1]) * rise);
};

/** The skies of many seasons, drawn from a plan's climate with its own seed. */
export const drawSeasons = (
  { days: calendar }: Pick<SeasonYield, "days">,
  { days, chosen, seasons, seed }: SeasonCloud,
  onProgress?: (done: number, days: number) => void,
): SkySequences =>
  skySequences(calendar, days, chosen.climate.uncertainty, {
    seasons,
    seed,
    memory: chosen.climate.dayMemory,
    ...(onProgress === undefined ? {} : { onProgress }),
  });

/**
 * What one setting brings in on every day of every drawn season, Wh: `[season * days + day]`.
 *
 * Each day's harvest is read off its course against the day's light, which the equally likely skies have traced; so a
 * season costs a look-up a day, not a run through sky, plane and panel.
 *
 * @param underEachSky the setting's days under each of `cloud.skies`, as `seasonYield` leaves them
 */
export const sequenceDays = (
  underEachSky: readonly Float64Array[],
  { skies }: Pick<SeasonCloud, "skies">,
  { seasons, days, ratio }: LightSequences,
): Float64Array => {
  const out = new Float64Array(seasons * days);
  const ratios = new Float64Array(skies.length);
  const dayWh = new Float64Array(skies.length);
  for (let day = 0; day < days; day++) {
    for (const [index, sky] of skies.entries()) {
      ratios[index] = sky.ratio[day];
      dayWh[index] = underEachSky[index][day];
    }
    for (let at = day; at < out.length; at += days) {
      // A day without sun has no ratio and brings nothing.
      out[at] = Number.isNaN(ratio[at]) ? 0 : harvestAt(ratio[at], ratios, dayWh);
    }
  }
  return out;
};

/** Each season's total of days laid out as `sequenceDays` does, Wh. */
export const seasonTotals = (dayWh: Float64Array, seasons: number): Float64Array => {
  const days = dayWh.length / seasons;
  return Float64Array.from({ length: seasons }, (_, season) => {
    let sum = 0;
    for (let day = 0; day < days; day++) sum += dayWh[season * days + day];
    return sum;
  });
};

/** p10, p50 and p90 of the seasons' totals. */
export const totalBand = (totals: Float64Array): TotalBand => {
  const sorted = Array.from(totals).sort((a, b) => a - b);
  const point = (share: number): number => quantileSorted(sorted, share) ?? Number.NaN;
  return { p10Wh: point(0.1), p50Wh: point(0.5), p90Wh: point(0.9) };
};

/**
 * The band of each setting's season total under the same drawn seasons, in the order of the settings.
 *
 * @param yields of a season whose expected skies are those of `cloud`
 * @throws RangeError when they are not
 */
export const seasonBands = (
  yields: SeasonYield,
  cloud: SeasonCloud,
  onProgress?: (done: number, days: number) => void,
): readonly TotalBand[] => {
  if (yields.weights.length !== cloud.skies.length) {
    throw new RangeError(
      `seasonBands: expected yields under ${cloud.skies.length} skies, received ${yields.weights.length}`,
    );
  }
  const sequences = drawSeasons(yields, cloud, onProgress);
  return yields.settings.map(({ underEachSky }) =>
    totalBand(seasonTotals(sequenceDays(underEachSky, cloud, sequences), sequences.seasons)),
  );
};
