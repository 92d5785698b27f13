import type { SkyModel } from "./sky-model.ts";

/**
 * The even sky: diffuse light comes alike from all over the dome.
 *
 * Liu & Jordan 1963, Solar Energy 7, 53. Kept for comparison: it misses the brightness round the sun, and so reads
 * low on planes that face it.
 *
 * @example
 * isotropic(
 *   { beamNormal: 600, diffuse: 150, sinAltitude: 0.6, extraterrestrial: 1361, airMass: 1.7 },
 *   { circumsolar: 0, dome: 0, horizon: 0 },
 * ) // { circumsolar: 0, dome: 150, horizon: 0 }
 */
export const isotropic: SkyModel = (moment, split) => {
  split.circumsolar = 0;
  split.dome = moment.diffuse;
  split.horizon = 0;
  return split;
};
