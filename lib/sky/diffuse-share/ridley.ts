/**
 * Diffuse share from clearness, its neighbours and its day: Ridley, Boland & Lauret 2010, Renewable Energy 35, 478
 * (the Boland-Ridley-Lauret model). Coefficients from memory; confirmed only by how the model does on measured data.
 */

/**
 * Diffuse share (0..1) of an hour's global horizontal light:
 * 1 / (1 + exp(-5.38 + 6.63 kt + 0.006 AST - 0.007 h + 1.75 Kt + 1.31 psi)). NaN stays NaN.
 *
 * @param clearness the hour's GHI over extraterrestrial horizontal
 * @param dayClearness the whole day's
 * @param neighbourClearness mean of the hour before and the hour after; at sunrise and sunset the one that has sun
 * @param solarHour apparent solar time, hours 0..24
 * @param altitudeDeg sun's altitude, degrees
 * @example ridleyShare(0.6, 0.6, 0.6, 12, 45) // 0.45
 */
export const ridleyShare = (
  clearness: number,
  dayClearness: number,
  neighbourClearness: number,
  solarHour: number,
  altitudeDeg: number,
): number =>
  1 /
  (1 +
    Math.exp(
      -5.38 +
        6.63 * clearness +
        0.006 * solarHour -
        0.007 * altitudeDeg +
        1.75 * dayClearness +
        1.31 * neighbourClearness,
    ));
