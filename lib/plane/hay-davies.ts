import { LEAST_SIN_ALTITUDE, type SkyModel } from "./sky-model.ts";

/**
 * An even sky with a share of the diffuse light gathered at the sun.
 *
 * The share is the anisotropy index, beam over extraterrestrial: Hay & Davies 1980, as in Duffie & Beckman, Solar
 * Engineering of Thermal Processes, section 2.16. Kept for comparison.
 */
export const hayDavies: SkyModel = (moment, split) => {
  const anisotropy = moment.beamNormal / moment.extraterrestrial;
  split.circumsolar = (moment.diffuse * anisotropy) / Math.max(LEAST_SIN_ALTITUDE, moment.sinAltitude);
  split.dome = moment.diffuse * (1 - anisotropy);
  split.horizon = 0;
  return split;
};
