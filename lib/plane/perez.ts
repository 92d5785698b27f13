/**
 * The sky of Perez, Ineichen, Seals, Michalsky & Stewart 1990, Solar Energy 44, 271: an even dome, a disc round the sun
 * and a band along the horizon, their brightness read from the clearness and brightness of the sky.
 */
import { clampedAcos } from "../units/angle.ts";
import { LEAST_SIN_ALTITUDE, type SkyModel } from "./sky-model.ts";

/** Weight of the zenith angle in the sky clearness, for radians: Perez et al. 1990, equation 1. */
const ZENITH_WEIGHT = 1.041;

/** Upper edges of the first seven bins of sky clearness; the eighth is open: Perez et al. 1990, table 1. */
const CLEARNESS_EDGES = [1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2] as const;

/**
 * F11, F12, F13, F21, F22, F23 of each bin: Perez et al. 1990, table 6, to seven digits (R. Perez, private communication,
 * 1999, printed in the US DOE Engineering Reference for building energy, Sky Radiance Model). They round to the printed
 * table but for F11 of the sixth bin (1.1326, printed 1.132).
 */
const COEFFICIENTS = Float64Array.of(
  ...[-0.0083117, 0.5877285, -0.0620636, -0.0596012, 0.0721249, -0.0220216],
  ...[0.1299457, 0.6825954, -0.1513752, -0.0189325, 0.065965, -0.0288748],
  ...[0.3296958, 0.4868735, -0.2210958, 0.055414, -0.0639588, -0.0260542],
  ...[0.5682053, 0.1874525, -0.295129, 0.1088631, -0.1519229, -0.0139754],
  ...[0.873028, -0.3920403, -0.3616149, 0.2255647, -0.4620442, 0.0012448],
  ...[1.1326077, -1.2367284, -0.4118494, 0.2877813, -0.8230357, 0.0558651],
  ...[1.0601591, -1.5999137, -0.3589221, 0.2642124, -1.127234, 0.1310694],
  ...[0.677747, -0.3272588, -0.2504286, 0.1561313, -1.3765031, 0.2506212],
);
const COEFFICIENTS_IN_A_BIN = 6;

/**
 * Sky clearness: 1 under overcast, above 6 under a clear sky. Perez et al. 1990, equation 1.
 *
 * @param beamNormal Direct normal irradiance, W/m2.
 * @param diffuse Diffuse horizontal irradiance, W/m2, above 0.
 * @param zenithRad Apparent zenith angle, radians.
 * @example skyClearness(800, 100, Math.PI / 6) // 7.95995
 */
export const skyClearness = (beamNormal: number, diffuse: number, zenithRad: number): number => {
  const weight = ZENITH_WEIGHT * zenithRad ** 3;
  return ((diffuse + beamNormal) / diffuse + weight) / (1 + weight);
};

/**
 * Sky brightness: diffuse light times air mass over extraterrestrial normal. Perez et al. 1990, equation 2.
 *
 * @param diffuse Diffuse horizontal irradiance, W/m2.
 * @param airMass Relative air mass, not corrected for pressure.
 * @param extraterrestrial Extraterrestrial normal irradiance, W/m2.
 */
export const skyBrightness = (diffuse: number, airMass: number, extraterrestrial: number): number =>
  (diffuse * airMass) / extraterrestrial;

/** Where the bin of a sky clearness starts in the table of coefficients. NaN falls in the first bin. */
const binStart = (clearness: number): number => {
  let bin = 0;
  while (bin < CLEARNESS_EDGES.length && clearness >= (CLEARNESS_EDGES[bin] ?? 0)) bin += 1;
  return bin * COEFFICIENTS_IN_A_BIN;
};

/**
 * F1, the share of the diffuse light that comes from round the sun; not below 0, at times a little above 1.
 *
 * Perez et al. 1990, equation 6.
 */
export const circumsolarShare = (clearness: number, brightness: number, zenithRad: number): number => {
  const at = binStart(clearness);
  const [f11, f12, f13] = [COEFFICIENTS[at], COEFFICIENTS[at + 1], COEFFICIENTS[at + 2]];
  return Math.max(0, f11 + f12 * brightness + f13 * zenithRad);
};

/**
 * F2, the brightness of the band along the horizon for each unit of diffuse light; negative under overcast.
 *
 * Perez et al. 1990, equation 7.
 */
export const horizonShare = (clearness: number, brightness: number, zenithRad: number): number => {
  const at = binStart(clearness) + 3;
  const [f21, f22, f23] = [COEFFICIENTS[at], COEFFICIENTS[at + 1], COEFFICIENTS[at + 2]];
  return f21 + f22 * brightness + f23 * zenithRad;
};

/**
 * The Perez sky: diffuse light from round the sun, from the dome and from along the horizon.
 *
 * On a plane: circumsolar x max(0, cos incidence) + dome x sky view + horizon x sin tilt. Perez et al. 1990, equation 9,
 * with its floor of cos 85 degrees under the sine of the altitude; below 5 degrees of altitude a flat plane therefore
 * gets a little less than the diffuse light that was put in.
 */
export const perez: SkyModel = (moment, split) => {
  const { diffuse, sinAltitude } = moment;
  if (diffuse === 0) {
    // No diffuse light has no clearness: 0 / 0.
    split.circumsolar = 0;
    split.dome = 0;
    split.horizon = 0;
    return split;
  }
  const zenithRad = clampedAcos(sinAltitude);
  const clearness = skyClearness(moment.beamNormal, diffuse, zenithRad);
  const brightness = skyBrightness(diffuse, moment.airMass, moment.extraterrestrial);
  const nearSun = circumsolarShare(clearness, brightness, zenithRad);
  split.circumsolar = (diffuse * nearSun) / Math.max(LEAST_SIN_ALTITUDE, sinAltitude);
  split.dome = diffuse * (1 - nearSun);
  split.horizon = diffuse * horizonShare(clearness, brightness, zenithRad);
  return split;
};
