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

/** A held step: what stays the same while its end is sought. Kept and reused, so that a step allocates nothing. */
export interface HeldStep {
  readonly battery: BatteryModel;
  warmth: BatteryWarmth;
  /** Currents at the battery's voltage nodes; this row's stand from `first` on. */
  readonly amps: Float64Array;
  first: number;
  /** What controllers beside it that track power bring, W at the terminals; 0 where there are none. */
  besideW: number;
  /** Part of the step in which they flow, 0 to 1. */
  share: number;
  /** Stored at the start, Wh above the floor. */
  storedWh: number;
  /** What else the step asks; its `offeredW` is set here. */
  readonly demand: StepDemand;
  readonly hours: number;
}

/** Where a step ends when its current is that of a battery at `endWh`. */
const endReached = (held: HeldStep, endWh: number, ledger: EnergyLedger | null): number => {
  const { battery, demand } = held;
  const { usableWh, chargingV } = battery;
  const amps = currentAtWh(held.amps, held.first, battery.restVAt.length, endWh, usableWh);
  demand.offeredW = held.share * (chargingV * amps + held.besideW);
  return stepBattery(battery, held.warmth, held.storedWh, demand, held.hours, ledger);
};

/** The end that is also the one reached, by halving, if need be: it lies between what is supposed and what is reached. */
const endBetween = (held: HeldStep, one: number, other: number): number => {
  const close = CLOSE_SHARE * held.battery.usableWh;
  let low = Math.min(one, other);
  let high = Math.max(one, other);
  for (let step = 0; step < MOST_STEPS && high - low > close; step += 1) {
    const guess = (low + high) / 2;
    const end = endReached(held, guess, null);
    if (end > guess) {
      low = guess;
      high = Math.min(high, end);
    } else {
      high = guess;
      low = Math.max(low, end);
    }
  }
  return (low + high) / 2;
};

/**
 * One step of a battery charged by a controller that holds the panel at the battery's voltage: the current follows the
 * voltage, and the voltage the state of charge.
 *
 * Solved for the state at the END of the step, where more stored always means less current: whatever the length of the
 * step, a fuller battery stays the fuller one. An ampere-hour is booked at the battery's charging voltage at any state of
 * charge: see {@link BatteryModel.chargingV}.
 *
 * @param ledger Adds what happened; `null` to only look ahead.
 * @returns Stored at the end, Wh above the floor.
 */
export const stepHeldBattery = (held: HeldStep, ledger: EnergyLedger | null): number => {
  const { storedWh } = held;
  // The end reached falls gently with the end supposed: where a straight line through two of them crosses is next to right.
  const once = endReached(held, storedWh, null);
  const twice = endReached(held, once, null);
  const supposed =
    once === storedWh ? once : once + (twice - once) / (1 - (twice - once) / (once - storedWh));
  const end = endReached(held, supposed, null);
  return endReached(held, endBetween(held, supposed, end), ledger);
};
