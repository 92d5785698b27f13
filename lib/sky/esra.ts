/**
 * A second clear sky, to check the first against: the European Solar Radiation Atlas model,
 * Rigollier, Bauer & Wald 2000, Solar Energy 68, 33. Coefficients from memory, confirmed by two properties of the
 * paper: the diffuse function is 1 at the zenith, and the Rayleigh depth joins at air mass 20.
 */
import { clampedAsin, toDegrees } from "../units/angle.ts";
import type { ClearLight } from "./bird.ts";

const SEA_LEVEL_HPA = 1013.25;

/** Rayleigh optical depth by pressure-corrected air mass, after Kasten 1996 (paper, eq. 4 and 5). */
const rayleighDepth = (mass: number): number =>
  mass <= 20
    ? 1 / (6.6296 + mass * (1.7513 + mass * (-0.1202 + mass * (0.0065 - 0.00013 * mass))))
    : 1 / (10.4 + 0.718 * mass);

/**
 * Beam, diffuse and global irradiance (W/m2) under a clear sky by the ESRA model. The ground's reflectance has no part
 * in it. Sun at or below the horizon: all zero. NaN stays NaN.
 *
 * @param extraterrestrialNormal W/m2
 * @param sinAltitude sine of the sun's altitude
 * @param airMass relative, not corrected for pressure
 * @param linkeTurbidity Linke turbidity at air mass 2: 2 is very clean cold air, 3 clean warm, 4-6 moist, above 6 dirty
 * @param pressureHPa at the site
 * @example esraClearLight(1367, 0.5, 1.994, 3, 1013.25).beamNormal // 801 W/m2
 */
export const esraClearLight = (
  extraterrestrialNormal: number,
  sinAltitude: number,
  airMass: number,
  linkeTurbidity: number,
  pressureHPa: number,
): ClearLight => {
  if (sinAltitude <= 0) return { beamNormal: 0, diffuse: 0, global: 0 };
  const mass = (airMass * pressureHPa) / SEA_LEVEL_HPA;
  const turbidity = linkeTurbidity;
  const beamNormal = extraterrestrialNormal * Math.exp(-0.8662 * turbidity * mass * rayleighDepth(mass));

  const zenithDiffuse = -1.5843e-2 + turbidity * (3.0543e-2 + 3.797e-4 * turbidity);
  const level = 0.26463 + turbidity * (-0.061581 + 0.0031408 * turbidity);
  // The paper keeps the diffuse light of a very low sun above zero this way.
  const base = level * zenithDiffuse < 2e-3 ? 2e-3 / zenithDiffuse : level;
  const linear = 2.0402 + turbidity * (0.018945 - 0.011161 * turbidity);
  const square = -1.3025 + turbidity * (0.039231 + 0.0085079 * turbidity);
  const angular = base + sinAltitude * (linear + square * sinAltitude);
  const diffuse = extraterrestrialNormal * zenithDiffuse * angular;
  return { beamNormal, diffuse, global: beamNormal * sinAltitude + diffuse };
};

/**
 * Linke turbidity of air with Angstrom turbidity beta and water vapour (cm), at a sun height.
 * Dogniaux 1974, as quoted in handbooks; from memory:
 * TL = (h + 85) / (39.5 exp(-w) + 47.4) + 0.1 + (16 + 0.22 w) beta, h in degrees.
 *
 * @example linkeTurbidityOf(0.1, 1.5, 0.5) // 3.8
 */
export const linkeTurbidityOf = (angstromBeta: number, waterCm: number, sinAltitude: number): number =>
  (toDegrees(clampedAsin(sinAltitude)) + 85) / (39.5 * Math.exp(-waterCm) + 47.4) +
  0.1 +
  (16 + 0.22 * waterCm) * angstromBeta;
