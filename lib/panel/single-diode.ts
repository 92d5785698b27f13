/**
 * The current-voltage curve of a panel: one diode, a resistance in series, one across.
 *
 * I = IL - I0 (exp((V + I Rs) / a) - 1) - (V + I Rs) / Rsh, as in De Soto, Klein & Beckman 2006, Solar Energy 80, 78,
 * equation 1. Volts and amperes of the whole panel.
 */
import { lambertW0OfExp } from "./lambert-w.ts";

/** The five parameters of a curve at one light and one cell temperature. */
export interface DiodeCurve {
  /** Light current IL, A. */
  readonly photocurrentA: number;
  /** Diode reverse saturation current I0, A. */
  readonly saturationA: number;
  /** Series resistance Rs, ohm, 0 or more. */
  readonly seriesOhm: number;
  /** Shunt resistance Rsh, ohm; may be infinite. */
  readonly shuntOhm: number;
  /** Modified ideality a: ideality x cells in series x kT/q, V. */
  readonly idealityV: number;
}

/** A point on a curve. */
export interface OperatingPoint {
  readonly volts: number;
  readonly amps: number;
  readonly watts: number;
}

/** A series resistance below this is none: its closed form would divide 0 by 0 long before it moved a current. */
export const NEGLIGIBLE_OHM = 1e-12;

/**
 * Current at a terminal voltage, A; negative above the open-circuit voltage.
 *
 * In closed form with Lambert's W: Jain & Kapoor 2004, Solar Energy Materials and Solar Cells 81, 269. NaN in, NaN out.
 */
export const currentAt = (curve: DiodeCurve, volts: number): number => {
  const { photocurrentA, saturationA, seriesOhm, idealityV } = curve;
  const shuntS = 1 / curve.shuntOhm;
  const driven = photocurrentA + saturationA;
  if (seriesOhm < NEGLIGIBLE_OHM) return driven - saturationA * Math.exp(volts / idealityV) - volts * shuntS;
  const divider = 1 + seriesOhm * shuntS;
  const logArgument =
    Math.log((seriesOhm * saturationA) / (idealityV * divider)) +
    (seriesOhm * driven + volts) / (idealityV * divider);
  return (driven - volts * shuntS) / divider - (idealityV / seriesOhm) * lambertW0OfExp(logArgument);
};

/** Current with the terminals joined, A. */
export const shortCircuitA = (curve: DiodeCurve): number => currentAt(curve, 0);

/** Current through the terminals when the diode itself stands at a voltage: explicit, unlike {@link currentAt}. */
const currentAtDiodeV = (curve: DiodeCurve, diodeV: number): number =>
  curve.photocurrentA - curve.saturationA * Math.expm1(diodeV / curve.idealityV) - diodeV / curve.shuntOhm;

/** Slope of that current, A/V, its sign turned. */
const conductanceAtDiodeV = (curve: DiodeCurve, diodeV: number): number =>
  (curve.saturationA / curve.idealityV) * Math.exp(diodeV / curve.idealityV) + 1 / curve.shuntOhm;

const MOST_STEPS = 100;

/** Newton steps double the digits, and power is level at its peak: a step this small would move it by less than rounding. */
const CLOSE_SHARE = 1e-10;

/**
 * Voltage with the terminals apart, V; 0 in the dark.
 *
 * Newton from above on a curve that only bends one way, so it cannot overshoot.
 */
export const openCircuitV = (curve: DiodeCurve): number => {
  let volts = curve.idealityV * Math.log1p(curve.photocurrentA / curve.saturationA);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const next = volts + currentAtDiodeV(curve, volts) / conductanceAtDiodeV(curve, volts);
    if (!(next < volts)) break;
    volts = next;
  }
  return volts;
};

/**
 * The point of most power.
 *
 * Along the diode voltage both current and terminal voltage are explicit; there dP = 0 reads
 * I (1 + 2 g Rs) = g Vd with g the slope. Solved by Newton's method, held between brackets. NaN in, NaN out.
 *
 * @returns All zeros in the dark.
 */
export const maxPowerPoint = (curve: DiodeCurve): OperatingPoint => {
  const { seriesOhm, saturationA, idealityV } = curve;
  let low = 0;
  let high = openCircuitV(curve);
  let diodeV = 0.85 * high;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const amps = currentAtDiodeV(curve, diodeV);
    const slope = conductanceAtDiodeV(curve, diodeV);
    const bend = (saturationA / idealityV ** 2) * Math.exp(diodeV / idealityV);
    const rise = amps * (1 + 2 * slope * seriesOhm) - slope * diodeV;
    if (rise > 0) low = diodeV;
    else high = diodeV;
    const fall = 2 * slope + 2 * seriesOhm * slope ** 2 + bend * (diodeV - 2 * seriesOhm * amps);
    const newton = diodeV + rise / fall;
    if (Math.abs(newton - diodeV) <= CLOSE_SHARE * diodeV) break;
    diodeV = newton > low && newton < high ? newton : (low + high) / 2;
  }
  const amps = currentAtDiodeV(curve, diodeV);
  const volts = diodeV - amps * seriesOhm;
  return { volts, amps, watts: volts * amps };
};
