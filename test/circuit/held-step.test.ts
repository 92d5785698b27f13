import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type HeldStep, stepHeldBattery } from "../../lib/circuit/held-step.ts";
import {
  balanceResidual,
  batteryModel,
  type EnergyLedger,
  emptyLedger,
  warmthOf,
} from "../../lib/circuit/index.ts";
import { type Battery, batterySchema } from "../../lib/plan/battery.ts";
import { anyBattery } from "./any.ts";

const share = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });

/** Currents that fall with the battery's voltage, as a panel's do: one at each of its eleven nodes. */
const anyAmps = fc
  .tuple(share(0, 25), fc.array(share(0, 1), { minLength: 10, maxLength: 10 }))
  .map(([most, falls]) => {
    const amps = [most];
    for (const fall of falls) amps.push((amps.at(-1) ?? 0) * fall);
    return amps;
  });

const anyHours = fc.array(fc.record({ amps: anyAmps, loadW: share(0, 300), airC: share(-15, 35) }), {
  minLength: 1,
  maxLength: 24,
});

type Hours = readonly { readonly amps: readonly number[]; readonly loadW: number; readonly airC: number }[];

const live = (given: Battery, hours: Hours, stronger = 1, kept = 1) => {
  const battery = batteryModel(given);
  const ledger: EnergyLedger = emptyLedger();
  const stored: number[] = [];
  const short: number[] = [];
  let storedWh = battery.startWh;
  for (const { amps, loadW, airC } of hours) {
    const held: HeldStep = {
      battery,
      warmth: warmthOf(battery, airC),
      amps: Float64Array.from(amps, (one) => one * stronger),
      first: 0,
      besideW: 0,
      share: 1,
      storedWh,
      demand: { offeredW: 0, loadW: loadW * kept, ownW: 0.1, chargerW: 0 },
      hours: 1,
    };
    const before = ledger.short;
    storedWh = stepHeldBattery(held, ledger);
    stored.push(storedWh);
    short.push(ledger.short - before);
  }
  return { battery, ledger, stored, short, endWh: storedWh };
};

/** The end of a step is found to 1e-10 of the usable energy, at most some 1e-5 Wh of the largest battery here. */
const CLOSE_WH = 1e-4;

describe("stepHeldBattery", () => {
  test("the books close and charge stays within its limits, over 10000 random batteries and days", () => {
    fc.assert(
      fc.property(anyBattery, anyHours, (given, hours) => {
        const { battery, ledger, stored, endWh } = live(given, hours);
        expect(Math.abs(balanceResidual(ledger, battery.startWh, endWh))).toBeLessThanOrEqual(1e-9);
        for (const wh of stored) expect(wh >= 0 && wh <= battery.usableWh).toBe(true);
      }),
      { numRuns: 10_000 },
    );
  }, 120_000);

  test("a bigger battery, a lower load or a stronger panel never leaves more unserved", () => {
    fc.assert(
      fc.property(
        anyBattery,
        anyHours,
        share(1, 4),
        share(1, 3),
        share(0, 1),
        (given, hours, times, stronger, kept) => {
          const now = live(given, hours);
          const others = [
            live({ ...given, capacityAh: given.capacityAh * times }, hours),
            live(given, hours, stronger),
            live(given, hours, 1, kept),
          ];
          now.short.forEach((wh, hour) => {
            for (const other of others) {
              expect(other.short[hour]).toBeLessThanOrEqual(wh + CLOSE_WH);
              expect(other.stored[hour]).toBeGreaterThanOrEqual(now.stored[hour] - CLOSE_WH);
            }
          });
        },
      ),
      { numRuns: 2000 },
    );
  }, 120_000);

  test("ends where the current of the end itself leads: 10 A at 13 V for an hour, falling to nothing when full", () => {
    const given = batterySchema.parse({
      chemistry: "AGM",
      capacityAh: 10,
      usablePct: 100,
      startPct: 50,
      chargeEfficiencyPct: 100,
      selfDischargePctPerMonth: 0,
      taperHours: 0.01,
      maxChargePerHourPct: 300,
    });
    const amps = Array.from({ length: 11 }, (_, node) => 10 - node);
    const { battery, endWh } = live(given, [{ amps, loadW: 0, airC: 25.9 }]);
    const atEnd = 10 - (10 * endWh) / battery.usableWh;
    const capacity = battery.usableWh * battery.capacityShare(25.9);
    // 0.1 W goes to the controller itself; near full the taper holds it back.
    const reached = Math.min(capacity, 60 + battery.chargingV * atEnd - 0.1);
    expect(endWh).toBeCloseTo(reached, 0);
  });
});

describe("stepHeldBattery by hand", () => {
  /** Loses nothing, takes all it is offered, follows its currents alone. */
  const plain = (over: object = {}) =>
    batteryModel(
      batterySchema.parse({
        chemistry: "AGM",
        capacityAh: 10,
        usablePct: 100,
        chargeEfficiencyPct: 100,
        dischargeEfficiencyPct: 100,
        selfDischargePctPerMonth: 0,
        taperHours: 0.01,
        maxChargePerHourPct: 300,
        ...over,
      }),
    );

  const step = (rows: readonly (readonly number[])[], row: number, over: Partial<HeldStep> = {}) => {
    const battery = over.battery ?? plain();
    const ledger = emptyLedger();
    const endWh = stepHeldBattery(
      {
        battery,
        warmth: warmthOf(battery, 30),
        amps: Float64Array.from(rows.flat()),
        first: 11 * row,
        besideW: 0,
        share: 1,
        storedWh: 40,
        demand: { offeredW: 0, loadW: 0, ownW: 0, chargerW: 0 },
        hours: 0.5,
        ...over,
      },
      ledger,
    );
    return { endWh, ledger };
  };

  /** 120 Wh over ten spans: 6 A when empty, and 0.05 A less for each Wh, down to nothing when full. */
  const straight = Array.from({ length: 11 }, (_, node) => 6 - 0.6 * node);
  const bright = straight.map((amps) => 2 * amps);

  test("straight currents: the end is where the current of the end leads", () => {
    const { chargingV } = plain();
    // E = 40 + 0.5 x V x (6 - 0.05 E), so E = (40 + 3 V) / (1 + 0.025 V); from empty 3 V / (1 + 0.025 V).
    expect(step([straight], 0).endWh).toBeCloseTo((40 + 3 * chargingV) / (1 + 0.025 * chargingV), 6);
    expect(step([straight], 0, { storedWh: 0 }).endWh).toBeCloseTo(
      (3 * chargingV) / (1 + 0.025 * chargingV),
      6,
    );
  });

  test("reads the currents of its own row", () => {
    const { chargingV } = plain();
    const rows = [bright, straight, bright];
    expect(step(rows, 1).endWh).toBeCloseTo((40 + 3 * chargingV) / (1 + 0.025 * chargingV), 6);
    expect(step(rows, 2).endWh).toBeCloseTo((40 + 6 * chargingV) / (1 + 0.05 * chargingV), 6);
  });

  test("flows in the lit part of the step alone, and serves loads first", () => {
    const { chargingV } = plain();
    const { endWh, ledger } = step([straight], 0, {
      besideW: 0,
      share: 0.4,
      demand: { offeredW: 0, loadW: 8, ownW: 2, chargerW: 0 },
    });
    // E = 40 + 0.5 (0.4 V (6 - 0.05 E) - 10)
    expect(endWh).toBeCloseTo((35 + 1.2 * chargingV) / (1 + 0.01 * chargingV), 6);
    expect(ledger.offered).toBeCloseTo(endWh - 35, 6);
    expect(ledger.used).toBeCloseTo(4, 12);
    expect(ledger.ownUse).toBeCloseTo(1, 12);
    expect(balanceResidual(ledger, 40, endWh)).toBeCloseTo(0, 12);
  });

  test("currents with a kink: still where the current of the end leads", () => {
    // Level at 10 A to 96 Wh (the ninth node), then straight down to nothing at 120 Wh.
    const kinked = [10, 10, 10, 10, 10, 10, 10, 10, 10, 5, 0];
    const { chargingV } = plain();
    // From 90 Wh: E = 90 + 0.5 V (50 - 5 E / 12), so E = (90 + 25 V) / (1 + 5 V / 24).
    const end = (90 + 25 * chargingV) / (1 + (5 / 24) * chargingV);
    expect(end).toBeGreaterThan(96);
    expect(step([kinked], 0, { storedWh: 90 }).endWh).toBeCloseTo(end, 6);
    // From 10 Wh it stays on the level: 10 + 5 V.
    expect(step([kinked], 0, { storedWh: 10 }).endWh).toBeCloseTo(10 + 5 * chargingV, 9);
  });

  test("a current that a full battery stops at once ends the step just short of full", () => {
    const cliff = [20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 0];
    const { chargingV } = plain();
    // From 100 Wh: E = 100 + 0.5 V (200 - 5 E / 3).
    const end = (100 + 100 * chargingV) / (1 + (5 / 6) * chargingV);
    expect(step([cliff], 0, { storedWh: 100 }).endWh).toBeCloseTo(end, 6);
  });

  test("nothing flows and nothing is drawn: it stays where it is, to the last digit", () => {
    const { endWh, ledger } = step([straight.map(() => 0)], 0, { storedWh: 71.3 });
    expect(endWh).toBe(71.3);
    expect(ledger).toEqual(emptyLedger());
  });

  test("looks few times: four for straight currents, and no more than a halving takes for any", () => {
    const looksAt = (row: readonly number[], storedWh: number) => {
      let looks = 0;
      const demand = {
        loadW: 0,
        ownW: 0,
        chargerW: 0,
        get offeredW() {
          return this.given;
        },
        /** Set once for each look at where the step would end. */
        set offeredW(watts: number) {
          this.given = watts;
          looks += 1;
        },
        given: 0,
      };
      step([row], 0, { storedWh, demand });
      return looks;
    };
    // As if it ended where it began, where that leads, where the line through both crosses, and for the books.
    expect(looksAt(straight, 40)).toBe(4);
    expect(looksAt(straight, 0)).toBe(4);
    expect(looksAt(straight, 120)).toBe(4);
    // 120 Wh halved down to 1e-10 of it: 34 times.
    const cliff = [20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 0];
    for (let storedWh = 0; storedWh <= 120; storedWh += 5) {
      expect(looksAt(cliff, storedWh)).toBeLessThanOrEqual(4 + 34);
    }
  });
});
