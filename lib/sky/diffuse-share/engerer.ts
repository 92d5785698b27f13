/**
 * Diffuse share from clearness, clear-sky light and the sun's place: Engerer 2015, Solar Energy 116, 215, model 2.
 * Coefficients from memory; confirmed only by how the model does on the measured data (see the comparison command).
 */

const FLOOR = 0.042336;
const INTERCEPT = -3.7912;
const BY_CLEARNESS = 7.5479;
const BY_SOLAR_HOUR = -0.010036;
const BY_ZENITH = 0.003148;
const BY_CLEAR_EXCESS = -5.3146;
const BY_ENHANCEMENT = 1.7073;

/**
 * Diffuse share (0..1) of global horizontal light:
 * c + (1 - c) / (1 + exp(b0 + b1 kt + b2 AST + b3 z + b4 (ktc - kt))) + b5 max(0, 1 - ktc / kt).
 * Written for minutes; used here for any interval. No light counts as all diffuse. NaN stays NaN.
 *
 * @param clearness GHI over extraterrestrial horizontal
 * @param clearSkyClearness clear-sky GHI over extraterrestrial horizontal
 * @param solarHour apparent solar time, hours 0..24
 * @param zenithDeg sun's zenith angle, degrees
 * @example engererShare(0.7, 0.74, 12, 30) // 0.255
 */
export const engererShare = (
  clearness: number,
  clearSkyClearness: number,
  solarHour: number,
  zenithDeg: number,
): number => {
  if (clearness <= 0) return 1;
  const excess = clearSkyClearness - clearness;
  const enhancement = Math.max(0, 1 - clearSkyClearness / clearness);
  const exponent =
    INTERCEPT +
    BY_CLEARNESS * clearness +
    BY_SOLAR_HOUR * solarHour +
    BY_ZENITH * zenithDeg +
    BY_CLEAR_EXCESS * excess;
  const share = FLOOR + (1 - FLOOR) / (1 + Math.exp(exponent)) + BY_ENHANCEMENT * enhancement;
  return Math.min(1, Math.max(0, share));
};
