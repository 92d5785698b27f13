/**
 * How the days of a month scatter about its mean: the published generalized distributions of daily clearness,
 * stretched between the darkest day and the clear day of the site.
 */
import { between } from "../../../units/interpolation.ts";

/**
 * Which shape. Bendt, Collares-Pereira & Rabl 1981, Solar Energy 27, 1: density exp(g x). In the tropics Saunier,
 * Reddy & Kumar 1987, Solar Energy 38, 169: density x (1 - x) exp(g x) (form from memory). x runs from 0 on the darkest
 * day to 1 on the clear one; g is solved so that the month's mean comes out, where the papers print a fit for it.
 */
export type SpreadFamily = "bendt" | "saunier";

/** Atoms that stand for the distribution, evenly spaced from 0 to 1. */
export const ATOMS = 129;
/** Means for which the shape is worked out; between two of them their shapes are mixed, so that every mean is exact. */
const MEANS = 65;

const positions = Float64Array.from({ length: ATOMS }, (_, atom) => atom / (ATOMS - 1));

const BASES: Readonly<Record<SpreadFamily, (x: number) => number>> = {
  // The end atoms stand for half a cell each.
  bendt: (x) => (x === 0 || x === 1 ? 0.5 : 1),
  saunier: (x) => x * (1 - x),
};

/** Masses of base(x) exp(g x) with a given mean: Newton's method on g, whose slope is the variance. */
const massesOfMean = (base: Float64Array, mean: number): Float64Array => {
  const masses = new Float64Array(ATOMS);
  let g = 0;
  for (let tries = 0; tries < 100; tries++) {
    let [sum, first, second] = [0, 0, 0];
    for (let atom = 0; atom < ATOMS; atom++) {
      const x = positions[atom];
      // Measured from the end that the exponential climbs to, so that it never overflows.
      const mass = base[atom] * Math.exp(g * (g > 0 ? x - 1 : x));
      masses[atom] = mass;
      sum += mass;
      first += mass * x;
      second += mass * x * x;
    }
    const at = first / sum;
    if (Math.abs(at - mean) < 1e-13) break;
    // A step no longer than the scale itself keeps Newton from leaping over the flat ends.
    const step = (mean - at) / (second / sum - at * at);
    const most = 2 + Math.abs(g);
    g += Math.max(-most, Math.min(most, step));
  }
  const sum = masses.reduce((total, mass) => total + mass, 0);
  return masses.map((mass) => mass / sum);
};

const pointAt = (atom: number): Float64Array => {
  const masses = new Float64Array(ATOMS);
  masses[atom] = 1;
  return masses;
};

const tableOf = (family: SpreadFamily): readonly Float64Array[] => {
  const base = positions.map(BASES[family]);
  return Array.from({ length: MEANS }, (_, index) =>
    index === 0
      ? pointAt(0)
      : index === MEANS - 1
        ? pointAt(ATOMS - 1)
        : massesOfMean(base, index / (MEANS - 1)),
  );
};

const TABLES: Readonly<Record<SpreadFamily, readonly Float64Array[]>> = {
  bendt: tableOf("bendt"),
  saunier: tableOf("saunier"),
};

/**
 * Adds a distribution of mean `mean` (0..1), times a weight, to the masses in `out`: one mass for each of 129 places
 * from 0 to 1. At the ends of the range all days are alike.
 *
 * @throws RangeError for a mean outside 0..1
 */
export const addSpread = (family: SpreadFamily, mean: number, weight: number, out: Float64Array): void => {
  if (!(mean >= 0 && mean <= 1)) {
    throw new RangeError(`addSpread: expected a mean of 0 to 1, received ${mean}`);
  }
  const at = mean * (MEANS - 1);
  const lower = Math.min(MEANS - 2, Math.floor(at));
  const share = at - lower;
  const table = TABLES[family];
  const [below, above] = [table[lower], table[lower + 1]];
  for (let atom = 0; atom < ATOMS; atom++) {
    out[atom] += weight * between(below[atom], above[atom], share);
  }
};

/**
 * The means of slices of equal probability, darkest first: days that stand for all. Their own mean is that of the
 * distribution, exactly.
 *
 * @param masses as filled by `addSpread`, sum 1
 * @param out one place for each slice
 */
export const sliceMeans = (masses: Float64Array, out: Float64Array): void => {
  const slices = out.length;
  out.fill(0);
  let slice = 0;
  let room = 1 / slices;
  for (let atom = 0; atom < ATOMS; atom++) {
    let left = masses[atom];
    while (left > room && slice < slices - 1) {
      out[slice] += room * positions[atom];
      left -= room;
      slice++;
      room = 1 / slices;
    }
    out[slice] += left * positions[atom];
    room -= left;
  }
  for (slice = 0; slice < slices; slice++) out[slice] *= slices;
};
