/**
 * The days that a date may bring: how a day's light, as a ratio to the clear day, scatters about its mean.
 */
import { ATOMS, addSpread, sliceMeans } from "./clearness-spread.ts";

/** What the scatter of a day hangs on. */
export interface DayMean {
  readonly latitudeDeg: number;
  /** Clearness index of the clear day: global over extraterrestrial. */
  readonly clearClearness: number;
  /** The mean to be met: global over that of the clear day. */
  readonly ratio: number;
  /** One standard deviation of that mean, as a share of it. */
  readonly uncertainty: number;
}

const ramp = (value: number, from: number, to: number): number =>
  Math.min(1, Math.max(0, (value - from) / (to - from)));

/**
 * How much of the tropical shape a latitude takes: all of it up to 15 degrees, none from 25 on, between them a mixture,
 * so that no line on the map makes a step. Measured on the stations at 9, 13 and 23 degrees and those from 34 on.
 */
const tropicalShare = (latitudeDeg: number): number => 1 - ramp(Math.abs(latitudeDeg), 15, 25);

/** The same shape fits low polar stratus; from 60 to 70 degrees, after the one station there (71 N). */
const polarShare = (latitudeDeg: number): number => ramp(Math.abs(latitudeDeg), 60, 70);

/** Clearness of the darkest day: 0.05, Bendt et al. 1981; 0.2 under bright polar stratus, after the one station there. */
const darkestClearness = (latitudeDeg: number): number => 0.05 + 0.15 * polarShare(latitudeDeg);

/**
 * How far a month's brightest days may outshine the clear day of its average air: nothing, up to 3 % where the mean day
 * itself is nearly clear (dry places, where haze comes and goes rather than cloud); nothing again where all days
 * are clear. Measured on the stations of Nevada; the rest are best without.
 */
export const BRIGHTEST_ABOVE_CLEAR = 0.03;

const brightestRatio = (ratio: number): number =>
  1 + BRIGHTEST_ABOVE_CLEAR * ramp(ratio, 0.8, 0.9) * (1 - ramp(ratio, 0.97, 1));

/** The ends between which a day's ratio lies. A mean outside them is met by days that are all alike. */
export const ratioLimits = ({ latitudeDeg, clearClearness, ratio }: DayMean): readonly [number, number] => [
  Math.min(ratio, darkestClearness(latitudeDeg) / clearClearness),
  Math.max(ratio, brightestRatio(ratio)),
];

/** Where a standard normal error is read, with its weights there: enough for a spread added to a wider one. */
export const UNCERTAINTY_STEPS = [-2, -1, 0, 1, 2] as const;
const UNCERTAINTY_WEIGHTS = [0.0545, 0.2442, 0.4026, 0.2442, 0.0545] as const;

/** Halvings of the interval in which the shift is sought. */
const HALVINGS = 55;

/**
 * The five means that an uncertain mean stands for, each within the limits, as places 0..1 between them. Where a limit cuts
 * one, all move, so that their weighted mean stays.
 */
const uncertainPlaces = (place: number, spread: number, out: Float64Array): void => {
  const meanAt = (shift: number): number => {
    let mean = 0;
    for (const [index, step] of UNCERTAINTY_STEPS.entries()) {
      out[index] = Math.min(1, Math.max(0, place + shift + step * spread));
      mean += out[index] * UNCERTAINTY_WEIGHTS[index];
    }
    return mean;
  };
  if (meanAt(0) === place) return;
  let [low, high] = [-2 * spread, 2 * spread];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = 0.5 * (low + high);
    if (meanAt(middle) < place) low = middle;
    else high = middle;
  }
  meanAt(0.5 * (low + high));
};

/** Turns places between the limits into ratios, in place. */
const toRatios = (places: Float64Array, least: number, most: number): void => {
  for (let slice = 0; slice < places.length; slice++) places[slice] = least + (most - least) * places[slice];
};

/**
 * Makes a reader of equally likely days; it keeps its own work space, so that a loop over a season allocates nothing.
 *
 * `slices` fills `out` with the mean ratios of equally likely slices of the days to come, darkest first, uncertainty about the
 * mean included; their mean is the day's mean, exactly. `slicesByUncertainty` fills one such column for each of the
 * five steps of `UNCERTAINTY_STEPS`.
 */
export const daySpreads = () => {
  const masses = new Float64Array(ATOMS);
  const places = new Float64Array(UNCERTAINTY_STEPS.length);

  const addDay = (latitudeDeg: number, place: number, weight: number): void => {
    const other = Math.max(tropicalShare(latitudeDeg), polarShare(latitudeDeg));
    if (other < 1) addSpread("bendt", place, weight * (1 - other), masses);
    if (other > 0) addSpread("saunier", place, weight * other, masses);
  };

  const prepare = (day: DayMean): readonly [number, number] => {
    const [least, most] = ratioLimits(day);
    const reach = most - least;
    if (reach > 0)
      uncertainPlaces((day.ratio - least) / reach, (day.uncertainty * day.ratio) / reach, places);
    else places.fill(0);
    return [least, most];
  };

  return {
    slices: (day: DayMean, out: Float64Array): void => {
      const [least, most] = prepare(day);
      masses.fill(0);
      if (day.uncertainty === 0) addDay(day.latitudeDeg, places[0], 1);
      else
        for (const [index, weight] of UNCERTAINTY_WEIGHTS.entries())
          addDay(day.latitudeDeg, places[index], weight);
      sliceMeans(masses, out);
      toRatios(out, least, most);
    },
    slicesByUncertainty: (day: DayMean, out: readonly Float64Array[]): void => {
      const [least, most] = prepare(day);
      for (const [index, column] of out.entries()) {
        masses.fill(0);
        addDay(day.latitudeDeg, places[index], 1);
        sliceMeans(masses, column);
        toRatios(column, least, most);
      }
    },
  };
};
