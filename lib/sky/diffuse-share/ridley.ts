/**
 * Diffuse share from clearness, its neighbours and its day: Ridley, Boland & Lauret 2010, Renewable Energy 35, 478
 * (the Boland-Ridley-Lauret model). Coefficients from memory; confirmed only by how the model does on measured data.
 */

/** What the Boland-Ridley-Lauret model looks at. */
export interface RidleyInputs {
  /** The hour's GHI over extraterrestrial horizontal. */
  readonly clearness: number;
  /** The whole day's clearness. */
  readonly dayClearness: number;
  /** Mean clearness of the hour before and the hour after; at sunrise and sunset the one that has sun. */
  readonly neighbourClearness: number;
  /** Apparent solar time, hours 0..24. */
  readonly solarHour: number;
  /** Sun's altitude, degrees. */
  readonly altitudeDeg: number;
}

/**
 * Diffuse share (0..1) of an hour's global horizontal light:
 * 1 / (1 + exp(-5.38 + 6.63 kt + 0.006 AST - 0.007 h + 1.75 Kt + 1.31 psi)). NaN stays NaN.
 *
 * @example
 * ridleyShare({ clearness: 0.6, dayClearness: 0.6, neighbourClearness: 0.6, solarHour: 12, altitudeDeg: 45 }) // 0.33
 */
export const ridleyShare = (inputs: RidleyInputs): number =>
  1 /
  (1 +
    Math.exp(
      -5.38 +
        6.63 * inputs.clearness +
        0.006 * inputs.solarHour -
        0.007 * inputs.altitudeDeg +
        1.75 * inputs.dayClearness +
        1.31 * inputs.neighbourClearness,
    ));
