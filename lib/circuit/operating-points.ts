import type { OperatingPoint } from "../panel/single-diode.ts";
import type { Circuit } from "../plan/circuit.ts";
import type { BatteryModel } from "./battery.ts";
import { type Branch, ParallelBranches } from "./branches.ts";
import { currentIntoHeldV } from "./held-voltage.ts";
import { maxPowerV } from "./max-power.ts";
import { runOhm } from "./wire.ts";

/** A circuit's curve at the controller's input, at one light and warmth, and where each kind of controller works on it. */
export interface OperatingCurve {
  /** Current at a voltage at the controller's input, A. */
  readonly ampsAt: (volts: number) => number;
  readonly openV: number;
  /** Where power tracking settles. */
  readonly mppt: OperatingPoint;
  /** Where the panel is held at the voltage of a half-charged battery, plus the drop. */
  readonly pwm: OperatingPoint;
}

/** Drop of a PWM controller where the plan has none of that kind, V: the plan's own default. */
const USUAL_DROP_V = 0.3;

/**
 * The curve of some branches as a controller sees it, cables included, and the two operating points.
 *
 * The PWM point's watts are those that reach the battery's terminals: its current at the battery's mean voltage and the
 * rise that it makes. The MPPT point's are those at the controller's input.
 *
 * @param light Light past the glass, W/m2, and cell temperature, degC, the same for all branches.
 */
export const operatingCurve = (
  branches: readonly Branch[],
  circuit: Circuit,
  battery: BatteryModel,
  { absorbedWm2, cellC }: { readonly absorbedWm2: number; readonly cellC: number },
): OperatingCurve => {
  const parallel = new ParallelBranches(branches);
  let openV = 0;
  branches.forEach((_, branch) => {
    parallel.light(branch, absorbedWm2, cellC);
    openV = Math.max(openV, parallel.openV(branch));
  });
  const { controller } = circuit;
  const peakV = maxPowerV(parallel, 0);
  const peakA = Number.isNaN(peakV) ? 0 : parallel.at(peakV);
  const dropV = controller.kind === "pwm" ? controller.dropV : USUAL_DROP_V;
  const heldV = battery.restVAt[(battery.restVAt.length - 1) / 2] + dropV;
  const commonOhm = runOhm(circuit.batteryCable) + battery.chargeOhm;
  const heldA = currentIntoHeldV(parallel, heldV, commonOhm);
  return {
    ampsAt: (volts) => parallel.at(volts),
    openV,
    mppt: {
      volts: Number.isNaN(peakV) ? 0 : peakV,
      amps: peakA,
      watts: peakA * (Number.isNaN(peakV) ? 0 : peakV),
    },
    pwm: {
      volts: heldV + commonOhm * heldA,
      amps: heldA,
      watts: heldA * (battery.meanV + battery.chargeOhm * heldA),
    },
  };
};
