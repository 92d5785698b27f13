import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type BatteryModel,
  balanceResidual,
  batteryModel,
  type EnergyLedger,
  emptyLedger,
  stepBattery,
  warmthOf,
} from "../../lib/circuit/index.ts";
import { type Battery, batterySchema } from "../../lib/plan/battery.ts";
import { type AnyStep, anyBattery, anySteps } from "./any.ts";

const RUNS = 10_000;
const HOURS = 1;

interface Lived {
  readonly ledger: EnergyLedger;
  readonly startWh: number;
  readonly endWh: number;
  /** Stored after each step, and what went short in it. */
  readonly stored: readonly number[];
  readonly short: readonly number[];
}

const live = (battery: Battery, steps: readonly AnyStep[], hours = HOURS, ownW = 0.4): Lived => {
  const model = batteryModel(battery);
  const ledger = emptyLedger();
  const stored: number[] = [];
  const short: number[] = [];
  let storedWh = model.startWh;
  for (const { offeredW, loadW, airC } of steps) {
    const before = ledger.short;
    storedWh = stepBattery(model, warmthOf(model, airC), storedWh, { offeredW, loadW, ownW }, hours, ledger);
    stored.push(storedWh);
    short.push(ledger.short - before);
  }
  return { ledger, startWh: model.startWh, endWh: storedWh, stored, short };
};

/** Rounding of sums of a few hundred terms, beside energies of up to 1e5 Wh. */
const CLOSE_WH = 1e-7;

describe("stepBattery", () => {
  test(`the books close to 1e-9 of throughput, over ${RUNS} random batteries and stretches`, () => {
    fc.assert(
      fc.property(
        anyBattery,
        anySteps,
        fc.double({ min: 0.02, max: 3, noNaN: true }),
        (battery, steps, hours) => {
          const { ledger, startWh, endWh } = live(battery, steps, hours);
          expect(Math.abs(balanceResidual(ledger, startWh, endWh))).toBeLessThanOrEqual(1e-9);
        },
      ),
      { numRuns: RUNS },
    );
  });

  test("what is stored never leaves its limits, and no entry of the ledger is negative", () => {
    fc.assert(
      fc.property(anyBattery, anySteps, (battery, steps) => {
        const { usableWh } = batteryModel(battery);
        const { ledger, stored } = live(battery, steps);
        for (const wh of stored) expect(wh >= 0 && wh <= usableWh).toBe(true);
        for (const [name, wh] of Object.entries(ledger)) expect(wh, name).toBeGreaterThanOrEqual(-CLOSE_WH);
      }),
      { numRuns: 2000 },
    );
  });

  test("a bigger battery never leaves more unserved, at any step", () => {
    fc.assert(
      fc.property(
        anyBattery,
        anySteps,
        fc.double({ min: 1, max: 5, noNaN: true }),
        (battery, steps, times) => {
          const small = live(battery, steps);
          const big = live({ ...battery, capacityAh: battery.capacityAh * times }, steps);
          small.short.forEach((wh, at) => {
            expect(big.short[at]).toBeLessThanOrEqual(wh + CLOSE_WH);
            expect(big.stored[at]).toBeGreaterThanOrEqual(small.stored[at] - CLOSE_WH);
          });
        },
      ),
      { numRuns: RUNS },
    );
  });

  test("a lower load never leaves more unserved, more light neither, and both leave more stored", () => {
    fc.assert(
      fc.property(
        anyBattery,
        anySteps,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (battery, steps, kept, brighter) => {
          const now = live(battery, steps);
          const frugal = live(
            battery,
            steps.map((step) => ({ ...step, loadW: step.loadW * kept })),
          );
          const sunny = live(
            battery,
            steps.map((step) => ({ ...step, offeredW: step.offeredW * brighter })),
          );
          now.short.forEach((wh, at) => {
            for (const better of [frugal, sunny]) {
              expect(better.short[at]).toBeLessThanOrEqual(wh + CLOSE_WH);
              expect(better.stored[at]).toBeGreaterThanOrEqual(now.stored[at] - CLOSE_WH);
            }
          });
        },
      ),
      { numRuns: RUNS },
    );
  });

  test("one long step is the same as many short ones while nothing changes sides", () => {
    fc.assert(
      fc.property(anyBattery, fc.double({ min: 0, max: 400, noNaN: true }), (given, offeredW) => {
        const battery = { ...given, selfDischargePctPerMonth: 0 };
        const long = live(battery, [{ offeredW, loadW: 0, airC: 20 }], 4, 0);
        const short = live(
          battery,
          Array.from({ length: 64 }, () => ({ offeredW, loadW: 0, airC: 20 })),
          4 / 64,
          0,
        );
        expect(short.endWh).toBeCloseTo(long.endWh, 6);
        expect(short.ledger.turnedAway).toBeCloseTo(long.ledger.turnedAway, 5);
      }),
      { numRuns: 500 },
    );
  });
});

const plain = (over: Partial<Battery>): BatteryModel =>
  batteryModel({
    ...batterySchema.parse({
      chemistry: "LiFePO4",
      capacityAh: 100,
      usablePct: 100,
      startPct: 50,
      chargeEfficiencyPct: 100,
      dischargeEfficiencyPct: 100,
      selfDischargePctPerMonth: 0,
      taperHours: 0.01,
    }),
    ...over,
  });

const oneStep = (
  model: BatteryModel,
  offeredW: number,
  loadW: number,
  hours: number,
  airC = 25,
  storedWh = model.startWh,
) => {
  const ledger = emptyLedger();
  const endWh = stepBattery(
    model,
    warmthOf(model, airC),
    storedWh,
    { offeredW, loadW, ownW: 0 },
    hours,
    ledger,
  );
  return { endWh, ledger };
};

describe("stepBattery by hand", () => {
  test("100 Ah of LiFePO4 is 1280 Wh; 60 W over for two hours at 90 % leaves 108 Wh more", () => {
    const model = plain({ chargeEfficiencyPct: 90 });
    const { endWh, ledger } = oneStep(model, 100, 40, 2);
    expect(model.capacityWh).toBe(1280);
    expect(endWh).toBeCloseTo(640 + 108, 9);
    expect(ledger.chargeLoss).toBeCloseTo(12, 9);
    expect(ledger.used).toBeCloseTo(80, 9);
  });

  test("40 W short for three hours at 80 % takes 150 Wh out", () => {
    const { endWh, ledger } = oneStep(plain({ dischargeEfficiencyPct: 80 }), 10, 50, 3);
    expect(endWh).toBeCloseTo(640 - 150, 9);
    expect(ledger.dischargeLoss).toBeCloseTo(30, 9);
    expect(ledger.short).toBe(0);
  });

  test("an empty battery gives what it has and the rest goes short", () => {
    const { endWh, ledger } = oneStep(plain({}), 0, 100, 1, 25, 30);
    expect(endWh).toBe(0);
    expect(ledger.used).toBeCloseTo(30, 9);
    expect(ledger.short).toBeCloseTo(70, 9);
  });

  test("near full it takes what is missing over the taper: 1 - 1/e of it in one taper", () => {
    const model = plain({ taperHours: 1, maxChargePerHourPct: 300 });
    const { endWh, ledger } = oneStep(model, 5000, 0, 1, 25, 1180);
    expect(endWh).toBeCloseTo(1180 + 100 * (1 - Math.exp(-1)), 9);
    expect(ledger.turnedAway).toBeCloseTo(5000 - 100 * (1 - Math.exp(-1)), 9);
  });

  test("the charge limit turns the rest away: 20 % of 1280 Wh an hour is 256 W", () => {
    const { endWh, ledger } = oneStep(plain({ maxChargePerHourPct: 20 }), 400, 0, 1);
    expect(endWh).toBeCloseTo(640 + 256, 9);
    expect(ledger.turnedAway).toBeCloseTo(144, 9);
  });

  test("lithium is not charged below freezing unless heated, and the heater runs from what is over", () => {
    const cold = oneStep(plain({}), 100, 20, 1, -3);
    expect(cold.endWh).toBe(640);
    expect(cold.ledger.turnedAway).toBeCloseTo(80, 9);
    const heated = oneStep(plain({ heaterW: 30 }), 100, 20, 1, -3);
    expect(heated.endWh).toBeCloseTo(690, 9);
    expect(heated.ledger.heater).toBeCloseTo(30, 9);
    const tooWeak = oneStep(plain({ heaterW: 30 }), 40, 20, 1, -3);
    expect(tooWeak.endWh).toBe(640);
    expect(tooWeak.ledger.heater).toBeCloseTo(20, 9);
  });

  test("2 % a month of self-discharge leaves 98 % after 730 hours", () => {
    const { endWh, ledger } = oneStep(plain({ selfDischargePctPerMonth: 2 }), 0, 0, 730);
    expect(endWh).toBeCloseTo(640 * 0.98, 9);
    expect(ledger.selfDischarge).toBeCloseTo(12.8, 9);
  });

  test("in the cold a lead-acid battery fills to less: at 10 degC to 1/1.19", () => {
    const model = batteryModel(
      batterySchema.parse({
        chemistry: "AGM",
        usablePct: 100,
        startPct: 20,
        taperHours: 0.01,
        maxChargePerHourPct: 300,
      }),
    );
    const { endWh } = oneStep(model, 3000, 0, 20, 10);
    expect(endWh).toBeCloseTo(1200 / 1.19, 1);
  });
});
