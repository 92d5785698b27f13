import { describe, expect, test } from "vitest";
import { clearLedger, emptyLedger, warmthOf } from "../../lib/circuit/balance.ts";
import { batteryModel } from "../../lib/circuit/battery.ts";
import { stepHeldBattery } from "../../lib/circuit/held-step.ts";
import { batterySchema } from "../../lib/plan/battery.ts";

/** Share of the ampere-hours that a PWM controller puts in which are stored, with the plan's own charge efficiency. */
const ampereHourShare = (chemistry: "flooded" | "AGM" | "gel" | "LiFePO4", amps: number): number => {
  const battery = batteryModel(
    batterySchema.parse({ chemistry, capacityAh: 100, startPct: 60, selfDischargePctPerMonth: 0 }),
  );
  const ledger = emptyLedger();
  clearLedger(ledger);
  const nodes = battery.restVAt.length;
  const endWh = stepHeldBattery(
    {
      battery,
      warmth: warmthOf(battery, 25),
      amps: new Float64Array(nodes).fill(amps),
      first: 0,
      besideW: 0,
      share: 1,
      storedWh: battery.startWh,
      demand: { offeredW: 0, loadW: 0, ownW: 0, chargerW: 0 },
      hours: 1,
    },
    ledger,
  );
  return (endWh - battery.startWh) / battery.meanV / amps;
};

describe("the loss of charging lead-acid is counted once behind a PWM controller", () => {
  test("flooded: 0.85 of the ampere-hours (battery handbook, section 13.2), at any current, within its 0.05", () => {
    for (const amps of [1, 5, 10]) {
      expect(ampereHourShare("flooded", amps)).toBeGreaterThan(0.8);
      expect(Math.abs(ampereHourShare("flooded", amps) - 0.85)).toBeLessThan(0.05);
    }
  });

  test("sealed lead-acid: about 0.9 (0.91 up to 84 % of charge, Stevens & Corey, Sandia, from memory)", () => {
    expect(Math.abs(ampereHourShare("AGM", 5) - 0.91)).toBeLessThan(0.02);
    expect(Math.abs(ampereHourShare("gel", 5) - 0.91)).toBeLessThan(0.02);
  });

  test("lithium: almost all (0.95 or more; the same handbook says almost 1)", () => {
    expect(ampereHourShare("LiFePO4", 5)).toBeGreaterThan(0.97);
    expect(ampereHourShare("LiFePO4", 5)).toBeLessThanOrEqual(1);
  });
});
