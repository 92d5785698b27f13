import {
  type BatteryWarmth,
  balanceResidual,
  clearLedger,
  type EnergyLedger,
  emptyLedger,
  type StepDemand,
  stepBattery,
} from "../../circuit/balance.ts";
import type { BatteryModel } from "../../circuit/battery.ts";
import type { Harvest } from "../../circuit/harvest.ts";
import { type HeldStep, stepHeldBattery } from "../../circuit/held-step.ts";
import { type LoadCutOff, loadsComeBack } from "../../circuit/load-cut-off.ts";
import type { TopUp } from "../../circuit/top-up.ts";
import type { BatterySteps } from "./battery-steps.ts";
import type { Surroundings } from "./surroundings.ts";

/** What does not change from one sky to the next. */
export interface BatteryPlan {
  readonly battery: BatteryModel;
  /** What the controllers take day and night, W. */
  readonly ownW: number;
  /** Keeps loads off until the battery has recovered; `null` serves them again from the first light. */
  readonly cutOff: LoadCutOff | null;
  /** What is done when the charge reaches its floor; `null`: nothing, and the loads go without. */
  readonly topUp: TopUp | null;
}

/** A battery through one season under one sky: one value a day. Wh unless said otherwise. */
export interface BatteryDays {
  readonly offeredWh: Float64Array;
  /** What topping up gave, how often it began on that day, and hours that it ran. */
  readonly toppedUpWh: Float64Array;
  readonly topUps: Float64Array;
  readonly topUpHours: Float64Array;
  readonly wantedWh: Float64Array;
  readonly usedWh: Float64Array;
  readonly shortWh: Float64Array;
  readonly curtailedWh: Float64Array;
  readonly lostWh: Float64Array;
  /** Of what was curtailed: what the battery would have taken but for the cold. */
  readonly tooColdWh: Float64Array;
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
    toppedUpWh: column(),
    topUps: column(),
    topUpHours: column(),
    wantedWh: column(),
    usedWh: column(),
    shortWh: column(),
    curtailedWh: column(),
    lostWh: column(),
    tooColdWh: column(),
    lowest: column(),
    atEnd: column(),
    fullAfterNoonH: column(),
    residual: 0,
  };
};

/** A battery this near to what it fills to counts as full. */
const FULL_SHARE = 0.98;

/** A step takes no more than the loads ask, give or take its self-discharge. */
const NEARLY = 1.01;

/** Adds a day to the season's books. What the loads went without has moved nothing and closes no books. */
const addTo = (total: EnergyLedger, day: EnergyLedger): void => {
  total.offered += day.offered;
  total.toppedUp += day.toppedUp;
  total.used += day.used;
  total.ownUse += day.ownUse;
  total.heater += day.heater;
  total.chargeLoss += day.chargeLoss;
  total.dischargeLoss += day.dischargeLoss;
  total.selfDischarge += day.selfDischarge;
  total.curtailed += day.curtailed;
};

/** All that a step hangs on but its state of charge; kept and reused, so that a step allocates nothing. */
interface Moment {
  readonly battery: BatteryModel;
  readonly warmth: BatteryWarmth;
  readonly demand: StepDemand;
  /** Of a controller that holds the panel at the battery's voltage, else `null`; then the watts are known. */
  readonly held: HeldStep | null;
  readonly watts: Float64Array | null;
  /** What controllers of another kind give beside the held one; `null` where there are none. */
  readonly besideW: Float64Array | null;
  readonly litShare: Float64Array;
  readonly hours: number;
}

/** Lives one step from what is stored; without a ledger it only looks ahead. */
const liveStep = (
  { battery, warmth, demand, held, watts, besideW, litShare, hours }: Moment,
  storedWh: number,
  lit: number,
  ledger: EnergyLedger | null,
): number => {
  if (lit >= 0 && held !== null) {
    held.storedWh = storedWh;
    held.first = lit * battery.restVAt.length;
    held.besideW = besideW === null ? 0 : besideW[lit];
    held.share = litShare[lit];
    return stepHeldBattery(held, ledger);
  }
  demand.offeredW = lit >= 0 && watts !== null ? watts[lit] * litShare[lit] : 0;
  return stepBattery(battery, warmth, storedWh, demand, hours, ledger);
};

/** Whether a step would take what is stored down to the floor; most can be told by the loads alone. */
const reachesFloor = (moment: Moment, storedWh: number, lit: number): boolean => {
  const { battery, demand, hours } = moment;
  const mostWh = (demand.loadW + demand.ownW) * hours * NEARLY;
  return storedWh * battery.dischargeShare <= mostWh && liveStep(moment, storedWh, lit, null) <= 0;
};

/**
 * Runs a battery through a season, step by step, day and night.
 *
 * @param harvest What the circuit could put in, one row a row of the sun columns.
 * @param surroundings The battery's temperature and what it is asked for, on every step.
 * @param out Room to write into.
 */
export const runBattery = (
  { battery, ownW, cutOff, topUp }: BatteryPlan,
  steps: BatterySteps,
  harvest: Harvest,
  { batteryC, capacityShare, loadW }: Surroundings,
  out: BatteryDays,
): BatteryDays => {
  const { startsMs, perDay, hours, noonStep, row, litShare } = steps;
  const { usableWh, capacityWh } = battery;
  const reserveWh = capacityWh - usableWh;
  const demand: StepDemand = { offeredW: 0, loadW: 0, ownW, chargerW: 0 };
  const warmth: BatteryWarmth = { fullWh: usableWh, tooCold: false, frozen: false };
  const season = emptyLedger();
  const ledger = emptyLedger();
  const held: HeldStep | null =
    harvest.kind === "current"
      ? {
          battery,
          warmth,
          amps: harvest.amps,
          first: 0,
          besideW: 0,
          share: 0,
          storedWh: 0,
          demand,
          hours,
        }
      : null;
  const moment: Moment = {
    battery,
    warmth,
    demand,
    held,
    watts: harvest.kind === "power" ? harvest.watts : null,
    besideW: (harvest.kind === "current" ? harvest.besideW : undefined) ?? null,
    litShare,
    hours,
  };
  let storedWh = battery.startWh;
  /** Hours that topping up still lasts; 0: nothing is plugged in. */
  let pluggedH = 0;
  // Nothing above the floor: loads are cut off already.
  let loadsOff = cutOff !== null && storedWh <= 0;
  for (let day = 0; day < startsMs.length; day += 1) {
    clearLedger(ledger);
    let lowestWh = storedWh;
    let fullAtStep = Number.NaN;
    let [begun, ranH] = [0, 0];
    for (let at = 0; at < perDay; at += 1) {
      const now = day * perDay + at;
      const lit = row[now];
      const wantedW = loadW[now];
      const before = storedWh;
      demand.loadW = loadsOff ? 0 : wantedW;
      warmth.fullWh = usableWh * capacityShare[now];
      warmth.tooCold = batteryC[now] < battery.chargeAboveC;
      warmth.frozen = batteryC[now] < battery.dischargeAboveC;
      if (topUp !== null) {
        demand.chargerW = 0;
        if (pluggedH === 0 && reachesFloor(moment, storedWh, lit)) {
          pluggedH = topUp.hours;
          begun += 1;
        }
        if (pluggedH > 0) {
          const runsH = Math.min(hours, pluggedH);
          // What is plugged in carries the loads too, whatever a cut-off says; who tops up a frozen battery warms it first.
          loadsOff = false;
          warmth.tooCold = false;
          demand.loadW = wantedW;
          demand.chargerW = (topUp.powerW * runsH) / hours;
          ranH += runsH;
          pluggedH -= runsH;
        }
      }
      storedWh = liveStep(moment, storedWh, lit, ledger);
      if (topUp?.untilFull === true && storedWh >= FULL_SHARE * warmth.fullWh) pluggedH = 0;
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
    out.toppedUpWh[day] = ledger.toppedUp;
    out.topUps[day] = begun;
    out.topUpHours[day] = ranH;
    out.wantedWh[day] = ledger.used + ledger.short;
    out.usedWh[day] = ledger.used;
    out.shortWh[day] = ledger.short;
    out.curtailedWh[day] = ledger.curtailed;
    out.lostWh[day] =
      ledger.ownUse + ledger.heater + ledger.chargeLoss + ledger.dischargeLoss + ledger.selfDischarge;
    out.tooColdWh[day] = ledger.tooCold;
    out.lowest[day] = (reserveWh + lowestWh) / capacityWh;
    out.atEnd[day] = (reserveWh + storedWh) / capacityWh;
    out.fullAfterNoonH[day] = (fullAtStep + 0.5 - noonStep) * hours;
  }
  out.residual = balanceResidual(season, battery.startWh, storedWh);
  return out;
};
