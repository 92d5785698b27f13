/**
 * The five parameters of a panel's curve from its nameplate, by the five conditions of De Soto, Klein & Beckman 2006,
 * Solar Energy 80, 78: short circuit, open circuit, maximum power, no slope of the power there, and the open-circuit
 * voltage two kelvins warmer. Given the ideality and the series resistance the first three are linear in the other
 * three parameters, so what is left is one root inside another.
 */
import { bracketedRoot } from "../units/bracketed-root.ts";
import { curveAt, type DiodeReference, SILICON_BAND_GAP_EV } from "./diode-conditions.ts";
import { STC } from "./linear-module.ts";
import { maxPowerPoint, openCircuitV } from "./single-diode.ts";

/** A curve's corner points at standard test conditions, and how they move with warmth. */
export interface CurvePoints {
  readonly iscA: number;
  readonly vocV: number;
  readonly impA: number;
  readonly vmpV: number;
  /** Temperature coefficient of the short-circuit current, A/K; positive. */
  readonly iscPerK: number;
  /** Temperature coefficient of the open-circuit voltage, V/K; negative. */
  readonly vocPerK: number;
  /** Temperature coefficient of the maximum power, 1/K; negative. Left out, the fit predicts it. */
  readonly powerPerK?: number | undefined;
}

/** A fitted curve, and how far the nameplate let it go. */
export interface DiodeFit {
  readonly reference: DiodeReference;
  /**
   * Per cent by which the coefficients of current and voltage were turned down and up so that the one of power is met
   * (0 when none was given).
   */
  readonly adjustPct: number;
  /** Temperature coefficients the fitted curve has: V/K and 1/K. */
  readonly vocPerK: number;
  readonly powerPerK: number;
}

/** Warmth above 25 degC at which the open-circuit voltage is met, K: De Soto et al. 2006, section 3.1. */
const STEP_K = 2;

/** The ideality is sought between these parts of the open-circuit voltage; 0.03 to 0.08 for ordinary silicon. */
const LEAST_IDEALITY_SHARE = 1 / 100;
const MOST_IDEALITY_SHARE = 1 / 5;

/** The band gap is sought between these, eV. */
const [LEAST_BAND_GAP_EV, MOST_BAND_GAP_EV] = [0.1, 6] as const;

/**
 * Temperatures between which the slope of the power is taken, degC: mostly above 25, as IEC 61215 measures it. The slope
 * steepens by up to 2 % for each 10 K, so that the one at 25 itself, or up to 55, is within 1.5 % of it.
 */
const [COOL_C, WARM_C] = [20, 45] as const;

/** The adjustment is sought within this many per cent. */
const MOST_ADJUST_PCT = 100;

interface Trial {
  readonly reference: DiodeReference;
  /** Slope condition at the maximum-power point, A: positive while the series resistance is too small. */
  readonly slopeExcess: number;
}

/** The curve through the three points for a given ideality and series resistance. */
const throughPoints = (points: CurvePoints, idealityV: number, seriesOhm: number): Trial => {
  const { iscA, vocV, impA, vmpV } = points;
  const diodeScV = iscA * seriesOhm;
  const diodeMpV = vmpV + impA * seriesOhm;
  // Exponentials against that at open circuit, so that none overflows.
  const [atSc, atMp] = [Math.exp((diodeScV - vocV) / idealityV), Math.exp((diodeMpV - vocV) / idealityV)];
  const [ocE, mpE] = [1 - atSc, atMp - atSc];
  const [ocG, mpG] = [vocV - diodeScV, diodeMpV - diodeScV];
  const determinant = ocE * mpG - mpE * ocG;
  const scaledSaturation = (iscA * mpG - (iscA - impA) * ocG) / determinant;
  const shuntS = (ocE * (iscA - impA) - mpE * iscA) / determinant;
  const slope = (scaledSaturation / idealityV) * atMp + shuntS;
  const dark = Math.exp(-vocV / idealityV);
  return {
    reference: {
      photocurrentA: scaledSaturation * (1 - dark) + vocV * shuntS,
      saturationA: scaledSaturation * dark,
      seriesOhm,
      shuntOhm: 1 / shuntS,
      idealityV,
      photocurrentPerK: points.iscPerK,
      bandGapEv: SILICON_BAND_GAP_EV,
    },
    slopeExcess: impA - (vmpV - impA * seriesOhm) * slope,
  };
};

/** The curve that meets the four conditions at standard test conditions for a given ideality; null where none does. */
const atIdeality = (points: CurvePoints, idealityV: number): DiodeReference | null => {
  const { vocV, vmpV, impA } = points;
  // At the upper end the diode of the maximum-power point would stand at open circuit.
  const most = ((vocV - vmpV) / impA) * (1 - 1e-9);
  const excess = (seriesOhm: number) => throughPoints(points, idealityV, seriesOhm).slopeExcess;
  const seriesOhm = bracketedRoot(excess, 0, most, 1e-15 * most);
  const { reference } = throughPoints(points, idealityV, seriesOhm);
  // Where the shunt takes current rather than gives some, diode and light current are sound too (seen on any nameplate).
  return reference.shuntOhm > 0 ? reference : null;
};

/** The greatest ideality for which a curve meets the four conditions; the least of all when none does. */
const greatestIdeality = (points: CurvePoints): number => {
  let low = points.vocV * LEAST_IDEALITY_SHARE;
  let high = points.vocV * MOST_IDEALITY_SHARE;
  while (high - low > 1e-9 * high) {
    const middle = (low + high) / 2;
    if (atIdeality(points, middle) === null) high = middle;
    else low = middle;
  }
  return low;
};

const openCircuitPerK = (reference: DiodeReference): number => {
  const warm = openCircuitV(curveAt(reference, STC.irradiance, STC.cellC + STEP_K));
  return (warm - openCircuitV(curveAt(reference, STC.irradiance, STC.cellC))) / STEP_K;
};

const maxPowerPerK = (reference: DiodeReference): number => {
  const wattsAt = (cellC: number) => maxPowerPoint(curveAt(reference, STC.irradiance, cellC)).watts;
  return (wattsAt(WARM_C) - wattsAt(COOL_C)) / (WARM_C - COOL_C) / wattsAt(STC.cellC);
};

/**
 * The curve whose open-circuit voltage falls with warmth as asked: the greater the ideality, the steeper. Where the
 * greatest that the four conditions allow is too small (a nameplate with a very full curve), it is kept and the band gap
 * gives way instead.
 */
const meetingVoltage = (points: CurvePoints, mostIdealityV: number): DiodeReference | null => {
  const leastIdealityV = points.vocV * LEAST_IDEALITY_SHARE;
  const gap = (idealityV: number): number => {
    const reference = atIdeality(points, idealityV);
    return reference === null ? Number.NaN : openCircuitPerK(reference) - points.vocPerK;
  };
  const root = bracketedRoot(gap, leastIdealityV, mostIdealityV, 1e-13 * mostIdealityV);
  if (!Number.isNaN(root)) return atIdeality(points, root);
  const reference = atIdeality(points, mostIdealityV);
  if (reference === null) return null;
  const gapOf = (bandGapEv: number) => openCircuitPerK({ ...reference, bandGapEv }) - points.vocPerK;
  const bandGapEv = bracketedRoot(gapOf, LEAST_BAND_GAP_EV, MOST_BAND_GAP_EV, 1e-12);
  return Number.isNaN(bandGapEv) ? null : { ...reference, bandGapEv };
};

/** The points with the coefficient of current turned down and that of voltage turned up by some per cent. */
const adjusted = (points: CurvePoints, adjustPct: number): CurvePoints => ({
  ...points,
  iscPerK: points.iscPerK * (1 - adjustPct / 100),
  vocPerK: points.vocPerK * (1 + adjustPct / 100),
});

/**
 * Fits the single-diode curve to a nameplate.
 *
 * With a coefficient of power on the nameplate, those of current and voltage are turned by one common per cent until it is
 * met: Dobos 2012, Journal of Solar Energy Engineering 134, 021011 (from memory). The four conditions at standard test conditions
 * hold in any case.
 *
 * @param points Corner points and coefficients; see `plan/nameplate.ts` for checks and defaults.
 * @returns The fit; null when no single-diode curve passes through the points with its maximum power at Vmp.
 * @example
 * fitDiode({ iscA: 3.8, vocV: 21.1, impA: 3.5, vmpV: 17.1, iscPerK: 0.00247, vocPerK: -0.08 })?.reference
 *   .idealityV // 0.9012
 */
export const fitDiode = (points: CurvePoints): DiodeFit | null => {
  const mostIdealityV = greatestIdeality(points);
  const withAdjust = (adjustPct: number) => meetingVoltage(adjusted(points, adjustPct), mostIdealityV);
  const { powerPerK } = points;
  let adjustPct = 0;
  if (powerPerK !== undefined) {
    const gap = (pct: number): number => {
      const reference = withAdjust(pct);
      return reference === null ? Number.NaN : maxPowerPerK(reference) - powerPerK;
    };
    const root = bracketedRoot(gap, -MOST_ADJUST_PCT, MOST_ADJUST_PCT, 1e-6);
    const nearerEnd =
      Math.abs(gap(-MOST_ADJUST_PCT)) < Math.abs(gap(MOST_ADJUST_PCT)) ? -MOST_ADJUST_PCT : MOST_ADJUST_PCT;
    adjustPct = Number.isNaN(root) ? nearerEnd : root;
  }
  const reference = withAdjust(adjustPct);
  if (reference === null) return null;
  return {
    reference,
    adjustPct,
    vocPerK: openCircuitPerK(reference),
    powerPerK: maxPowerPerK(reference),
  };
};
