/**
 * The clear sky over a whole season: the upper bound that every expected figure is measured against.
 */
import type { SunColumns } from "../sun/columns.ts";
import { airMassOfSine } from "./air-mass.ts";
import { BIRD_SEA_LEVEL_HPA, broadbandAod, type ClearAir, LEAST_THROUGH } from "./bird.ts";
import { emptySkyColumns, type SkyColumns } from "./columns.ts";
import { extraterrestrialClock } from "./extraterrestrial.ts";
import { type Monthly, twelveOf } from "./monthly.ts";

/** Ground reflectance, 0..1: one for the whole year or twelve, January first. */
export type MonthlyAlbedo = Monthly;

/** Air temperature (degC) and wind at the panel (m/s), each one for the whole year or twelve, January first. */
export interface MonthlyWeather {
  readonly airC: Monthly;
  readonly windMs: Monthly;
  /** Water in the column of air, cm [that of the clear air]. */
  readonly waterCm?: Monthly | undefined;
}

/**
 * Fills the columns that do not depend on the light: extraterrestrial normal, air mass, albedo, air temperature, wind.
 * Monthly values act in the month of the solar day.
 */
export const fillSurroundings = (
  sun: SunColumns,
  ground: MonthlyAlbedo,
  weather: MonthlyWeather,
  out: SkyColumns,
): void => {
  const extraterrestrialAt = extraterrestrialClock();
  const albedos = twelveOf(ground);
  const temperatures = twelveOf(weather.airC);
  const winds = twelveOf(weather.windMs);
  const { timeMs, up } = sun;
  const { extraterrestrial, airMass, albedo, airC, windMs } = out;
  for (const { first, end, month } of sun.days) {
    const groundAlbedo = albedos[month - 1];
    albedo.fill(groundAlbedo, first, end);
    airC.fill(temperatures[month - 1], first, end);
    windMs.fill(winds[month - 1], first, end);
    for (let row = first; row < end; row += 1) {
      extraterrestrial[row] = extraterrestrialAt(timeMs[row]);
      airMass[row] = airMassOfSine(up[row]);
    }
  }
};

/**
 * Beam, diffuse and global under a clear sky (Bird & Hulstrom 1981) for every row of the sun columns, with
 * Kasten-Young air mass at the apparent altitude. Diffuse is global - beam x sin(altitude).
 * NaN in, NaN out.
 *
 * @param air from `clearAirOf`
 * @param out columns of the same length to fill instead of new ones
 * @throws RangeError when a monthly table has not twelve values or `out` has another length.
 */
export const clearSkyColumns = (
  sun: SunColumns,
  air: ClearAir,
  ground: MonthlyAlbedo,
  weather: MonthlyWeather,
  out: SkyColumns = emptySkyColumns(sun.length),
): SkyColumns => {
  if (out.length !== sun.length) {
    throw new RangeError(`clearSkyColumns: expected out of ${sun.length} rows, received ${out.length}`);
  }
  fillSurroundings(sun, ground, weather, out);
  const { up } = sun;
  const { extraterrestrial, airMass, albedo, beamNormal, diffuse, global } = out;

  // The same formulas as birdClearLight. What does not change from row to row is hoisted, and the powers of the
  // air mass share one logarithm: m^c = exp(c ln m).
  const { ozoneCm, forwardShare, aerosolAbsorption } = air;
  const waters = twelveOf(weather.waterCm ?? air.waterCm);
  const waterOf = new Float64Array(sun.length);
  for (const { first, end, month } of sun.days) waterOf.fill(waters[month - 1], first, end);
  const massPressure = air.pressureHPa / BIRD_SEA_LEVEL_HPA;
  const logPressure = Math.log(massPressure);
  const aod = broadbandAod(air.aod380, air.aod500);
  const aerosolDepth = aod ** 0.873 * (1 + aod - aod ** 0.7088);
  for (let row = 0; row < sun.length; row += 1) {
    const sine = up[row];
    if (sine <= 0) {
      beamNormal[row] = 0;
      diffuse[row] = 0;
      global[row] = 0;
      continue;
    }
    const mass = airMass[row];
    const logMass = Math.log(mass);
    const logPressureMass = logMass + logPressure;
    const pressureMass = mass * massPressure;
    const ozone = ozoneCm * mass;
    const water = waterOf[row] * mass;

    const rayleigh = Math.exp(
      -0.0903 * Math.exp(0.84 * logPressureMass) * (1 + pressureMass - Math.exp(1.01 * logPressureMass)),
    );
    const ozoneThrough =
      1 -
      0.1611 * ozone * Math.exp(-0.3035 * Math.log(1 + 139.48 * ozone)) -
      (0.002715 * ozone) / (1 + ozone * (0.044 + 0.0003 * ozone));
    const mixedGases = Math.exp(-0.0127 * Math.exp(0.26 * logPressureMass));
    const waterThrough =
      1 - (2.4959 * water) / (Math.exp(0.6828 * Math.log(1 + 79.034 * water)) + 6.385 * water);
    const aerosol = Math.exp(-aerosolDepth * Math.exp(0.9108 * logMass));
    const absorbed = 1 - aerosolAbsorption * (1 - mass + Math.exp(1.06 * logMass)) * (1 - aerosol);
    const aerosolAbsorbed = Math.max(absorbed, aerosol, LEAST_THROUGH);
    const scattered = 1 - aerosol / aerosolAbsorbed;

    const above = extraterrestrial[row];
    const gases = ozoneThrough * mixedGases * waterThrough;
    const beam = above * Math.min(1, 0.9662 * gases * rayleigh * aerosol);
    const firstDiffuse =
      (0.79 *
        above *
        gases *
        sine *
        aerosolAbsorbed *
        (0.5 * Math.max(0, 1 - rayleigh) + forwardShare * scattered)) /
      (1 - mass + Math.exp(1.02 * logMass));
    const skyAlbedo = 0.0685 + (1 - forwardShare) * scattered;
    const all = (beam * sine + firstDiffuse) / (1 - albedo[row] * skyAlbedo);
    beamNormal[row] = beam;
    global[row] = all;
    // The same air may leave a rounding error below zero at the horizon.
    diffuse[row] = Math.max(0, all - beam * sine);
  }
  return out;
};
