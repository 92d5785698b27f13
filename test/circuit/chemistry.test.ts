import { describe, expect, test } from "vitest";
import { batteryModel } from "../../lib/circuit/battery.ts";
import { capacityShare, chargeOhm, nominalV, restV } from "../../lib/circuit/chemistry.ts";
import { civilDays, windowHours } from "../../lib/circuit/clock-windows.ts";
import { dailyAh, storageDays95, storageWh } from "../../lib/circuit/sizing.ts";
import { batterySchema, CHEMISTRIES } from "../../lib/plan/battery.ts";
import { readCurve } from "../../lib/units/interpolation.ts";

describe("a curve read at a point", () => {
  const curve = [
    [0, 10],
    [2, 14],
    [4, 12],
  ] as const;

  test.each([
    [-1, 10],
    [0, 10],
    [1, 12],
    [2, 14],
    [3, 13],
    [4, 12],
    [9, 12],
  ])("at %d it is %d", (at, value) => {
    expect(readCurve(curve, at)).toBe(value);
  });

  test("lets NaN through", () => {
    expect(readCurve(curve, Number.NaN)).toBeNaN();
  });
});

describe("a battery's voltages", () => {
  test("rise with its class of twelves", () => {
    expect(nominalV({ chemistry: "LiFePO4", systemV: 24 })).toBe(25.6);
    expect(restV({ chemistry: "flooded", systemV: 48 }, 1)).toBeCloseTo(50.6, 12);
    // Between 12.0 V at a quarter and 12.3 V at a half.
    expect(restV({ chemistry: "AGM", systemV: 12 }, 0.4)).toBeCloseTo(12.18, 12);
    // 0.7 V at a tenth of 50 Ah an hour, 5 A.
    expect(chargeOhm({ chemistry: "AGM", systemV: 12, capacityAh: 50 })).toBeCloseTo(0.14, 12);
    expect(chargeOhm({ chemistry: "AGM", systemV: 24, capacityAh: 50 })).toBeCloseTo(0.28, 12);
  });

  test("never fall as it fills, and its capacity never as it warms", () => {
    for (const chemistry of CHEMISTRIES) {
      for (let share = 0; share < 1; share += 0.01) {
        const at = (charge: number) => restV({ chemistry, systemV: 12 }, charge);
        expect(at(share + 0.01)).toBeGreaterThanOrEqual(at(share));
      }
      for (let celsius = -30; celsius < 40; celsius += 1) {
        expect(capacityShare(chemistry, celsius + 1)).toBeGreaterThanOrEqual(
          capacityShare(chemistry, celsius),
        );
      }
      expect(capacityShare(chemistry, 40)).toBe(1);
    }
  });
});

test("a battery's energies, by hand", () => {
  const model = batteryModel(
    batterySchema.parse({
      chemistry: "AGM",
      capacityAh: 100,
      usablePct: 50,
      startPct: 80,
      maxChargePerHourPct: 20,
      selfDischargePctPerMonth: 3,
      chargeEfficiencyPct: 85,
      dischargeEfficiencyPct: 92,
      heaterW: 12,
    }),
  );
  expect(model).toMatchObject({
    capacityWh: 1200,
    usableWh: 600,
    chargeShare: 0.85,
    dischargeShare: 0.92,
    maxChargeW: 240,
    taperHours: 1,
    heaterW: 12,
    keptAtC: null,
    chargeAboveC: -20,
  });
  // 80 % of 1200 Wh stands 360 Wh above the floor at 600.
  expect(model.startWh).toBeCloseTo(360, 9);
  // 97 % left after 730 hours.
  expect(Math.exp(-730 * model.selfDischargePerHour)).toBeCloseTo(0.97, 12);
  // Half to full, straight from 12.3 V to 12.9 V over 11 nodes.
  expect([...model.restVAt]).toHaveLength(11);
  expect(model.restVAt[0]).toBeCloseTo(12.3, 12);
  expect(model.restVAt[5]).toBeCloseTo(12.6, 12);
  expect(model.restVAt[10]).toBeCloseTo(12.9, 12);
  expect(model.meanV).toBeCloseTo(12.6, 12);
  // AGM rises 0.7 V at a tenth of its capacity an hour, whatever its capacity.
  expect(model.chargingV).toBeCloseTo(13.3, 12);
  expect(model.capacityShare(10)).toBeCloseTo(1 / 1.19, 12);
  expect(batteryModel(batterySchema.parse({ chemistry: "AGM", usablePct: 50, startPct: 20 })).startWh).toBe(
    0,
  );
  expect(batteryModel(batterySchema.parse({ chemistry: "AGM", keptAtC: 15 })).keptAtC).toBe(15);
});

describe("clock windows", () => {
  test.each([
    [{ from: "08:00", to: "10:30" }, 2.5],
    [{ from: "22:00", to: "02:00" }, 4],
    [{ from: "00:00", to: "24:00" }, 24],
  ])("%o lasts %d h", (window, hours) => {
    expect(windowHours(window)).toBe(hours);
  });

  test("begin and end by the clock of the zone, on every date from the one before to the one after", () => {
    const noon = Date.UTC(2027, 5, 16, 12);
    const days = civilDays(noon, noon, "Europe/Berlin");
    // 16 June 2027 is a Wednesday.
    expect(days.map(({ dayOfWeek }) => dayOfWeek)).toEqual([2, 3, 4]);
    expect(days[1]?.window({ from: "18:00", to: "21:30" })).toEqual([
      Date.UTC(2027, 5, 16, 16),
      Date.UTC(2027, 5, 16, 19, 30),
    ]);
    expect(days[1]?.window({ from: "23:00", to: "01:00" })).toEqual([
      Date.UTC(2027, 5, 16, 21),
      Date.UTC(2027, 5, 16, 23),
    ]);
  });

  test("shrink and stretch where clocks change inside them", () => {
    // Berlin, 28 March 2027: 02:00 becomes 03:00. 31 October: 03:00 becomes 02:00 again.
    for (const [date, hours] of [
      [Date.UTC(2027, 2, 28, 12), 5],
      [Date.UTC(2027, 9, 31, 12), 7],
    ] as const) {
      const [, day] = civilDays(date, date, "Europe/Berlin");
      const [fromMs, toMs] = day?.window({ from: "00:00", to: "06:00" }) ?? [0, 0];
      expect((toMs - fromMs) / 3_600_000).toBe(hours);
    }
    // The evening before: 22:00 in winter time is 21:00 UTC, 04:00 in summer time is 02:00 UTC.
    const night = Date.UTC(2027, 2, 27, 12);
    const [, evening] = civilDays(night, night, "Europe/Berlin");
    expect(evening?.window({ from: "22:00", to: "04:00" })).toEqual([
      Date.UTC(2027, 2, 27, 21),
      Date.UTC(2027, 2, 28, 2),
    ]);
  });
});

describe("rules of thumb for storage", () => {
  test("worksheet, ampere-hours and days of storage, by hand", () => {
    // 1000 x 2.5 / 0.5 x 1.3
    expect(
      storageWh({ loadWhPerDay: 1000, days: 2.5, usableShare: 0.5, capacityShare: 1 / 1.3 }),
    ).toBeCloseTo(6500, 9);
    expect(dailyAh(3000, 0.85, 24)).toBeCloseTo(147.0588, 4);
    // 9.43 - 1.9 x 4 + 0.11 x 16
    expect(storageDays95(4)).toBeCloseTo(3.59, 12);
  });

  test("refuse shares that are none", () => {
    const need = { loadWhPerDay: 1000, days: 1, usableShare: 0.5, capacityShare: 1 };
    expect(() => storageWh({ ...need, usableShare: 0 })).toThrow(
      "storageWh: expected shares above 0, received usable 0 and capacity 1",
    );
    expect(() => storageWh({ ...need, capacityShare: 0 })).toThrow("usable 0.5 and capacity 0");
  });
});
