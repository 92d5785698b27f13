import { type BatteryWarmth, type EnergyLedger, type StepDemand, stepBattery } from "./balance.ts";
import type { BatteryModel } from "./battery.ts";

/** Share of the usable energy to which the end of a step is found. */
const CLOSE_SHARE = 1e-10;
const MOST_STEPS = 60;

/** Current of one row at a state of charge, A: straight between the battery's voltage nodes. */
const currentAtWh = (
  amps: Float64Array,
  first: number,
  nodes: number,
  storedWh: number,
  usableWh: number,
): number => {
  const at = (storedWh / usableWh) * (nodes - 1);
  const node = Math.max(0, Math.min(nodes - 2, at | 0));
  const lower = amps[first + node];
  return lower + (at - node) * (amps[first + node + 1] - lower);
};

/**
 * One step of a battery charged by a controller that holds the panel at the battery's voltage: the current follows the
 * voltage, and the voltage the state of charge.
 *
 * Solved for the state at the END of the step, where more stored always means less current: whatever the length of the
 * step, a fuller battery stays the fuller one. An ampere-hour is worth the battery's mean voltage at any state of charge.
 *
 * @param amps Currents at the battery's voltage nodes; this row's stand from `first` on.
 * @param share Part of the step in which they flow, 0 to 1.
 * @param demand What else the step asks; its `offeredW` is set here.
 * @returns Stored at the end, Wh above the floor.
 */
export const stepHeldBattery = (
  battery: BatteryModel,
  warmth: BatteryWarmth,
  storedWh: number,
  amps: Float64Array,
  first: number,
  share: number,
  demand: StepDemand,
  hours: number,
  ledger: EnergyLedger,
): number => {
  const { usableWh, meanV } = battery;
  const nodes = battery.restVAt.length;
  const endWith = (endWh: number): number => {
    demand.offeredW = share * meanV * currentAtWh(amps, first, nodes, endWh, usableWh);
    return stepBattery(battery, warmth, storedWh, demand, hours, null);
  };
  let low = endWith(usableWh);
  let high = endWith(0);
  for (let step = 0; step < MOST_STEPS && high - low > CLOSE_SHARE * usableWh; step += 1) {
    // The end reached from a guess lies on the other side of the answer; the two close in on it together.
    const guess = (low + high) / 2;
    const end = endWith(guess);
    if (end > guess) {
      low = guess;
      high = Math.min(high, end);
    } else {
      high = guess;
      low = Math.max(low, end);
    }
  }
  endWith((low + high) / 2);
  return stepBattery(battery, warmth, storedWh, demand, hours, ledger);
};
