/**
 * How far a day's lowest and highest air temperature lie from the usual ones of its date.
 *
 * Sommer & Kaplan 2017, Geosci. Model Dev. 10, 3771 (CC BY; their public code): standard deviations fitted to stations of
 * the whole world, polynomials in the month's mean of the same temperature, apart for days with and without rain.
 */
type Piece = readonly [below: number, ...coefficients: number[]];

const LOW_WET: readonly Piece[] = [
  [-40, 9.727157, 0.1010504],
  [0, 3.054988, -0.2115882, 0.01374948, 0.00140538, 3.686e-5, 3.2e-7],
  [25, 3.218742, -0.04507634, 0.020944821, -0.00264577, 9.818e-5, -1.13e-6],
  [Number.POSITIVE_INFINITY, 0.5570704, 0.024431231],
];

const LOW_DRY: readonly Piece[] = [
  [-40, 10.89901, 0.1270989],
  [0, 3.567557, -0.1154459, 0.028244009, 0.00195612, 4.314e-5, 3.2e-7],
  [25, 3.794117, 0.032986969, -0.01504554, 0.00190346, -0.00011362, 2.13e-6],
  [Number.POSITIVE_INFINITY, -4.619434, 0.226056],
];

const HIGH_WET: readonly Piece[] = [
  [-30, 6.672004, 0.03643908],
  [0, 3.860109, -0.218612, 0.00388465, 0.00146174, 6.059e-5, 7.4e-7],
  [35, 3.791932, -0.031260211, 0.01611473, -0.00120298, 2.912e-5, -2.4e-7],
  [Number.POSITIVE_INFINITY, 5.552928, -0.097347148],
];

const HIGH_DRY: readonly Piece[] = [
  [-30, 7.374552, 0.01535526],
  [0, 4.617019, -0.3387282, -0.0187566, -0.0003185, 3.5e-6, 1.1e-7],
  [35, 4.74551, -0.076098159, 0.01893058, -0.00134943, 3.209e-5, -2.5e-7],
  [Number.POSITIVE_INFINITY, 3.255418, -0.021786051],
];

/** Outside these the straight ends of the fit would reach nonsense; no table's month lies there. */
const [LEAST_C, MOST_C] = [-70, 45];

const spreadAt = (pieces: readonly Piece[], meanC: number): number => {
  const at = Math.min(MOST_C, Math.max(LEAST_C, meanC));
  const piece = pieces.find(([below]) => at < below) ?? pieces[pieces.length - 1];
  let power = 1;
  let sum = 0;
  for (let index = 1; index < piece.length; index += 1) {
    sum += piece[index] * power;
    power *= at;
  }
  return sum;
};

const PUBLISHED = { low: { wet: LOW_WET, dry: LOW_DRY }, high: { wet: HIGH_WET, dry: HIGH_DRY } } as const;

/**
 * Standard deviation of a day's lowest or highest temperature about its month's mean, kelvin, as published: of days with
 * rain (`wet`) or without.
 *
 * @param meanC the month's mean of that temperature, degC; held between -70 and 45. NaN gives NaN.
 * @example publishedSpreadK("low", "dry", -5) // 4.632
 */
export const publishedSpreadK = (of: "low" | "high", weather: "wet" | "dry", meanC: number): number =>
  spreadAt(PUBLISHED[of][weather], meanC);

/**
 * Standard deviation of a day's lowest or highest temperature, kelvin: half-way (in variance) between days with rain and
 * without, since seasons are drawn without rain.
 *
 * @example dailySpreadK("low", -5) // 4.471
 */
export const dailySpreadK = (of: "low" | "high", meanC: number): number =>
  Math.hypot(publishedSpreadK(of, "wet", meanC), publishedSpreadK(of, "dry", meanC)) / Math.SQRT2;
