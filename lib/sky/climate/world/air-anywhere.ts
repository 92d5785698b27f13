import { dailyRangeK, MEAN_SHARE } from "../day-temperature.ts";
import type { HighSpot } from "../spot.ts";
import type { ClimateStation, Twelve } from "../station.ts";
import { type Asked, isWithout, meanOf, spanOf, windOf } from "./asked.ts";
import { AIR_NOISE, MEAN_AIR, MOIST_AIR, SPAN_AIR, WIND_AIR, WIND_OF_GRID } from "./fitted.ts";
import { fieldAt } from "./grid.ts";
import { saturationHPa } from "./humidity.ts";
import { nearestOf, optimalWeights } from "./optimal.ts";
/**
 * Air at any coordinates: what places near say beyond a world grid, brought to the site's height.
 */

/** Twelve months of air at a site. */
export interface AirAnywhere {
  /** Means of the days' lowest and highest, degC. */
  readonly lowC: Twelve;
  readonly highC: Twelve;
  /** Mean vapour pressure, hPa. */
  readonly vapourHPa: Twelve;
  /** One standard deviation of a month's mean temperature, K. */
  readonly uncertaintyK: number;
}

/** ISO 2533 standard atmosphere: the air cools by 6.5 K for each kilometre up. */
export const LAPSE_K_PER_M = 0.0065;
/** Relative humidity where nothing near tells it: that of a maritime month (common knowledge, no source). */
const USUAL_HUMIDITY = 0.7;
const NEIGHBOURS = 12;

/** What stations must not be asked: those that are judged. */
export type Without = (station: ClimateStation) => boolean;

const NOBODY: Without = () => false;

/** Adds to a first guess what neighbours say beyond theirs. */
const corrected = (guess: Twelve, weights: Float64Array, residuals: readonly Twelve[]): Twelve =>
  guess.map((value, month) => {
    let sum = value;
    for (const [index, residual] of residuals.entries()) {
      const own = residual[month] ?? Number.NaN;
      if (Number.isFinite(own)) sum += weights[index] * own;
    }
    return sum;
  });

/** Mean air at the sea under each place, for the lapse of the standard atmosphere: its difference from the grid is smooth. */
const meanAir = (asked: Asked, site: HighSpot, without: Without) => {
  const near = nearestOf(asked.mean, site, NEIGHBOURS, isWithout(without));
  const { weights, variance } = optimalWeights(near, MEAN_AIR, () => AIR_NOISE.mean);
  const residuals = near.items.map((item) => {
    const grid = fieldAt(asked.world.airC, item);
    return meanOf(item).map(
      (value, month) => value + LAPSE_K_PER_M * (item.elevationM ?? 0) - (grid[month] ?? Number.NaN),
    );
  });
  const atSea = corrected(fieldAt(asked.world.airC, site), weights, residuals);
  return {
    meanC: atSea.map((value) => value - LAPSE_K_PER_M * (site.elevationM ?? 0)),
    uncertaintyK: Math.sqrt(variance),
  };
};

const span = (asked: Asked, site: HighSpot, without: Without): Twelve => {
  const near = nearestOf(asked.span, site, NEIGHBOURS, isWithout(without));
  const { weights } = optimalWeights(near, SPAN_AIR, () => AIR_NOISE.span);
  const usual = (spot: HighSpot): Twelve => fieldAt(asked.world.clearness, spot).map(dailyRangeK);
  const residuals = near.items.map((item) => {
    const guess = usual(item);
    return spanOf(item).map((value, month) => value - (guess[month] ?? Number.NaN));
  });
  return corrected(usual(site), weights, residuals).map((value) => Math.max(2, value));
};

/** Vapour by the relative humidity of the mean air, whose logarithm differs little from place to place. */
const vapour = (asked: Asked, site: HighSpot, meanC: Twelve): Twelve => {
  const near = nearestOf(asked.moist, site, NEIGHBOURS);
  const { weights } = optimalWeights(near, MOIST_AIR, () => AIR_NOISE.moist);
  const usual = Math.log(USUAL_HUMIDITY);
  const residuals = near.items.map((place) => {
    const own = meanOf(place);
    return (place.dewC ?? []).map(
      (dew, month) => Math.log(saturationHPa(dew) / saturationHPa(own[month] ?? Number.NaN)) - usual,
    );
  });
  const logs = corrected(
    meanC.map(() => usual),
    weights,
    residuals,
  );
  return meanC.map((value, month) => saturationHPa(value) * Math.min(1, Math.exp(logs[month] ?? usual)));
};

/** Mean vapour pressure of twelve months at a site, hPa. */
export const vapourAnywhere = (asked: Asked, site: HighSpot, without: Without = NOBODY): Twelve =>
  vapour(asked, site, meanAir(asked, site, without).meanC);

/**
 * Twelve months of air at a site.
 *
 * Temperature, its daily span and the relative humidity are interpolated (`optimalWeights`); between heights the standard
 * atmosphere's 6.5 K a kilometre holds.
 *
 * @param without stations that are not asked [none]
 */
export const airAnywhere = (asked: Asked, site: HighSpot, without: Without = NOBODY): AirAnywhere => {
  const { meanC, uncertaintyK } = meanAir(asked, site, without);
  const spans = span(asked, site, without);
  return {
    lowC: meanC.map((value, month) => value - MEAN_SHARE * (spans[month] ?? Number.NaN)),
    highC: meanC.map((value, month) => value + (1 - MEAN_SHARE) * (spans[month] ?? Number.NaN)),
    vapourHPa: vapour(asked, site, meanC),
    uncertaintyK,
  };
};

/**
 * Mean wind of twelve months at a site, m/s at 10 m: the grid's, times what stations near make of theirs.
 *
 * @param without stations that are not asked [none]
 */
export const windAnywhere = (asked: Asked, site: HighSpot, without: Without = NOBODY): Twelve => {
  const near = nearestOf(asked.wind, site, NEIGHBOURS, without);
  const { weights } = optimalWeights(near, WIND_AIR, () => AIR_NOISE.wind);
  const usual = (spot: HighSpot): Twelve =>
    fieldAt(asked.world.windMs, spot).map((value) => Math.log(WIND_OF_GRID * Math.max(1, value)));
  const residuals = near.items.map((item) => {
    const guess = usual(item);
    return windOf(item).map((value, month) => Math.log(Math.max(0.5, value)) - (guess[month] ?? Number.NaN));
  });
  return corrected(usual(site), weights, residuals).map(Math.exp);
};
