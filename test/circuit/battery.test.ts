import { describe, expect, test } from "vitest";
import {
  batteryModel,
  capacityShare,
  dailyAh,
  nominalV,
  restV,
  storageDays95,
  storageWh,
  warmthOf,
} from "../../lib/circuit/index.ts";
import { batterySchema } from "../../lib/plan/battery.ts";
import { CHEMISTRIES, type Chemistry } from "../../lib/plan/index.ts";

const model = (given: object) => batteryModel(batterySchema.parse({ chemistry: "LiFePO4", ...given }));

describe("batteryModel", () => {
  test("100 Ah: 1280 Wh of lithium, 1200 Wh of lead, twice and four times that at 24 and 48 V", () => {
    expect(model({}).capacityWh).toBe(1280);
    expect(model({ chemistry: "AGM" }).capacityWh).toBe(1200);
    expect(model({ systemV: 24 }).capacityWh).toBe(2560);
    expect(model({ systemV: 48, chemistry: "flooded" }).capacityWh).toBe(4800);
    expect(nominalV({ chemistry: "LiFePO4", systemV: 24 })).toBeCloseTo(25.6, 12);
  });

  test("counts from the floor up, and starts no lower", () => {
    const half = model({ chemistry: "gel", startPct: 80 });
    expect(half.usableWh).toBe(600);
    expect(half.startWh).toBeCloseTo(360, 9);
    expect(model({ chemistry: "gel", startPct: 30 }).startWh).toBe(0);
  });

  test("limits in watts, and self-discharge as a rate: 5 % in 730 hours", () => {
    const flooded = model({ chemistry: "flooded", capacityAh: 200 });
    expect(flooded.maxChargeW).toBeCloseTo(2400 * 0.15, 9);
    expect(Math.exp(-flooded.selfDischargePerHour * 730)).toBeCloseTo(0.95, 12);
    expect(flooded.keptAtC).toBeNull();
    expect(model({ keptAtC: 12 }).keptAtC).toBe(12);
  });

  test("its resistance under charge shrinks as it grows", () => {
    expect(model({ capacityAh: 200 }).chargeOhm).toBeCloseTo(model({ capacityAh: 100 }).chargeOhm / 2, 12);
  });

  test("too cold for lithium below its limit, and less to fill for lead", () => {
    expect(warmthOf(model({}), -0.1).tooCold).toBe(true);
    expect(warmthOf(model({}), 0).tooCold).toBe(false);
    expect(warmthOf(model({ chemistry: "AGM" }), -5).tooCold).toBe(false);
    expect(warmthOf(model({ chemistry: "AGM" }), 4.4).fullWh).toBeCloseTo(600 / 1.3, 9);
  });
});

describe("restV", () => {
  test.each(CHEMISTRIES)(
    "%s: never falls as charge grows, and stays at its ends beyond them",
    (chemistry: Chemistry) => {
      const at = (charge: number) => restV({ chemistry, systemV: 12 }, charge);
      for (let charge = 0; charge < 1; charge += 0.01)
        expect(at(charge + 0.01)).toBeGreaterThanOrEqual(at(charge));
      expect(at(-1)).toBe(at(0));
      expect(at(2)).toBe(at(1));
      expect(restV({ chemistry, systemV: 48 }, 0.5)).toBeCloseTo(4 * at(0.5), 12);
      expect(at(Number.NaN)).toBeNaN();
    },
  );

  test("flooded, full: six cells at specific gravity + 0.84 V, 1.265 full (trade rule, from memory)", () => {
    // Two decimals of the customary table, six cells.
    expect(Math.abs(restV({ chemistry: "flooded", systemV: 12 }, 1) - 6 * (1.265 + 0.84))).toBeLessThan(0.03);
    expect(Math.abs(restV({ chemistry: "flooded", systemV: 12 }, 0) - 6 * (1.12 + 0.84))).toBeLessThan(0.15);
  });
});

describe("capacityShare", () => {
  test.each(CHEMISTRIES)("%s: whole when warm, less the colder it is", (chemistry: Chemistry) => {
    expect(capacityShare(chemistry, 30)).toBe(1);
    for (let celsius = -30; celsius < 30; celsius += 1) {
      expect(capacityShare(chemistry, celsius + 1)).toBeGreaterThanOrEqual(capacityShare(chemistry, celsius));
    }
    expect(capacityShare(chemistry, -40)).toBeGreaterThan(0.5);
  });
});

describe("sizing rules", () => {
  test("worked: 1000 Wh a day, 2.5 days, half usable, 1.30 in the cold is 6500 Wh", () => {
    expect(
      storageWh({ loadWhPerDay: 1000, days: 2.5, usableShare: 0.5, capacityShare: 1 / 1.3 }),
    ).toBeCloseTo(6500, 9);
    expect(dailyAh(3000, 0.85, 24)).toBeCloseTo(147.06, 2);
    expect(storageDays95(3.1)).toBeCloseTo(4.597, 3);
  });

  test("no share, no answer", () => {
    expect(() => storageWh({ loadWhPerDay: 1, days: 1, usableShare: 0, capacityShare: 1 })).toThrow(
      "storageWh: expected shares above 0, received usable 0 and capacity 1",
    );
    expect(() => storageWh({ loadWhPerDay: 1, days: 1, usableShare: 1, capacityShare: -1 })).toThrow(
      RangeError,
    );
  });
});
