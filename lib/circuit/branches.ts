import { type CurrentTable, currentTable, logSaturationAt, tabledLambert } from "../panel/current-table.ts";
import { type DiodeReference, idealityRatio } from "../panel/diode-conditions.ts";
import { STC } from "../panel/linear-module.ts";

/** Alike panels in alike light, side by side, each on its own cable: one branch of a circuit. */
export interface Branch {
  /** The curve of one panel at standard test conditions. */
  readonly reference: DiodeReference;
  readonly howMany: number;
  /** Share of each panel's current that is left after dust and other constant losses, 0 to 1. */
  readonly shareLeft: number;
  /** The panel's own cable, out and back, ohm. */
  readonly cableOhm: number;
  /** Forward drop of its blocking diode, V; 0 for none that costs voltage. */
  readonly blockingV: number;
}

/** The light on a branch and its warmth, one row a step. */
export interface BranchLight {
  /** Light past the glass, W/m2. */
  readonly absorbed: Float64Array;
  /** Cell temperature, degC. */
  readonly cellC: Float64Array;
}

/** Below this the closed form divides by next to nothing; no plug or wire has less. */
const LEAST_SERIES_OHM = 1e-4;

/** Newton steps for an open-circuit voltage: from above, on a curve that bends one way; two or three are usual. */
const MOST_STEPS = 40;
const CLOSE_V = 1e-6;

/**
 * Branches in parallel at one moment, on their full curves.
 *
 * The cable is in series with the panel, so a panel with its cable is the same single-diode curve with a larger series
 * resistance, and its current at the joint's voltage is explicit: Lambert's W (Jain & Kapoor 2004), tabled. A further
 * resistance that all the current passes may be folded in where there is one branch.
 *
 * Current never flows back into a branch (a blocking diode, or a controller that opens): a dark panel takes nothing from
 * a lit one; the one per cent or so of its Isc that it would take is left out. Values stand in plain columns and are
 * reused from row to row: nothing is allocated.
 */
export class ParallelBranches {
  readonly count: number;
  readonly #tables: readonly CurrentTable[];
  readonly #times: Float64Array;
  readonly #blockingV: Float64Array;
  readonly #series: Float64Array;
  readonly #photocurrent: Float64Array;
  readonly #logSaturation: Float64Array;
  readonly #ideality: Float64Array;
  readonly #shuntS: Float64Array;
  /** The closed form at a voltage V: I = (photocurrent - V shuntS) / divider - gain W(exp(base + V / spread)). */
  readonly #divider: Float64Array;
  readonly #spread: Float64Array;
  readonly #base: Float64Array;
  readonly #gain: Float64Array;
  /** Open-circuit voltage of a panel, once asked for; NaN until then. */
  readonly #openV: Float64Array;
  /** Of the voltage last asked at the joint: total current, A, its slope, A/V, and the slope's slope. */
  amps = 0;
  slope = 0;
  bend = 0;

  /** @param commonOhm Resistance that the joint's whole current passes; only where there is one branch. */
  constructor(branches: readonly Branch[], commonOhm = 0) {
    if (branches.length !== 1 && commonOhm !== 0) {
      throw new RangeError("ParallelBranches: expected one branch with a common resistance");
    }
    this.count = branches.length;
    this.#tables = branches.map(({ reference }) => currentTable(reference));
    this.#times = Float64Array.from(branches, ({ howMany, shareLeft }) => howMany * shareLeft);
    this.#blockingV = Float64Array.from(branches, ({ blockingV }) => blockingV);
    this.#series = Float64Array.from(branches, ({ reference, cableOhm, shareLeft, howMany }) =>
      Math.max(LEAST_SERIES_OHM, reference.seriesOhm + shareLeft * (cableOhm + howMany * commonOhm)),
    );
    const column = () => new Float64Array(branches.length);
    this.#photocurrent = column();
    this.#logSaturation = column();
    this.#ideality = column();
    this.#shuntS = column();
    this.#divider = column();
    this.#spread = column();
    this.#base = column();
    this.#gain = column();
    this.#openV = column();
  }

  /** Sets the light on one branch, W/m2 past the glass, and its cell temperature, degC. */
  light(branch: number, absorbedWm2: number, cellC: number): void {
    const { reference } = this.#tables[branch];
    const suns = absorbedWm2 / STC.irradiance;
    const warmer = cellC - STC.cellC;
    const photocurrent = Math.max(0, suns * (reference.photocurrentA + reference.photocurrentPerK * warmer));
    const ideality = reference.idealityV * idealityRatio(cellC);
    const shuntS = suns / reference.shuntOhm;
    const logI0 = logSaturationAt(this.#tables[branch], cellC);
    const series = this.#series[branch];
    const divider = 1 + series * shuntS;
    const spread = ideality * divider;
    this.#photocurrent[branch] = photocurrent;
    this.#logSaturation[branch] = logI0;
    this.#ideality[branch] = ideality;
    this.#shuntS[branch] = shuntS;
    this.#divider[branch] = divider;
    this.#spread[branch] = spread;
    this.#base[branch] = logI0 + Math.log(series / spread) + (series * photocurrent) / spread;
    this.#gain[branch] = ideality / series;
    this.#openV[branch] = Number.NaN;
  }

  /** Total current at a voltage at the joint, A, 0 or more; `slope` and `bend` go with it. NaN in, NaN out. */
  at(jointV: number): number {
    this.amps = 0;
    this.slope = 0;
    this.bend = 0;
    for (let branch = 0; branch < this.count; branch += 1) {
      const volts = jointV + this.#blockingV[branch];
      const divider = this.#divider[branch];
      const shuntS = this.#shuntS[branch];
      const spread = this.#spread[branch];
      const gain = this.#gain[branch];
      const lambert = tabledLambert(this.#base[branch] + volts / spread);
      const amps = (this.#photocurrent[branch] - volts * shuntS) / divider - gain * lambert;
      if (amps <= 0) continue;
      const times = this.#times[branch];
      const damped = 1 / (1 + lambert);
      const falling = (gain / spread) * lambert * damped;
      this.amps += times * amps;
      this.slope -= times * (shuntS / divider + falling);
      this.bend -= times * (falling / spread) * damped * damped;
    }
    return this.amps;
  }

  /** Voltage at the joint above which a branch gives nothing, V; 0 in the dark. */
  openV(branch: number): number {
    if (Number.isNaN(this.#openV[branch])) this.#openV[branch] = this.#solveOpenV(branch);
    return Math.max(0, this.#openV[branch] - this.#blockingV[branch]);
  }

  #solveOpenV(branch: number): number {
    const photocurrent = this.#photocurrent[branch];
    if (!(photocurrent > 0)) return 0;
    const ideality = this.#ideality[branch];
    const shuntS = this.#shuntS[branch];
    const logI0 = this.#logSaturation[branch];
    let volts = ideality * (Math.log(photocurrent) - logI0);
    for (let step = 0; step < MOST_STEPS; step += 1) {
      const dark = Math.exp(logI0 + volts / ideality);
      const move = (dark + volts * shuntS - photocurrent) / (dark / ideality + shuntS);
      volts -= move;
      if (!(Math.abs(move) > CLOSE_V)) break;
    }
    return Math.max(0, volts);
  }

  /** About where a branch alone gives most, V: Green's rule for an ideal diode, less the drop in its series resistance. */
  usualPeakV(branch: number, openV: number): number {
    const ideality = this.#ideality[branch];
    const ideal = openV - ideality * Math.log(openV / ideality + 0.72);
    return Math.max(0.5 * openV, ideal - 0.9 * this.#series[branch] * this.#photocurrent[branch]);
  }
}
