/**
 * What the front glass lets through, against light square on: Martin & Ruiz 2001, Solar Energy Materials and Solar Cells
 * 70, 25 (beam), and 2005, Progress in Photovoltaics 13, 75 (diffuse and ground). The light of every step is turned by
 * a table, since an exponential a step would cost more than the rest of the plane.
 */
import { toRadians } from "../units/angle.ts";

/** Steps of the beam table over cosines of incidence 0 to 1. Linear between them, its error is below 5e-6 (tested). */
const TABLE_STEPS = 1024;

/** c1 of the diffuse form, the exact value for an even half-sphere: Martin & Ruiz 2005. */
const C1 = 4 / (3 * Math.PI);

/** c2 of the diffuse form, linear in the loss coefficient (-0.074 at 0.16, -0.069 at 0.17): Martin & Ruiz 2005, from memory. */
const c2Of = (angularLoss: number): number => 0.5 * angularLoss - 0.154;

/** Angular loss coefficient a_r of a clean panel's glass in Martin & Ruiz 2001: 0.16 to 0.17; 0.20 and more when dusty. */
export const CLEAN_GLASS_ANGULAR_LOSS = 0.16;

/** Below this tilt the ground form takes the first term of its series, good to 1e-11 there. */
const SERIES_BELOW_RAD = 1e-3;

/** A front glass, ready for the loop over a season. */
export interface Glass {
  /** What passes of light that meets the glass at a cosine of incidence, 0 to 1; 0 from behind. */
  readonly beam: (cosIncidence: number) => number;
  /** What passes of light from the dome at a tilt. */
  readonly sky: (tiltDeg: number) => number;
  /** What passes of light from the ground at a tilt; 0 when flat, which sees no ground. */
  readonly ground: (tiltDeg: number) => number;
  /** `beam` at equal steps of the cosine from 0 to 1, and one more entry so that 1 itself can be read. */
  readonly table: Float64Array;
  /** Steps of the table in a unit of the cosine. */
  readonly tableSteps: number;
}

const checkAngularLoss = (angularLoss: number): void => {
  if (!(angularLoss > 0 && angularLoss <= 1)) {
    throw new RangeError(
      `martinRuizGlass: expected an angular loss above 0, up to 1, received ${angularLoss}`,
    );
  }
};

/**
 * The glass of Martin & Ruiz.
 *
 * Beam: (1 - exp(-cos t / a_r)) / (1 - exp(-1 / a_r)). Sky and ground: 1 - exp(-(c1 g + c2 g^2) / a_r) with
 * g = sin b + (pi - b - sin b) / (1 + cos b) for the sky and g = sin b + (b - sin b) / (1 - cos b) for the ground, b the
 * tilt. The sky form equals the integral of the beam form over the dome at 0 and 90 degrees and is 0.008 low near 30.
 *
 * @param angularLoss a_r, above 0 [0.16, clean glass]; more loses more at a slant.
 * @throws RangeError when it is not above 0 and at most 1.
 * @example martinRuizGlass().beam(0.5) // 0.9579
 */
export const martinRuizGlass = (angularLoss: number = CLEAN_GLASS_ANGULAR_LOSS): Glass => {
  checkAngularLoss(angularLoss);
  const squareOn = 1 - Math.exp(-1 / angularLoss);
  const c2 = c2Of(angularLoss);
  const beam = (cosIncidence: number): number =>
    cosIncidence <= 0 ? 0 : (1 - Math.exp(-cosIncidence / angularLoss)) / squareOn;
  const spread = (g: number): number => 1 - Math.exp(-(C1 * g + c2 * g * g) / angularLoss);
  const table = new Float64Array(TABLE_STEPS + 2);
  for (let step = 0; step <= TABLE_STEPS; step += 1) table[step] = beam(step / TABLE_STEPS);
  table[TABLE_STEPS + 1] = 1;
  return {
    beam,
    sky: (tiltDeg) => {
      const b = toRadians(tiltDeg);
      return spread(Math.sin(b) + (Math.PI - b - Math.sin(b)) / (1 + Math.cos(b)));
    },
    ground: (tiltDeg) => {
      const b = toRadians(tiltDeg);
      // Near 0 both halves of the ratio drown in rounding; its series is b / 3 + b^3 / 90.
      const ratio = b < SERIES_BELOW_RAD ? b / 3 : (b - Math.sin(b)) / (1 - Math.cos(b));
      return spread(Math.sin(b) + ratio);
    },
    table,
    tableSteps: TABLE_STEPS,
  };
};
