import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clearLedger } from "../../lib/circuit/balance.ts";
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
    storedWh = stepBattery(
      model,
      warmthOf(model, airC),
      storedWh,
      { offeredW, loadW, ownW, chargerW: 0 },
      hours,
      ledger,
    );
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
        expect(short.ledger.curtailed).toBeCloseTo(long.ledger.curtailed, 5);
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
    { offeredW, loadW, ownW: 0, chargerW: 0 },
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
    expect(ledger.curtailed).toBeCloseTo(5000 - 100 * (1 - Math.exp(-1)), 9);
  });

  test("the charge limit turns the rest away: 20 % of 1280 Wh an hour is 256 W", () => {
    const { endWh, ledger } = oneStep(plain({ maxChargePerHourPct: 20 }), 400, 0, 1);
    expect(endWh).toBeCloseTo(640 + 256, 9);
    expect(ledger.curtailed).toBeCloseTo(144, 9);
  });

  test("lithium is not charged below freezing unless heated, and the heater runs from what is over", () => {
    const cold = oneStep(plain({}), 100, 20, 1, -3);
    expect(cold.endWh).toBe(640);
    expect(cold.ledger.curtailed).toBeCloseTo(80, 9);
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

describe("the ledger", () => {
  const entries: EnergyLedger = {
    offered: 100,
    toppedUp: 0,
    used: 30,
    short: 7,
    ownUse: 1,
    heater: 2,
    chargeLoss: 3,
    dischargeLoss: 4,
    selfDischarge: 5,
    tooCold: 4,
    curtailed: 6,
  };

  test("says what its books do not account for, as a share of all that moved", () => {
    // 100 - 50 into storage - 30 - 15 lost - 6 curtailed = -1, of 100 + 30 + 15 + 6 + 50 = 201 Wh moved.
    expect(balanceResidual(entries, 10, 60)).toBeCloseTo(-1 / 201, 12);
    // 20 Wh out of storage: 100 + 20 - 30 - 15 - 6 = 69, of 171.
    expect(balanceResidual(entries, 60, 40)).toBeCloseTo(69 / 171, 12);
  });

  test("has nothing to say of less than a microwatt-hour", () => {
    expect(balanceResidual(emptyLedger(), 500, 500)).toBe(0);
    expect(balanceResidual({ ...emptyLedger(), offered: 0.9e-6 }, 500, 500)).toBe(0);
    expect(balanceResidual({ ...emptyLedger(), offered: 1e-6 }, 500, 500)).toBe(1);
  });

  test("is emptied of every entry", () => {
    const ledger = { ...entries };
    clearLedger(ledger);
    expect(ledger).toEqual(emptyLedger());
    expect(Object.values(ledger)).toEqual(Array.from({ length: 11 }, () => 0));
  });

  test("counts every entry of two steps where it happens, by hand", () => {
    const model = plain({
      chargeEfficiencyPct: 80,
      dischargeEfficiencyPct: 50,
      selfDischargePctPerMonth: 10,
      heaterW: 5,
    });
    const ledger = emptyLedger();
    // 730 h: a tenth of 640 Wh is gone. 1 W is over after 0.5 W of load and 0.25 W of the controller.
    const warm = stepBattery(
      model,
      warmthOf(model, 10),
      640,
      { offeredW: 1.75, loadW: 0.5, ownW: 0.25, chargerW: 0 },
      730,
      ledger,
    );
    expect(ledger.selfDischarge).toBeCloseTo(64, 9);
    expect(ledger.offered).toBeCloseTo(1277.5, 9);
    expect(ledger.used).toBeCloseTo(365, 9);
    expect(ledger.ownUse).toBeCloseTo(182.5, 9);
    // 730 Wh at 80 % are 584 Wh on top of 576 Wh, still below the 1216 Wh that it fills to at 10 degC.
    expect(warm).toBeCloseTo(1160, 9);
    expect(ledger.chargeLoss).toBeCloseTo((warm - 576) / 4, 9);
    expect(ledger.curtailed).toBeCloseTo(730 - (warm - 576) / 0.8, 9);
    expect(ledger.heater).toBe(0);
    // Below freezing 5 W of the 10 W over go into the heater for two hours; the other 5 W into storage.
    const cold = emptyLedger();
    const still = { ...model, selfDischargePerHour: 0 };
    expect(
      stepBattery(
        still,
        warmthOf(still, -1),
        640,
        { offeredW: 12, loadW: 1.5, ownW: 0.5, chargerW: 0 },
        2,
        cold,
      ),
    ).toBeCloseTo(648, 9);
    expect(cold).toMatchObject({ offered: 24, used: 3, ownUse: 1, heater: 10, short: 0, dischargeLoss: 0 });
    expect(cold.chargeLoss).toBeCloseTo(2, 9);
    expect(cold.curtailed).toBeCloseTo(0, 9);
    // 12 W wanting for two hours at 50 %: 48 Wh out of storage, half of them lost.
    const night = emptyLedger();
    expect(
      stepBattery(
        still,
        warmthOf(still, 20),
        640,
        { offeredW: 3, loadW: 14, ownW: 1, chargerW: 0 },
        2,
        night,
      ),
    ).toBeCloseTo(592, 9);
    expect(night).toMatchObject({ offered: 6, used: 28, ownUse: 2, short: 0, curtailed: 0, heater: 0 });
    expect(night.dischargeLoss).toBeCloseTo(24, 9);
  });

  test("an empty battery serves the controller first, then the load, and counts what went short", () => {
    const model = plain({ dischargeEfficiencyPct: 50 });
    const ledger = emptyLedger();
    // 4 Wh stored give 2 Wh, with 3 Wh of light: 5 Wh for 2 Wh of controller and 3 of 20 Wh of load.
    expect(
      stepBattery(model, warmthOf(model, 20), 4, { offeredW: 3, loadW: 20, ownW: 2, chargerW: 0 }, 1, ledger),
    ).toBe(0);
    expect(ledger).toMatchObject({ offered: 3, ownUse: 2, used: 3, short: 17, dischargeLoss: 2 });
    const dead = emptyLedger();
    // Not even the controller gets its two watts.
    stepBattery(model, warmthOf(model, 20), 0, { offeredW: 1, loadW: 20, ownW: 2, chargerW: 0 }, 1, dead);
    expect(dead).toMatchObject({ offered: 1, ownUse: 1, used: 0, short: 20, dischargeLoss: 0 });
  });

  test("only looks ahead when there is no ledger", () => {
    const model = plain({});
    for (const demand of [
      { offeredW: 100, loadW: 40, ownW: 1, chargerW: 0 },
      { offeredW: 10, loadW: 40, ownW: 1, chargerW: 0 },
    ]) {
      const told = stepBattery(model, warmthOf(model, 20), 640, demand, 1, emptyLedger());
      expect(stepBattery(model, warmthOf(model, 20), 640, demand, 1, null)).toBe(told);
    }
  });
});

describe("charging near full, by hand", () => {
  /** 1280 Wh, whole at 20 degC; takes at most what is missing over two hours. */
  const tapering = () => plain({ taperHours: 2, maxChargePerHourPct: 300 });

  test("at full power to where it tapers, then the rest of the step along the taper", () => {
    // 100 W meets the taper at 1280 - 200 = 1080 Wh: an hour and a half from 930 Wh; then 200 Wh are missing, of which
    // 1 - e^(-1/4) go in during the last half hour.
    const { endWh } = oneStep(tapering(), 100, 0, 2, 25, 930);
    expect(endWh).toBeCloseTo(1280 - 200 * Math.exp(-0.25), 9);
  });

  test("not at all past full, and a battery that held more than the cold lets it fill keeps it", () => {
    expect(oneStep(tapering(), 100, 0, 2, 25, 1280).endWh).toBe(1280);
    // At 0 degC lithium fills to 90 %: 1152 Wh.
    expect(oneStep(tapering(), 100, 0, 2, 0, 1200).endWh).toBe(1200);
    expect(oneStep(tapering(), 100, 0, 200, 0, 1100).endWh).toBeCloseTo(1152, 9);
  });
});
