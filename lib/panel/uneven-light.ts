/**
 * The curve of a panel whose cells are not evenly lit: strings of cells in series, in groups with a bypass diode across each.
 *
 * The same current runs through every cell. A cell in shadow can pass no more than its own light drives, so the brighter
 * cells of its group push it into reverse; the bypass diode then takes the current past the group and costs its forward
 * drop. Along the current the voltages simply add up, which is how the curve is worked out here:
 * V(I) = sum over groups of max(-drop, sum over the group's cells of V_cell(I)).
 *
 * One diode a cell with the panel's five parameters shared out by cell count; cells do not break down in reverse (with a
 * bypass diode they are not driven that far). Without bypass diodes a shaded cell blocks down to its shunt resistance.
 */
import { bracketedRoot } from "../units/bracketed-root.ts";
import { currentAt, type DiodeCurve, type OperatingPoint, openCircuitV } from "./single-diode.ts";

/** Some cells of a group that see the same light: their share of all the panel's cells, and the whole panel's curve in that light. */
export interface LitCells {
  /** Of all cells of the panel, 0 to 1. */
  readonly share: number;
  /** What the whole panel's curve would be if all of it had this light. */
  readonly curve: DiodeCurve;
}

/** Cells in series behind one bypass diode. */
export type CellGroup = readonly LitCells[];

/** A panel in uneven light. */
export interface UnevenPanel {
  /** Shares of all groups' cells add up to 1. */
  readonly groups: readonly CellGroup[];
  /** Forward drop of a bypass diode that conducts, V; `null` where the panel has none. */
  readonly bypassDropV: number | null;
}

/** A silicon bypass diode that conducts; Schottky types drop 0.3 to 0.5 V. From memory, general semiconductor knowledge. */
export const BYPASS_DROP_V = 0.5;

/** Bracket of a current at which a search stops, A. */
const CLOSE_A = 1e-12;

/** Golden sections of a stretch of currents in which its top is sought: they leave 1e-8 of it, and power is level there. */
const GOLDEN_STEPS = 38;
const CLOSE_SHARE = 1e-8;

const MOST_STEPS = 60;
const CLOSE_V = 1e-13;

/** Voltage of the whole panel's curve at a current, V: the inverse of `currentAt`, below 0 where the current is driven through it. */
export const voltageAt = (curve: DiodeCurve, amps: number): number => {
  const { photocurrentA, saturationA, shuntOhm, seriesOhm, idealityV } = curve;
  const spare = photocurrentA - amps;
  // The diode alone would stand at this voltage, the shunt alone at the other: the truth lies below both, and Newton from
  // above cannot overshoot, since the current only bends one way.
  const byDiode = spare > 0 ? idealityV * Math.log1p(spare / saturationA) : 0;
  let diodeV = spare > 0 ? byDiode : spare * shuntOhm;
  if (!Number.isFinite(diodeV)) return -Infinity;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const exponential = saturationA * Math.exp(diodeV / idealityV);
    const short = exponential - saturationA + diodeV / shuntOhm - spare;
    const move = short / (exponential / idealityV + 1 / shuntOhm);
    diodeV -= move;
    if (Math.abs(move) < CLOSE_V * (1 + Math.abs(diodeV))) break;
  }
  return diodeV - amps * seriesOhm;
};

/** Voltage across a group at a current, V, bypass diode and all. */
const groupVoltage = (group: CellGroup, bypassDropV: number | null, amps: number): number => {
  let volts = 0;
  for (const { share, curve } of group) volts += share * voltageAt(curve, amps);
  return bypassDropV === null ? volts : Math.max(-bypassDropV, volts);
};

/**
 * Voltage of an unevenly lit panel at a current, V.
 *
 * @param amps 0 or more. NaN in, NaN out.
 */
export const unevenVoltageAt = ({ groups, bypassDropV }: UnevenPanel, amps: number): number => {
  let volts = 0;
  for (const group of groups) volts += groupVoltage(group, bypassDropV, amps);
  return volts;
};

/** The current above which a group's bypass diode conducts, A: 0 in the dark. */
const bypassedFromA = (group: CellGroup, bypassDropV: number): number => {
  const over = (amps: number): number => bypassDropV + groupVoltage(group, null, amps);
  const ofAll = group.reduce((sum, { share }) => sum + share, 0);
  // With this much even the brightest cells stand at the group's share of the drop below 0, and the others lower still.
  const most = Math.max(...group.map(({ curve }) => currentAt(curve, -bypassDropV / ofAll)));
  if (over(0) <= 0) return 0;
  return over(most) >= 0 ? most : bracketedRoot(over, 0, most, CLOSE_A);
};

/**
 * Current of an unevenly lit panel at a terminal voltage, A.
 *
 * @param volts 0 or more; above the open-circuit voltage the current is 0 (a blocking diode, or a controller, lets none back).
 * NaN in, NaN out.
 */
export const unevenCurrentAt = (panel: UnevenPanel, volts: number): number => {
  if (Number.isNaN(volts)) return Number.NaN;
  const over = (amps: number): number => unevenVoltageAt(panel, amps) - volts;
  if (over(0) <= 0) return 0;
  // No group gives more than its brightest cells with the terminals joined.
  const most = Math.max(...panel.groups.flatMap((group) => group.map(({ curve }) => currentAt(curve, 0))));
  return over(most) >= 0 ? most : bracketedRoot(over, 0, most, CLOSE_A);
};

/** The top of V(I) I between two currents where it has one top at most: golden section, one evaluation a step. */
const peakBetween = (panel: UnevenPanel, lowA: number, highA: number): OperatingPoint => {
  const watts = (amps: number): number => amps * unevenVoltageAt(panel, amps);
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [lowA, highA];
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
  let [wc, wd] = [watts(c), watts(d)];
  for (let step = 0; step < GOLDEN_STEPS; step += 1) {
    if (wc > wd) {
      [b, d, wd] = [d, c, wc];
      c = b - golden * (b - a);
      wc = watts(c);
    } else {
      [a, c, wc] = [c, d, wd];
      d = a + golden * (b - a);
      wd = watts(d);
    }
  }
  const amps = (a + b) / 2;
  const volts = unevenVoltageAt(panel, amps);
  return { volts, amps, watts: volts * amps };
};

/**
 * Every point of locally most power, from the lowest voltage to the highest; none in the dark.
 *
 * Between the currents at which one bypass diode after another begins to conduct V(I) falls and bends downwards, so power
 * has one top in each such stretch; a top at the end of a stretch is none of the whole curve's.
 */
export const powerPeaks = (panel: UnevenPanel): readonly OperatingPoint[] => {
  const mostA = unevenCurrentAt(panel, 0);
  if (!(mostA > 0)) return [];
  const { bypassDropV } = panel;
  const breaks = bypassDropV === null ? [] : panel.groups.map((group) => bypassedFromA(group, bypassDropV));
  const ends = [...new Set([0, ...breaks.filter((amps) => amps > 0 && amps < mostA), mostA])].sort(
    (a, b) => a - b,
  );
  const peaks: OperatingPoint[] = [];
  for (let at = ends.length - 1; at > 0; at -= 1) {
    const [low, high] = [ends[at - 1], ends[at]];
    const peak = peakBetween(panel, low, high);
    // A top right at the end of its stretch is a slope that goes on in the next one.
    const margin = 10 * CLOSE_SHARE * (high - low);
    const inside = peak.amps - low > margin && high - peak.amps > margin;
    if (inside && peak.watts > 0) peaks.push(peak);
  }
  return peaks;
};

/** Where a tracker that has found the whole curve's highest point works; all zeros in the dark. */
export const highestPeak = (panel: UnevenPanel): OperatingPoint =>
  powerPeaks(panel).reduce((best, peak) => (peak.watts > best.watts ? peak : best), {
    volts: 0,
    amps: 0,
    watts: 0,
  });

/** Where a tracker that came down from the open circuit stays: the top at the highest voltage; all zeros in the dark. */
export const stuckPeak = (panel: UnevenPanel): OperatingPoint =>
  powerPeaks(panel).at(-1) ?? { volts: 0, amps: 0, watts: 0 };

/** Voltage with the terminals apart, V. */
export const unevenOpenCircuitV = ({ groups }: UnevenPanel): number =>
  groups.reduce(
    (sum, group) =>
      sum + group.reduce((inGroup, { share, curve }) => inGroup + share * openCircuitV(curve), 0),
    0,
  );
