import type { Terrain } from "../plan/steadying.ts";

/** Gusts near the ground from a mean wind at 10 m: EN 1991-1-4, clauses 4.3 to 4.5. */

/** Air density, kg/m3 (ISO 2533 at sea level; the Eurocode recommends 1.25). */
export const AIR_DENSITY = 1.225;

/** Roughness length and the least height the profile holds for, m (EN 1991-1-4 table 4.1, categories 0 to IV). */
const TERRAIN_ROUGHNESS: Readonly<Record<Terrain, { readonly lengthM: number; readonly leastM: number }>> = {
  "open sea": { lengthM: 0.003, leastM: 1 },
  "lake or flat": { lengthM: 0.01, leastM: 1 },
  farmland: { lengthM: 0.05, leastM: 2 },
  "suburb or forest": { lengthM: 0.3, leastM: 5 },
  town: { lengthM: 1, leastM: 10 },
};

/** Roughness length of category II, which the basic wind is stated over, m. */
const BASIC_ROUGHNESS_M = 0.05;

/** What becomes of a mean wind at 10 m over open country, at a height in a terrain. */
export interface WindProfile {
  /** `0.19 (z0 / 0.05)^0.07` (4.5). */
  readonly terrainFactor: number;
  /** Mean wind there over the basic wind: `k ln(z / z0)` (4.4). */
  readonly roughnessFactor: number;
  /** `1 / ln(z / z0)` (4.7), with turbulence and orography factors of 1. */
  readonly turbulence: number;
  /** Gust there over the basic wind: `roughnessFactor sqrt(1 + 7 turbulence)`, the root of (4.8). */
  readonly gustFactor: number;
}

/** The wind profile at a height (m above ground, 0 or more; below the terrain's least height it stays as there). */
export const windProfile = (terrain: Terrain, heightM: number): WindProfile => {
  const { lengthM, leastM } = TERRAIN_ROUGHNESS[terrain];
  const logarithm = Math.log(Math.max(heightM, leastM) / lengthM);
  const terrainFactor = 0.19 * (lengthM / BASIC_ROUGHNESS_M) ** 0.07;
  const roughnessFactor = terrainFactor * logarithm;
  const turbulence = 1 / logarithm;
  return {
    terrainFactor,
    roughnessFactor,
    turbulence,
    gustFactor: roughnessFactor * Math.sqrt(1 + 7 * turbulence),
  };
};

/** Dynamic pressure `rho v^2 / 2`, Pa. @example dynamicPressure(10) // 61.25 */
export const dynamicPressure = (windMs: number, airDensity = AIR_DENSITY): number =>
  0.5 * airDensity * windMs ** 2;

/** Wind (m/s) whose pressure on an area, times a force coefficient, is a force (N): the root of `F = c A rho v^2 / 2`. */
export const windOfForce = (
  forceN: number,
  areaM2: number,
  forceCoefficient: number,
  airDensity = AIR_DENSITY,
): number => Math.sqrt((2 * forceN) / (airDensity * forceCoefficient * areaM2));
