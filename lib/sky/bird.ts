/**
 * Clear-sky light: Bird & Hulstrom 1981, A Simplified Clear Sky Model, SERI/TR-642-761.
 */

/** The air above the site, as Bird's model wants it. */
export interface ClearAir {
  /** Pressure at the site, hPa. */
  readonly pressureHPa: number;
  /** Ozone in the column, cm at standard conditions (0.30 cm is 300 Dobson units). */
  readonly ozoneCm: number;
  /** Water vapour in the column, cm precipitable. */
  readonly waterCm: number;
  /** Aerosol optical depth at 380 nm and at 500 nm. */
  readonly aod380: number;
  readonly aod500: number;
  /** Share of scattered light that goes forward, Ba; the report recommends 0.84 (rural aerosol). */
  readonly forwardShare: number;
  /** Aerosol absorptance coefficient, K1; the report recommends 0.1 (0.0933 rural, 0.385 urban). */
  readonly aerosolAbsorption: number;
}

/** Light at the ground under a clear sky, W/m2. */
export interface ClearLight {
  readonly beamNormal: number;
  readonly diffuse: number;
  readonly global: number;
}

/** Pressure the report's pressure-corrected air mass refers to, hPa. */
export const BIRD_SEA_LEVEL_HPA = 1013;

/**
 * The absorption formula leaves its range in thick haze at the horizon, where it would let less than nothing through.
 * What absorption lets through is never less than what absorption and scattering together do, nor nothing at all.
 */
export const LEAST_THROUGH = 1e-12;

/** Aerosol optical depth over the whole solar spectrum: 0.2758 tau380 + 0.35 tau500 (report, eq. for tau_A). */
export const broadbandAod = (aod380: number, aod500: number): number => 0.2758 * aod380 + 0.35 * aod500;

/**
 * Beam, diffuse and global irradiance (W/m2) under a clear sky, Bird & Hulstrom 1981. Diffuse counts the light that
 * goes back and forth between ground and sky, so it grows with the ground's reflectance.
 *
 * The report's fit of Rayleigh scattering is for a sun more than a few degrees up. From 3 degrees down it turns back, and
 * below 0.8 it passes more light than arrives. It is kept as published, but what is scattered is never below none and the
 * beam never above the extraterrestrial. Sun at or below the horizon: all zero. NaN stays NaN.
 *
 * @param extraterrestrialNormal W/m2
 * @param sinAltitude sine of the sun's apparent altitude, -1..1
 * @param airMass relative, not corrected for pressure (Kasten & Young 1989 throughout this library; the report's own
 *   Kasten 1966 differs by less than 0.1 % above 5 degrees)
 * @param groundAlbedo reflectance of the ground, 0..1
 * @example
 * const air = { pressureHPa: 1013.25, ozoneCm: 0.34, waterCm: 1.42, aod380: 0.3538, aod500: 0.2661,
 *   forwardShare: 0.84, aerosolAbsorption: 0.1 };
 * birdClearLight(1367, 0.5, 1.994, air, 0.2).global // 470 W/m2
 */
export const birdClearLight = (
  extraterrestrialNormal: number,
  sinAltitude: number,
  airMass: number,
  air: ClearAir,
  groundAlbedo: number,
): ClearLight => {
  if (sinAltitude <= 0) return { beamNormal: 0, diffuse: 0, global: 0 };
  const pressureMass = (airMass * air.pressureHPa) / BIRD_SEA_LEVEL_HPA;
  const ozone = air.ozoneCm * airMass;
  const water = air.waterCm * airMass;
  const aod = broadbandAod(air.aod380, air.aod500);

  const rayleigh = Math.exp(-0.0903 * pressureMass ** 0.84 * (1 + pressureMass - pressureMass ** 1.01));
  const ozoneThrough =
    1 -
    0.1611 * ozone * (1 + 139.48 * ozone) ** -0.3035 -
    (0.002715 * ozone) / (1 + 0.044 * ozone + 0.0003 * ozone ** 2);
  const mixedGases = Math.exp(-0.0127 * pressureMass ** 0.26);
  const waterThrough = 1 - (2.4959 * water) / ((1 + 79.034 * water) ** 0.6828 + 6.385 * water);
  const aerosol = Math.exp(-(aod ** 0.873) * (1 + aod - aod ** 0.7088) * airMass ** 0.9108);
  const aerosolAbsorbed = Math.max(
    1 - air.aerosolAbsorption * (1 - airMass + airMass ** 1.06) * (1 - aerosol),
    aerosol,
    LEAST_THROUGH,
  );
  const aerosolScattered = aerosol / aerosolAbsorbed;
  const skyAlbedo = 0.0685 + (1 - air.forwardShare) * (1 - aerosolScattered);

  const gases = ozoneThrough * mixedGases * waterThrough;
  const beamNormal = extraterrestrialNormal * Math.min(1, 0.9662 * rayleigh * gases * aerosol);
  const firstDiffuse =
    (0.79 *
      extraterrestrialNormal *
      sinAltitude *
      gases *
      aerosolAbsorbed *
      (0.5 * Math.max(0, 1 - rayleigh) + air.forwardShare * (1 - aerosolScattered))) /
    (1 - airMass + airMass ** 1.02);
  const beamHorizontal = beamNormal * sinAltitude;
  const global = (beamHorizontal + firstDiffuse) / (1 - groundAlbedo * skyAlbedo);
  return { beamNormal, diffuse: Math.max(0, global - beamHorizontal), global };
};
