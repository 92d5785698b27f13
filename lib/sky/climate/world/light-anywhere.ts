import type { ClimateUncertainty } from "../climate.ts";
import { type MonthSun, monthSuns } from "../month-sun.ts";
import type { ClimateSite, HighSpot, Spot } from "../spot.ts";
import { type ClimateStation, monthlyClearness, type StationSource, type Twelve } from "../station.ts";
import { sunshineShare } from "../sunshine.ts";
import { vapourAnywhere, type Without } from "./air-anywhere.ts";
import type { Asked } from "./asked.ts";
import {
  CLEARNESS,
  MONTH_UNCERTAINTY,
  RADIATION,
  RADIATION_NOISE,
  SUNSHINE,
  TROPICS_YEAR_VARIANCE,
  USUAL_SHARE,
} from "./fitted.ts";
import { fieldAt } from "./grid.ts";
import { type Covariance, type Neighbours, nearestOf, optimalWeights } from "./optimal.ts";

/**
 * Clearness at any coordinates: a satellite-based field, what sunshine tells beyond it, and what radiation stations tell beyond
 * both.
 */

const SUNSHINE_NEIGHBOURS = 16;
const RADIATION_NEIGHBOURS = 12;

/** How a sunshine share moves the logarithm of an ordinary clearness, 0.5. */
const SUNSHINE_PART = CLEARNESS[2] / 0.5;

const MONTHS = Array.from({ length: 12 }, (_, month) => month);

/** Months darker than this above the air (kWh/m2 a day) tell nothing of cloud. */
const LEAST_TOP_KWH_M2 = 0.5;

/** A year's mean of twelve values and what each month differs from it, weighed by the light above the air; NaN is left out. */
const apart = (
  values: Twelve,
  suns: readonly MonthSun[],
): { readonly year: number; readonly month: Twelve } => {
  let [sum, weights] = [0, 0];
  for (const [month, value] of values.entries()) {
    const weight = (suns[month]?.extraterrestrialKWhM2 ?? 0) * (suns[month]?.days ?? 0);
    if (!Number.isFinite(value)) continue;
    sum += weight * value;
    weights += weight;
  }
  const year = weights > 0 ? sum / weights : 0;
  return { year, month: values.map((value) => (Number.isFinite(value) ? value - year : 0)) };
};

const usualShare = (clearness: number, noon: number): number =>
  USUAL_SHARE[0] + USUAL_SHARE[1] * clearness + USUAL_SHARE[2] * noon + USUAL_SHARE[3] * clearness * noon;

const lit = ({ extraterrestrialKWhM2 }: MonthSun): boolean => extraterrestrialKWhM2 >= LEAST_TOP_KWH_M2;

/** Where the sun and the field put a spot. */
const groundOf = (asked: Asked, spot: HighSpot) => ({
  suns: monthSuns(spot.latitudeDeg),
  field: fieldAt(asked.world.clearness, spot),
});

/** Share of sunshine beyond the usual at a station. */
const shareBeyond = (asked: Asked, station: ClimateStation) => {
  const { suns, field } = groundOf(asked, station);
  const { light } = station;
  return apart(
    suns.map((sun, month) =>
      light.kind === "sunshine" && lit(sun)
        ? sunshineShare(light.hours[month] ?? Number.NaN, sun) -
          usualShare(field[month] ?? Number.NaN, sun.noonSine)
        : Number.NaN,
    ),
    suns,
  );
};

/** All of the tropics' numbers up to 15 degrees, none from 30 on. */
const tropicalPart = (latitudeDeg: number): number =>
  1 - Math.min(1, Math.max(0, (Math.abs(latitudeDeg) - 15) / 15));

/** What neighbours tell of a site: the estimate of each month, its variance (year's part and months'), each one's weight. */
interface Told {
  readonly months: Twelve;
  readonly yearVariance: number;
  readonly monthVariance: number;
  readonly weights: Float64Array;
}

const tell = (
  near: Neighbours<unknown>,
  values: readonly { readonly year: number; readonly month: Twelve }[],
  year: Covariance,
  yearNoise: (index: number) => number,
  month: Covariance,
  monthNoise: (index: number) => number,
): Told => {
  const ofYear = optimalWeights(near, year, yearNoise);
  const ofMonth = optimalWeights(near, month, monthNoise);
  let yearly = 0;
  const months = new Array<number>(12).fill(0);
  for (const [index, value] of values.entries()) {
    yearly += ofYear.weights[index] * value.year;
    for (const at of MONTHS) months[at] = (months[at] ?? 0) + ofMonth.weights[index] * (value.month[at] ?? 0);
  }
  return {
    months: months.map((value) => value + yearly),
    yearVariance: ofYear.variance,
    monthVariance: ofMonth.variance,
    weights: ofYear.weights,
  };
};

/** What field and sunshine tell of a site. */
export interface FirstGuess {
  readonly clearness: Twelve;
  /** Variance of the sunshine share's year and months. */
  readonly yearVariance: number;
  readonly monthVariance: number;
  readonly near: Neighbours<ClimateStation>;
  readonly weights: Float64Array;
}

/** A site or a station: with a height, which may be borrowed. */
export type AskedSite = HighSpot & Pick<ClimateSite, "heightBorrowed">;

/** A height that was borrowed from a place does not choose that place. */
const chosenBy = (site: AskedSite): HighSpot =>
  site.heightBorrowed === true
    ? { latitudeDeg: site.latitudeDeg, longitudeDeg: site.longitudeDeg, elevationM: null }
    : site;

/** Clearness from the field, from the sunshine of places near, and from the vapour in the air. */
export const firstGuess = (asked: Asked, site: AskedSite, without: Without): FirstGuess => {
  const { suns, field } = groundOf(asked, site);
  const near = nearestOf(asked.sunshine, chosenBy(site), SUNSHINE_NEIGHBOURS, without);
  const values = near.items.map((station) => shareBeyond(asked, station));
  const part = tropicalPart(site.latitudeDeg);
  const toldBy = ({ year, month }: (typeof SUNSHINE)[keyof typeof SUNSHINE]): Told =>
    tell(
      near,
      values,
      year.covariance,
      () => year.noise,
      month.covariance,
      () => month.noise,
    );
  const [tropics, beyond] = [toldBy(SUNSHINE.tropics), toldBy(SUNSHINE.beyond)];
  const mixed = (of: (told: Told) => number): number => part * of(tropics) + (1 - part) * of(beyond);
  const vapourHPa = vapourAnywhere(asked, site, without);
  return {
    clearness: suns.map((sun, month) => {
      const own = field[month] ?? Number.NaN;
      const share = usualShare(own, sun.noonSine) + mixed(({ months }) => months[month] ?? 0);
      return (
        CLEARNESS[0] +
        CLEARNESS[1] * own +
        CLEARNESS[2] * Math.min(1, Math.max(0, share)) +
        CLEARNESS[3] * sun.noonSine +
        CLEARNESS[4] * (vapourHPa[month] ?? 0)
      );
    }),
    yearVariance: mixed(({ yearVariance }) => yearVariance),
    monthVariance: mixed(({ monthVariance }) => monthVariance),
    near,
    weights: tropics.weights.map(
      (weight, index) => part * weight + (1 - part) * (beyond.weights[index] ?? 0),
    ),
  };
};

/** A station's part in an estimate: how much of what it says beyond the field arrives at the site. */
export interface Influence {
  readonly station: ClimateStation;
  readonly distanceKm: number;
  readonly weight: number;
}

/** Clearness of twelve months at a site, and how far it may be off. */
export interface LightAnywhere {
  readonly clearness: Twelve;
  /** One standard deviation of what a station there would tell of a month and of a year, as a share of the light. */
  readonly uncertainty: ClimateUncertainty;
  /** Who spoke, in the order of weight. */
  readonly influences: readonly Influence[];
}

const noiseOf = (source: StationSource) => RADIATION_NOISE[source === "sunshine" ? "own table" : source];

/** A station's own error, in the mean of those that speak: a typical month is one month out of many years. */
const ownError = (heard: readonly Influence[]): { readonly year: number; readonly month: number } => {
  let [year, month, weights] = [0, 0, 0];
  for (const { station, weight } of heard) {
    const noise = noiseOf(station.source);
    const part = Math.max(0, weight);
    year += part * noise.year;
    month += part * noise.month;
    weights += part;
  }
  return weights > 0 ? { year: year / weights, month: month / weights } : { year: 0, month: 0 };
};

/** What estimate and stations leave open: by how much a station at the site would differ, a month and a year of it. */
const uncertaintyOf = (
  { latitudeDeg }: Spot,
  heard: readonly Influence[],
  variance: { readonly year: number; readonly month: number; readonly open: number },
): ClimateUncertainty => {
  const own = ownError(heard);
  const tropics = tropicalPart(latitudeDeg) * variance.open * TROPICS_YEAR_VARIANCE;
  const year = variance.year + own.year;
  const month = Math.sqrt(year + variance.month + own.month);
  return {
    month: monthSuns(latitudeDeg).map(({ noonSine }) =>
      Math.hypot(
        month * Math.exp(MONTH_UNCERTAINTY[0] - MONTH_UNCERTAINTY[1] * noonSine),
        Math.sqrt(tropics),
      ),
    ),
    year: Math.sqrt(year + tropics),
  };
};

/** First guesses at radiation stations, kept: neighbouring sites ask the same ones. */
const kept = new WeakMap<Asked, Map<ClimateStation, Twelve>>();

const guessAt = (asked: Asked, station: ClimateStation, without: Without): Twelve => {
  const own = kept.get(asked) ?? new Map<ClimateStation, Twelve>();
  kept.set(asked, own);
  const before = own.get(station);
  if (before !== undefined) return before;
  const { clearness } = firstGuess(asked, station, without);
  own.set(station, clearness);
  return clearness;
};

/** Log of what a radiation station measures over what field and sunshine make of its place. */
const beyondGuess = (asked: Asked, station: ClimateStation) => {
  const suns = monthSuns(station.latitudeDeg);
  const own = monthlyClearness(station.light, station.latitudeDeg);
  const guess = guessAt(asked, station, () => false);
  return apart(
    suns.map((sun, month) =>
      lit(sun) ? Math.log((own[month] ?? Number.NaN) / (guess[month] ?? Number.NaN)) : Number.NaN,
    ),
    suns,
  );
};

/**
 * The clearness of twelve months anywhere.
 *
 * A satellite-based field gives the first guess; sunshine recorders near, and the vapour in the air, better it; radiation
 * stations tell what is still missed. Who is asked how much follows from covariances fitted by leaving stations out.
 *
 * @param without stations that are not asked [none]
 */
export const lightAnywhere = (
  asked: Asked,
  site: AskedSite,
  without: Without = () => false,
): LightAnywhere => {
  const guess = firstGuess(asked, site, without);
  const near = nearestOf(asked.radiation, chosenBy(site), RADIATION_NEIGHBOURS, without);
  const noises = near.items.map(({ source }) => noiseOf(source));
  const told = tell(
    near,
    near.items.map((station) => beyondGuess(asked, station)),
    RADIATION.year,
    (index) => noises[index]?.year ?? 0,
    RADIATION.month,
    (index) => noises[index]?.month ?? 0,
  );
  const heard = near.items.map((station, index) => ({
    station,
    distanceKm: near.distanceKm[index],
    weight: told.weights[index],
  }));
  const seen = guess.near.items.map((station, index) => ({
    station,
    distanceKm: guess.near.distanceKm[index],
    weight: SUNSHINE_PART * guess.weights[index],
  }));
  return {
    clearness: guess.clearness.map((value, month) => value * Math.exp(told.months[month] ?? 0)),
    uncertainty: uncertaintyOf(site, heard, {
      year: told.yearVariance + SUNSHINE_PART ** 2 * guess.yearVariance,
      month: told.monthVariance + SUNSHINE_PART ** 2 * guess.monthVariance,
      // What radiation stations leave open of what there is to know of a year.
      open: told.yearVariance / (RADIATION.year.near + RADIATION.year.far),
    }),
    influences: [...heard, ...seen].toSorted((a, b) => b.weight - a.weight),
  };
};
