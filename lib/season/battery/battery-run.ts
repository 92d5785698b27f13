import {
  balanceResidual,
  clearLedger,
  type EnergyLedger,
  emptyLedger,
  type StepDemand,
  stepBattery,
  warmthOf,
} from "../../circuit/balance.ts";
import type { BatteryModel } from "../../circuit/battery.ts";
import type { Harvest } from "../../circuit/harvest.ts";
import { type HeldStep, stepHeldBattery } from "../../circuit/held-step.ts";
import { type LoadCutOff, loadsComeBack } from "../../circuit/load-cut-off.ts";
import type { LoadColumns } from "../../circuit/loads.ts";
import type { BatterySteps } from "./battery-steps.ts";

/** What does not change from one sky to the next. */
export interface BatteryPlan {
  readonly battery: BatteryModel;
  readonly loads: LoadColumns;
  /** What the controllers take day and night, W. */
  readonly ownW: number;
  /** Keeps loads off until the battery has recovered; `null` serves them again from the first light. */
  readonly cutOff: LoadCutOff | null;
}

/** A battery through one season under one sky: one value a day. Wh unless said otherwise. */
export interface BatteryDays {
  readonly offeredWh: Float64Array;
  readonly wantedWh: Float64Array;
  readonly usedWh: Float64Array;
  readonly shortWh: Float64Array;
  readonly curtailedWh: Float64Array;
  readonly lostWh: Float64Array;
  /** State of charge of the whole capacity, 0 to 1: the day's lowest, and at its end. */
  readonly lowest: Float64Array;
  readonly atEnd: Float64Array;
  /** Hours from solar noon at which the battery was first full on that day; NaN when it never was. */
  readonly fullAfterNoonH: Float64Array;
  /** What the season's books do not account for, as a share of throughput: rounding, below 1e-9. */
  residual: number;
}

/** Room for a season. */
export const emptyBatteryDays = (days: number): BatteryDays => {
  const column = () => new Float64Array(days);
  return {
    offeredWh: column(),
    wantedWh: column(),
    usedWh: column(),
    shortWh: column(),
    curtailedWh: column(),
    lostWh: column(),
    lowest: column(),
    atEnd: column(),
    fullAfterNoonH: column(),
    residual: 0,
  };
};

/** A battery this near to what it fills to counts as full. */
const FULL_SHARE = 0.98;

/** Adds a day to the season's books. What the loads went without has moved nothing and closes no books. */
const addTo = (total: EnergyLedger, day: EnergyLedger): void => {
  total.offered += day.offered;
  total.used += day.used;
  total.ownUse += day.ownUse;
  total.heater += day.heater;
  total.chargeLoss += day.chargeLoss;
  total.dischargeLoss += day.dischargeLoss;
  total.selfDischarge += day.selfDischarge;
  total.curtailed += day.curtailed;
};

/** Watts drawn in a step, coolers at this day's running share. */
const loadAt = ({ steadyW, cooling }: LoadColumns, step: number, duties: Float64Array): number => {
  let watts = steadyW[step];
  for (let cooler = 0; cooler < cooling.length; cooler += 1) {
    watts += duties[cooler] * cooling[cooler].runningW[step];
  }
  return watts;
};

/**
 * Runs a battery through a season, step by step, day and night.
 *
 * @param harvest What the circuit could put in, one row a row of the sun columns.
 * @param airC Air of each day, degC: for the battery, unless it is kept at a temperature, and for what is cooled.
 * @param out Room to write into.
 */
export const runBattery = (
  { battery, loads, ownW, cutOff }: BatteryPlan,
  steps: BatterySteps,
  harvest: Harvest,
  airC: Float64Array,
  out: BatteryDays,
): BatteryDays => {
  const { perDay, hours, noonStep, row, litShare } = steps;
  const { usableWh, capacityWh } = battery;
  const reserveWh = capacityWh - usableWh;
  const demand: StepDemand = { offeredW: 0, loadW: 0, ownW };
  const duties = new Float64Array(loads.cooling.length);
  const season = emptyLedger();
  const ledger = emptyLedger();
  const held: HeldStep | null =
    harvest.kind === "current"
      ? {
          battery,
          warmth: warmthOf(battery, 20),
          amps: harvest.amps,
          first: 0,
          share: 0,
          storedWh: 0,
          demand,
          hours,
        }
      : null;
  let storedWh = battery.startWh;
  // Nothing above the floor: loads are cut off already.
  let loadsOff = cutOff !== null && storedWh <= 0;
  for (let day = 0; day < airC.length; day += 1) {
    clearLedger(ledger);
    const warmth = warmthOf(battery, battery.keptAtC ?? airC[day]);
    if (held !== null) held.warmth = warmth;
    for (let cooler = 0; cooler < duties.length; cooler += 1) {
      duties[cooler] = loads.cooling[cooler].duty(airC[day]);
    }
    let lowestWh = storedWh;
    let fullAtStep = Number.NaN;
    for (let at = 0; at < perDay; at += 1) {
      const step = day * perDay + at;
      const lit = row[step];
      const wantedW = loadAt(loads, step, duties);
      const before = storedWh;
      demand.loadW = loadsOff ? 0 : wantedW;
      if (lit >= 0 && held !== null) {
        held.storedWh = storedWh;
        held.first = lit * battery.restVAt.length;
        held.share = litShare[lit];
        storedWh = stepHeldBattery(held, ledger);
      } else {
        demand.offeredW = lit >= 0 && harvest.kind === "power" ? harvest.watts[lit] * litShare[lit] : 0;
        storedWh = stepBattery(battery, warmth, storedWh, demand, hours, ledger);
      }
      if (cutOff !== null) {
        if (loadsOff) {
          ledger.short += wantedW * hours;
          loadsOff = !loadsComeBack(cutOff, battery, storedWh, storedWh - before, hours);
        } else {
          loadsOff = storedWh <= 0;
        }
      }
      if (storedWh < lowestWh) lowestWh = storedWh;
      if (Number.isNaN(fullAtStep) && lit >= 0 && storedWh >= FULL_SHARE * warmth.fullWh) fullAtStep = at;
    }
    addTo(season, ledger);
    out.offeredWh[day] = ledger.offered;
    out.wantedWh[day] = ledger.used + ledger.short;
    out.usedWh[day] = ledger.used;
    out.shortWh[day] = ledger.short;
    out.curtailedWh[day] = ledger.curtailed;
    out.lostWh[day] =
      ledger.ownUse + ledger.heater + ledger.chargeLoss + ledger.dischargeLoss + ledger.selfDischarge;
    out.lowest[day] = (reserveWh + lowestWh) / capacityWh;
    out.atEnd[day] = (reserveWh + storedWh) / capacityWh;
    out.fullAfterNoonH[day] = (fullAtStep + 0.5 - noonStep) * hours;
  }
  out.residual = balanceResidual(season, battery.startWh, storedWh);
  return out;
};
