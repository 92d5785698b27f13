import { toRadians } from "../../../units/angle.ts";
import { EARTH_KM, type HighSpot, type Spot } from "../spot.ts";
/**
 * Optimal interpolation of what stations say beyond a first guess: Gandin 1965 (Objective analysis of meteorological fields;
 * simple kriging by another name). Each station weighs as much as a fitted covariance says it is worth at its distance and
 * height difference, less what its neighbours say already; what is left over is the uncertainty.
 */

/** How alike two places are: covariance = near exp(-d / nearKm - h / nearM) + far exp(-d / farKm), fitted. */
export interface Covariance {
  /** Variance of the part that ends with the valley, its reach on the map (km) and in height (m). */
  readonly near: number;
  readonly nearKm: number;
  readonly nearM: number;
  /** Variance of the part that whole regions share, and its reach, km. */
  readonly far: number;
  readonly farKm: number;
}

/** Places that are asked, laid out for searching. */
export interface Places<Item> {
  readonly items: readonly Item[];
  /** Unit vectors, three numbers a place. */
  readonly vectors: Float64Array;
  /** Height above the sea, m; NaN where it is not known. */
  readonly heightM: Float64Array;
}

const vectorOf = ({ latitudeDeg, longitudeDeg }: Spot): readonly [number, number, number] => {
  const [latitude, longitude] = [toRadians(latitudeDeg), toRadians(longitudeDeg)];
  const level = Math.cos(latitude);
  return [level * Math.cos(longitude), level * Math.sin(longitude), Math.sin(latitude)];
};

/** Lays places out for searching. */
export const placesOf = <Item extends HighSpot>(items: readonly Item[]): Places<Item> => {
  const vectors = new Float64Array(3 * items.length);
  const heightM = new Float64Array(items.length);
  for (const [index, item] of items.entries()) {
    vectors.set(vectorOf(item), 3 * index);
    heightM[index] = item.elevationM ?? Number.NaN;
  }
  return { items, vectors, heightM };
};

/** Height difference that is taken where one of two heights is not known, m: what near stations here differ by. */
const UNKNOWN_HEIGHT_M = 200;
/** Only for choosing who is asked at all: a hundred metres of height like ten kilometres of way. */
const KM_PER_M = 0.1;

const apartM = (a: number, b: number): number => {
  const apart = Math.abs(a - b);
  return Number.isNaN(apart) ? UNKNOWN_HEIGHT_M : apart;
};

/** Chord to great circle, km; `square` is that of the distance between two unit vectors. */
const arcKm = (square: number): number => 2 * EARTH_KM * Math.asin(Math.min(1, 0.5 * Math.sqrt(square)));

/** The stations that are asked about a site, nearest first, and how they lie to it and to each other. */
export interface Neighbours<Item> {
  readonly items: readonly Item[];
  readonly distanceKm: Float64Array;
  readonly apartM: Float64Array;
  /** Between them, row by row. */
  readonly betweenKm: Float64Array;
  readonly betweenM: Float64Array;
}

/**
 * The nearest of the places.
 *
 * @param howMany at most
 * @param without places that are not asked
 */
export const nearestOf = <Item>(
  { items, vectors, heightM }: Places<Item>,
  site: HighSpot,
  howMany: number,
  without: (item: Item) => boolean = () => false,
): Neighbours<Item> => {
  const [x, y, z] = vectorOf(site);
  const height = site.elevationM ?? Number.NaN;
  const chosen: number[] = [];
  const far: number[] = [];
  for (let index = 0; index < items.length; index++) {
    const square =
      (vectors[3 * index] - x) ** 2 + (vectors[3 * index + 1] - y) ** 2 + (vectors[3 * index + 2] - z) ** 2;
    const reach = square * EARTH_KM ** 2 + (KM_PER_M * apartM(heightM[index], height)) ** 2;
    if (chosen.length === howMany && reach >= (far[howMany - 1] ?? 0)) continue;
    const item = items[index];
    if (item === undefined || without(item)) continue;
    let at = chosen.length === howMany ? howMany - 1 : chosen.length;
    while (at > 0 && (far[at - 1] ?? 0) > reach) {
      far[at] = far[at - 1] ?? 0;
      chosen[at] = chosen[at - 1] ?? 0;
      at--;
    }
    far[at] = reach;
    chosen[at] = index;
  }
  const count = chosen.length;
  const between = (of: (a: number, b: number) => number): Float64Array =>
    Float64Array.from({ length: count * count }, (_, cell) =>
      of(chosen[Math.floor(cell / count)] ?? 0, chosen[cell % count] ?? 0),
    );
  const squareTo = (index: number, [a, b, c]: readonly [number, number, number]): number =>
    (vectors[3 * index] - a) ** 2 + (vectors[3 * index + 1] - b) ** 2 + (vectors[3 * index + 2] - c) ** 2;
  return {
    items: chosen.flatMap((index): readonly Item[] => {
      const item = items[index];
      return item === undefined ? [] : [item];
    }),
    distanceKm: Float64Array.from(chosen, (index) => arcKm(squareTo(index, [x, y, z]))),
    apartM: Float64Array.from(chosen, (index) => apartM(heightM[index], height)),
    betweenKm: between((a, b) =>
      arcKm(squareTo(a, [vectors[3 * b], vectors[3 * b + 1], vectors[3 * b + 2]])),
    ),
    betweenM: between((a, b) => apartM(heightM[a], heightM[b])),
  };
};

const covarianceAt = (
  { near, nearKm, nearM, far, farKm }: Covariance,
  distanceKm: number,
  heightM: number,
): number => near * Math.exp(-distanceKm / nearKm - heightM / nearM) + far * Math.exp(-distanceKm / farKm);

/** Weights of the neighbours, and the variance that is left at the site. */
export interface OptimalWeights {
  readonly weights: Float64Array;
  readonly variance: number;
}

/** Solves a symmetric positive definite system by Cholesky's method; both arguments are written over. */
const solve = (matrix: Float64Array, right: Float64Array): Float64Array => {
  const n = right.length;
  for (let row = 0; row < n; row++) {
    for (let column = 0; column <= row; column++) {
      let sum = matrix[row * n + column];
      for (let k = 0; k < column; k++) sum -= matrix[row * n + k] * matrix[column * n + k];
      matrix[row * n + column] = row === column ? Math.sqrt(sum) : sum / matrix[column * n + column];
    }
  }
  for (let row = 0; row < n; row++) {
    let sum = right[row];
    for (let k = 0; k < row; k++) sum -= matrix[row * n + k] * right[k];
    right[row] = sum / matrix[row * n + row];
  }
  for (let row = n - 1; row >= 0; row--) {
    let sum = right[row];
    for (let k = row + 1; k < n; k++) sum -= matrix[k * n + row] * right[k];
    right[row] = sum / matrix[row * n + row];
  }
  return right;
};

/**
 * The weights with which neighbours speak for a site.
 *
 * @param noise variance of each neighbour's own error
 */
export const optimalWeights = (
  { distanceKm, apartM: heights, betweenKm, betweenM }: Neighbours<unknown>,
  covariance: Covariance,
  noise: (index: number) => number,
): OptimalWeights => {
  const count = distanceKm.length;
  const matrix = Float64Array.from(betweenKm, (km, cell) => covarianceAt(covariance, km, betweenM[cell]));
  for (let index = 0; index < count; index++) {
    matrix[index * (count + 1)] = covariance.near + covariance.far + noise(index);
  }
  const toSite = Float64Array.from(distanceKm, (km, index) => covarianceAt(covariance, km, heights[index]));
  const weights = solve(matrix, toSite.slice());
  const told = weights.reduce((sum, weight, index) => sum + weight * toSite[index], 0);
  return { weights, variance: covariance.near + covariance.far - told };
};
