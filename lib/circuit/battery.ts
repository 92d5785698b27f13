import { type Battery, keptAtC } from "../plan/battery.ts";
import { FOLLOWS_AIR_H } from "./battery-temperature.ts";
import { capacityShare, chargeOhm, nominalV, restV } from "./chemistry.ts";

/** States of charge, of the usable share, at which the rest voltage is kept for the loop. */
const VOLTAGE_NODES = 11;
const HOURS_A_MONTH = 730;

/**
 * A battery ready for the loop over a season. Energies are counted from the floor up: 0 is the state below which
 * nothing is taken out, `usableWh` is full.
 */
export interface BatteryModel {
  readonly capacityWh: number;
  readonly usableWh: number;
  readonly startWh: number;
  readonly chargeShare: number;
  readonly dischargeShare: number;
  readonly maxChargeW: number;
  readonly taperHours: number;
  /** Share of what is stored that is gone after an hour, as a rate, 1/h. */
  readonly selfDischargePerHour: number;
  readonly chargeAboveC: number;
  readonly dischargeAboveC: number;
  readonly heaterW: number;
  /** `null` when the battery follows the air. */
  readonly keptAtC: number | null;
  /** Hours in which it covers 63 % of a step of the air. */
  readonly followsAirH: number;
  /** Mean of its rest voltage over the usable share, V. */
  readonly meanV: number;
  /**
   * What an ampere-hour put in is booked at, V: the mean voltage plus the rise at the ten-hour rate. The charge efficiency
   * is a share of energy at the terminals and already holds that rise; at rest voltage it would be counted twice. Booked
   * so, 80 % of the energy of a flooded battery is 85 % of the ampere-hours, as a battery handbook has it for lead-acid
   * (0.85 in Ah beside 0.70 in Wh, both ways), whatever the current.
   */
  readonly chargingV: number;
  readonly chargeOhm: number;
  /** Rest voltage at evenly spaced states between floor and full. */
  readonly restVAt: Float64Array;
  /** Share of the capacity at a temperature, 0 to 1. */
  readonly capacityShare: (batteryC: number) => number;
}

/**
 * Makes a plan's battery ready: whole capacity x usable share, limits in watts, voltages at its nodes.
 *
 * Self-discharge is taken from what stands above the floor; the reserve below it is left alone (a few watt-hours a
 * month). A start below the floor is the floor.
 *
 * @example
 * const plan = readPlan({
 *   site: { latitudeDeg: 50, longitudeDeg: 8 },
 *   season: { from: "2027-06-01", to: "2027-06-30" },
 *   panels: [{ name: "prop", module: { powerW: 100 } }],
 *   battery: { chemistry: "AGM", capacityAh: 100 },
 * });
 * batteryModel(plan.battery).usableWh // 600
 */
export const batteryModel = (battery: Battery): BatteryModel => {
  const capacityWh = battery.capacityAh * nominalV(battery);
  const usableShare = battery.usablePct / 100;
  const usableWh = capacityWh * usableShare;
  const restVAt = Float64Array.from({ length: VOLTAGE_NODES }, (_, node) =>
    restV(battery, 1 - usableShare + (usableShare * node) / (VOLTAGE_NODES - 1)),
  );
  const meanV = restVAt.reduce((sum, volts) => sum + volts, 0) / VOLTAGE_NODES;
  const risingOhm = chargeOhm(battery);
  return {
    capacityWh,
    usableWh,
    startWh: Math.max(0, capacityWh * (battery.startPct / 100) - (capacityWh - usableWh)),
    chargeShare: battery.chargeEfficiencyPct / 100,
    dischargeShare: battery.dischargeEfficiencyPct / 100,
    maxChargeW: capacityWh * (battery.maxChargePerHourPct / 100),
    taperHours: battery.taperHours,
    selfDischargePerHour: -Math.log(1 - battery.selfDischargePctPerMonth / 100) / HOURS_A_MONTH,
    chargeAboveC: battery.chargeAboveC,
    dischargeAboveC: battery.dischargeAboveC,
    heaterW: battery.heaterW,
    keptAtC: keptAtC(battery),
    followsAirH: FOLLOWS_AIR_H[battery.stands],
    meanV,
    chargingV: meanV + (risingOhm * battery.capacityAh) / 10,
    chargeOhm: risingOhm,
    restVAt,
    capacityShare: (batteryC) => capacityShare(battery.chemistry, batteryC),
  };
};
