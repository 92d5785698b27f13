import { describe, expect, test } from "vitest";
import { batteryTemperature, FOLLOWS_AIR_H } from "../../../lib/circuit/battery-temperature.ts";
import { loadColumns } from "../../../lib/circuit/loads.ts";
import { type PlanInput, readPlan } from "../../../lib/plan/index.ts";
import { worthOfPlan } from "../../../lib/season/battery/battery-answer.ts";
import { batterySeasons, meanOutcome } from "../../../lib/season/battery/battery-season.ts";
import { batterySteps } from "../../../lib/season/battery/battery-steps.ts";
import { surroundingsOf } from "../../../lib/season/battery/surroundings.ts";
import { todayOf } from "../../../lib/season/battery/today.ts";
import { skiesOfPlan } from "../../../lib/season/light/skies-of-plan.ts";
import { skySource } from "../../../lib/season/light/sky-source.ts";

const twelve = (value: number): number[] => new Array<number>(12).fill(value);

/** A highland winter: cold nights, afternoons a little above freezing. */
const winter = (changes: Partial<PlanInput> = {}): PlanInput => ({
  site: { latitudeDeg: 37.45, longitudeDeg: -119.65, elevationM: 2300, timeZone: "America/Los_Angeles" },
  season: { from: "2027-12-01", to: "2028-01-31", stepMinutes: 60 },
  sky: {
    source: "climate",
    from: { kind: "months", clearness: twelve(0.55), airLowC: twelve(-5), airHighC: twelve(5) },
    seasons: 40,
  },
  panels: [
    {
      name: "p",
      module: { powerW: 120 },
      mount: { kind: "fixed", tiltDeg: 55, bearingDeg: 180, back: "open" },
    },
  ],
  battery: { chemistry: "LiFePO4", capacityAh: 60 },
  loads: { appliances: [{ name: "radio", watts: 9, use: { kind: "for-hours", hours: 24 } }] },
  ...changes,
});

const sourceOf = (input: PlanInput) => {
  const plan = readPlan(input);
  const skies = skiesOfPlan(plan, null);
  return { plan, skies, source: skySource(plan, skies), asIs: todayOf(plan, skies.skies).asIs };
};

const livedWith = (battery: PlanInput["battery"]) => {
  const { plan, source, asIs } = sourceOf(winter({ ...(battery === undefined ? {} : { battery }) }));
  const [season] = batterySeasons(source, [asIs], { timeZone: plan.site.timeZone, airC: 15 });
  return season;
};

describe("where a battery stands", () => {
  test("it follows the air as a first-order lag: 63 % of a step after its own hours", () => {
    const step = new Float64Array(48).fill(10).fill(0, 0, 24);
    const out = batteryTemperature(step, 24, FOLLOWS_AIR_H.outside, new Float64Array(48));
    expect(out[23]).toBe(0);
    expect(out[25]).toBeCloseTo(10 * (1 - Math.exp(-1)), 9);
    // A day's swing of 5 K about 0: a locker damps it by sqrt(1 + (2 pi 24 / 24)^2) = 6.4.
    const days = Float64Array.from({ length: 24 * 20 }, (_, hour) => 5 * Math.sin((2 * Math.PI * hour) / 24));
    const locker = batteryTemperature(days, 24, FOLLOWS_AIR_H.locker, new Float64Array(days.length));
    expect(Math.max(...locker.subarray(24 * 15))).toBeCloseTo(5 / Math.hypot(1, 2 * Math.PI), 1);
  });

  test("every season has an air of its own, by the hour, and no midnight makes a step", () => {
    const { plan, source } = sourceOf(winter({ battery: { chemistry: "LiFePO4", stands: "outside" } }));
    const steps = batterySteps(source.sun);
    const loads = loadColumns(plan.loads, steps, plan.site.timeZone);
    const round = surroundingsOf(source, steps, [{ battery: plan.battery, loads }], 15);
    const first = Array.from(round(0)[0].batteryC);
    const second = Array.from(round(1)[0].batteryC);
    expect(first).not.toEqual(second);
    expect(Array.from(round(0)[0].batteryC)).toEqual(first);
    // The widest day of the climate runs over 10 K between its low and its high: no hour of a lagging battery moves by 4.
    first.slice(1).forEach((c, at) => {
      expect(Math.abs(c - first[at])).toBeLessThan(4);
    });
    const mean = first.reduce((sum, c) => sum + c, 0) / first.length;
    expect(Math.abs(mean)).toBeLessThan(3);
  });

  test("charging is blocked by the hour and differs from season to season, not all or nothing by the day's mean", () => {
    const outside = livedWith({ chemistry: "LiFePO4", capacityAh: 60, stands: "outside" });
    const blocked = outside.outcomes.map(({ blockedDays }) => blockedDays);
    expect(new Set(blocked).size).toBeGreaterThan(5);
    // Some light is kept out on most days, yet a good part of it comes in on warm afternoons.
    expect(meanOutcome(outside, "blockedDays")).toBeGreaterThan(20);
    expect(meanOutcome(outside, "tooColdWh")).toBeLessThan(0.8 * meanOutcome(outside, "offeredWh"));
  });

  test("warm it is never blocked; a locker is taken where the plan does not say; kept at a temperature it stays there", () => {
    const days = (battery: PlanInput["battery"]) => meanOutcome(livedWith(battery), "blockedDays");
    const base = { chemistry: "LiFePO4", capacityAh: 60 } as const;
    expect(days({ ...base, stands: "living space" })).toBe(0);
    expect(days({ ...base, keptAtC: 5 })).toBe(0);
    expect(days({ ...base, keptAtC: -1 })).toBeGreaterThan(30);
    expect(days(base)).toBe(days({ ...base, stands: "locker" }));
    // Below -20 degC lead-acid is not charged either: a rare night.
    expect(days({ chemistry: "AGM", capacityAh: 60, stands: "outside" })).toBeLessThan(0.2);
  });
});

describe("what the cold costs", () => {
  const plan = readPlan(winter({ battery: { chemistry: "LiFePO4", capacityAh: 60, stands: "outside" } }));
  const { answer } = worthOfPlan(plan, skiesOfPlan(plan, null));

  test("is named with the short days that come from it", () => {
    const { cold, asIs } = answer;
    expect(cold?.blockedDays).toBe(asIs.blockedDays);
    expect(cold?.shortDaysFromCold).toBeCloseTo(asIs.shortDays - (cold?.shortDaysWarm ?? 0), 9);
    expect(cold?.shortDaysFromCold).toBeGreaterThan(5);
    const warm = meanOutcome(livedWith({ chemistry: "LiFePO4", capacityAh: 60, keptAtC: 20 }), "shortDays");
    expect(cold?.shortDaysWarm).toBeCloseTo(warm, 9);
  });

  test("a battery kept warm is a remedy, and does more than a bigger battery", () => {
    const row = (name: string) => answer.rows.find((one) => one.name === name);
    expect(row("battery kept warm")?.blockedDays).toBe(0);
    expect(row("battery kept warm")?.shortDays).toBeLessThan(row("bigger battery")?.shortDays ?? 0);
  });

  test("topping up costs far fewer nights than there are short days, and no verdict rests on the dearest way", () => {
    const nights = answer.ways.find(({ by }) => by === "hook-up")?.topUps ?? 0;
    expect(nights).toBeGreaterThan(0);
    expect(nights).toBeLessThan(0.7 * answer.asIs.shortDays);
    expect(answer.asIs.coping.price).toBe(Math.min(...answer.ways.map(({ price }) => price)));
    const stated = readPlan({
      ...plan,
      worth: { ...plan.worth, instead: { ...plan.worth.instead, inUse: "hook-up" } },
    });
    const told = worthOfPlan(stated, skiesOfPlan(stated, null)).answer;
    expect(told.asIs.coping.by).toBe("hook-up");
    expect(told.ways).toHaveLength(1);
  });
});
