import { STC } from "./linear-module.ts";
import type { DiodeCurve } from "./single-diode.ts";

/** Kelvins of 0 degC. */
const ZERO_CELSIUS_K = 273.15;

/** Boltzmann constant, eV/K (CODATA 2018). */
const BOLTZMANN_EV_PER_K = 8.617333e-5;

/** Band gap of silicon at 25 degC, eV, and its share lost for each kelvin above: De Soto et al. 2006, equation 10. */
export const SILICON_BAND_GAP_EV = 1.121;
const BAND_GAP_PER_K = -0.0002677;

/** A curve at standard test conditions, and how it moves with warmth. */
export interface DiodeReference extends DiodeCurve {
  /** Temperature coefficient of the light current, A/K. */
  readonly photocurrentPerK: number;
  /** Band gap at 25 degC by which the saturation current grows with warmth, eV. */
  readonly bandGapEv: number;
}

/**
 * Logarithm of the saturation current against that at 25 degC: 3 ln(T/Tr) + (Eg_r/Tr - Eg/T)/k.
 *
 * De Soto et al. 2006, equations 9 and 10.
 */
export const logSaturationRatio = (bandGapEv: number, cellC: number): number => {
  const kelvin = cellC + ZERO_CELSIUS_K;
  const reference = STC.cellC + ZERO_CELSIUS_K;
  const warmGap = bandGapEv * (1 + BAND_GAP_PER_K * (kelvin - reference));
  return 3 * Math.log(kelvin / reference) + (bandGapEv / reference - warmGap / kelvin) / BOLTZMANN_EV_PER_K;
};

/** The modified ideality grows with absolute temperature: T/Tr, De Soto et al. 2006, equation 8. */
export const idealityRatio = (cellC: number): number =>
  (cellC + ZERO_CELSIUS_K) / (STC.cellC + ZERO_CELSIUS_K);

/**
 * The curve at another light and cell temperature.
 *
 * De Soto, Klein & Beckman 2006, equations 8 to 12: a ~ T; I0 ~ T^3 exp(-Eg/kT); IL ~ light, plus its coefficient;
 * Rsh ~ 1/light; Rs stays.
 *
 * @param reference The curve at standard test conditions.
 * @param absorbedWm2 Light that passes the glass, W/m2, 0 or more.
 * @param cellC Cell temperature, degC, above -273.15.
 */
export const curveAt = (reference: DiodeReference, absorbedWm2: number, cellC: number): DiodeCurve => {
  const suns = absorbedWm2 / STC.irradiance;
  return {
    photocurrentA: Math.max(
      0,
      suns * (reference.photocurrentA + reference.photocurrentPerK * (cellC - STC.cellC)),
    ),
    saturationA: reference.saturationA * Math.exp(logSaturationRatio(reference.bandGapEv, cellC)),
    seriesOhm: reference.seriesOhm,
    shuntOhm: reference.shuntOhm / suns,
    idealityV: reference.idealityV * idealityRatio(cellC),
  };
};
