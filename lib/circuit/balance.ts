import type { BatteryModel } from "./battery.ts";

/**
 * Where the energy went, Wh, added up over any number of steps. Each entry is counted where it happens and none is
 * made up from the others, so that {@link balanceResidual} can find a slip.
 */
export interface EnergyLedger {
  /** What the controller could put out, whether or not anything took it. */
  offered: number;
  /** What a charger from outside gave: hook-up, alternator, generator. */
  toppedUp: number;
  /** What the loads got. */
  used: number;
  /** What the loads asked for and did not get. */
  short: number;
  /** What the controllers took for themselves. */
  ownUse: number;
  /** What the battery's heater took. */
  heater: number;
  /** Lost on the way into and out of storage, and by self-discharge. */
  chargeLoss: number;
  dischargeLoss: number;
  selfDischarge: number;
  /** Of what was curtailed: what the battery would have taken but for the cold. */
  tooCold: number;
  /** Offered and taken by nothing: the battery was full, too cold, or could not take it fast enough. */
  curtailed: number;
}

/** A ledger with nothing in it. */
export const emptyLedger = (): EnergyLedger => ({
  offered: 0,
  toppedUp: 0,
  used: 0,
  short: 0,
  ownUse: 0,
  heater: 0,
  chargeLoss: 0,
  dischargeLoss: 0,
  selfDischarge: 0,
  tooCold: 0,
  curtailed: 0,
});

/** Empties a ledger for its next use. */
export const clearLedger = (ledger: EnergyLedger): void => {
  ledger.offered = 0;
  ledger.toppedUp = 0;
  ledger.used = 0;
  ledger.short = 0;
  ledger.ownUse = 0;
  ledger.heater = 0;
  ledger.chargeLoss = 0;
  ledger.dischargeLoss = 0;
  ledger.selfDischarge = 0;
  ledger.tooCold = 0;
  ledger.curtailed = 0;
};

/** Below this nothing has moved: the rounding of what is stored would be a share of it. */
const NOTHING_WH = 1e-6;

/**
 * What the books do not account for, as a share of throughput:
 * offered + topped up - (stored at the end - at the start) - used - lost - curtailed, over all that moved.
 *
 * Rounding leaves about 1e-15 a step; more than 1e-9 is a fault. 0 when less than a microwatt-hour moved.
 *
 * @param startWh Stored at the start, Wh above the floor.
 * @param endWh Stored at the end.
 */
export const balanceResidual = (ledger: EnergyLedger, startWh: number, endWh: number): number => {
  const { offered, used, ownUse, heater, chargeLoss, dischargeLoss, selfDischarge, curtailed } = ledger;
  const lost = ownUse + heater + chargeLoss + dischargeLoss + selfDischarge;
  const put = offered + ledger.toppedUp;
  const throughput = put + used + lost + curtailed + Math.abs(endWh - startWh);
  return throughput < NOTHING_WH ? 0 : (put - (endWh - startWh) - used - lost - curtailed) / throughput;
};

/** What one step asks of the battery. Powers are means over the step, W, 0 or more. */
export interface StepDemand {
  offeredW: number;
  loadW: number;
  ownW: number;
  /** A charger from outside, at its most. What the panels offer is taken first. */
  chargerW: number;
}

/** What a battery's temperature lets it do. */
export interface BatteryWarmth {
  /** What it fills to, Wh above the floor. */
  fullWh: number;
  /** Too cold to be charged unless it is heated. */
  tooCold: boolean;
  /** Too cold to give anything. */
  frozen: boolean;
}

/** What a battery can do at a temperature, degC. */
export const warmthOf = (battery: BatteryModel, batteryC: number): BatteryWarmth => ({
  fullWh: battery.usableWh * battery.capacityShare(batteryC),
  tooCold: batteryC < battery.chargeAboveC,
  frozen: batteryC < battery.dischargeAboveC,
});

/**
 * Wh that go into storage in some hours when `inW` would, and the battery takes no more than what is missing divided by
 * its taper: dE/dt = min(inW, (full - E) / taper), solved exactly, so that the length of a step does not matter.
 */
const chargedWh = (
  storedWh: number,
  inW: number,
  fullWh: number,
  taperHours: number,
  hours: number,
): number => {
  if (storedWh >= fullWh || inW <= 0) return 0;
  const kneeWh = fullWh - inW * taperHours;
  if (storedWh >= kneeWh) return (fullWh - storedWh) * -Math.expm1(-hours / taperHours);
  const toKnee = (kneeWh - storedWh) / inW;
  if (toKnee >= hours) return inW * hours;
  return fullWh - inW * taperHours * Math.exp(-(hours - toKnee) / taperHours) - storedWh;
};

/**
 * One step of the battery: loads are served from what is offered first; what is over goes into storage as far as the
 * battery takes it; what is missing comes out of storage down to the floor. More stored, more offered, a larger
 * battery or a lower load never leaves less stored at the end.
 *
 * In the cold the battery fills only to the share of its capacity that it then has; what it already holds stays. Too
 * cold to charge, it first lets its heater run from what is over. Below the limit of discharge it gives nothing.
 *
 * @param storedWh Stored at the start of the step, Wh above the floor.
 * @param hours Length of the step.
 * @param ledger Adds what happened; `null` to only look ahead.
 * @returns Stored at the end, 0 to `usableWh`.
 */
export const stepBattery = (
  battery: BatteryModel,
  { fullWh, tooCold, frozen }: Readonly<BatteryWarmth>,
  storedWh: number,
  { offeredW, loadW, ownW, chargerW }: Readonly<StepDemand>,
  hours: number,
  ledger: EnergyLedger | null,
): number => {
  const held = storedWh * Math.exp(-battery.selfDischargePerHour * hours);
  const over = offeredW + chargerW - loadW - ownW;
  if (over >= 0) {
    const heaterW = tooCold ? Math.min(over, battery.heaterW) : 0;
    const inW = battery.chargeShare * Math.min(over - heaterW, battery.maxChargeW);
    const blocked = tooCold && battery.heaterW === 0;
    const wouldGain = chargedWh(held, inW, fullWh, battery.taperHours, hours);
    const gained = blocked ? 0 : wouldGain;
    // Rounding may carry the sum past full by its last digit.
    const after = Math.min(battery.usableWh, held + gained);
    if (ledger !== null) {
      const taken = (after - held) / battery.chargeShare;
      ledger.offered += offeredW * hours;
      ledger.used += loadW * hours;
      ledger.ownUse += ownW * hours;
      ledger.heater += heaterW * hours;
      ledger.chargeLoss += taken - (after - held);
      ledger.selfDischarge += storedWh - held;
      if (blocked) ledger.tooCold += wouldGain / battery.chargeShare;
      const unused = (over - heaterW) * hours - taken;
      const fromCharger = chargerW * hours - Math.min(unused, chargerW * hours);
      ledger.toppedUp += fromCharger;
      ledger.curtailed += unused - (chargerW * hours - fromCharger);
    }
    return after;
  }
  const drawn = frozen ? 0 : Math.min(held, (-over * hours) / battery.dischargeShare);
  const given = drawn * battery.dischargeShare;
  if (ledger !== null) {
    const supplied = (offeredW + chargerW) * hours + given;
    const ownUse = Math.min(ownW * hours, supplied);
    const used = Math.min(loadW * hours, supplied - ownUse);
    ledger.offered += offeredW * hours;
    ledger.toppedUp += chargerW * hours;
    ledger.ownUse += ownUse;
    ledger.used += used;
    ledger.short += loadW * hours - used;
    ledger.dischargeLoss += drawn - given;
    ledger.selfDischarge += storedWh - held;
  }
  return held - drawn;
};
