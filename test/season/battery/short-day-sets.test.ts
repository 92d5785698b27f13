import { sum } from "d3";
import { describe, expect, it } from "vitest";
import { type Plan, PlanError, readPlan } from "../../../lib/plan/index.ts";
import { batterySeasons, meanOutcome } from "../../../lib/season/battery/battery-season.ts";
import { fewestShortDaySets } from "../../../lib/season/battery/short-day-sets.ts";
import { legCandidates, lyingFlat, ownedLegs } from "../../../lib/season/legs/legs-answer.ts";
import { standSeason } from "../../../lib/season/legs/stand-season.ts";
import { aimByDay, heldAim } from "../../../lib/season/light/aim-plan.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { skiesOfPlan } from "../../../lib/season/light/skies-of-plan.ts";
import { skySource } from "../../../lib/season/light/sky-source.ts";

// A clear autumn at 52 N with a load that only a tilted panel can carry: eight lengths to choose from.
const plan = readPlan({
  site: { latitudeDeg: 52, longitudeDeg: 5 },
  season: { from: "2027-09-01", to: "2027-11-15", stepMinutes: 60 },
  panels: [{ name: "panel", module: { powerW: 60 }, lengthMm: 1100 }],
  stand: { pivotMm: 600, legStyle: "plumb", cutting: { stepMm: 65 } },
  battery: { chemistry: "LiFePO4", capacityAh: 30 },
  loads: { appliances: [{ name: "pump", watts: 12, use: { kind: "for-hours", hours: 15 } }] },
});

const answersOf = (of: Plan, most = 2) => {
  const skies = skiesOfPlan(of, null);
  const season = standSeason(of, skies.skies, panelUnits(of.panels));
  return { skies, season, sets: fewestShortDaySets(season, skies, most) };
};

describe("fewestShortDaySets", () => {
  it("a further leg never brings more short days, and here legs save many", () => {
    const { sets } = answersOf(plan);
    expect(sets.length).toBeGreaterThanOrEqual(2);
    expect(sets[0].legs).toEqual([]);
    sets.slice(1).forEach(({ shortDays }, index) => {
      expect(shortDays).toBeLessThanOrEqual(sets[index].shortDays ?? 0);
    });
    expect(sets[1].shortDays).toBeLessThan((sets[0].shortDays ?? 0) / 2);
  });

  it("no single leg does better than the one it names", () => {
    const { skies, season, sets } = answersOf(plan);
    const source = skySource(plan, skies);
    const flat = lyingFlat(season);
    const candidates = legCandidates(season);
    expect(candidates.length).toBeLessThanOrEqual(12);
    const short = candidates.map((leg) => {
      const ofDay = Uint8Array.from(flat.dayWh, (wh, day) => (leg.dayWh[day] > wh ? 1 : 0));
      const aims = aimByDay(
        source.sun,
        [flat, leg].map(({ tiltDeg }) => ({ tiltDeg, bearingDeg: 180 })),
        ofDay,
      );
      const [lived] = batterySeasons(
        source,
        [{ ...plan, name: "one leg", panels: [{ unit: panelUnits(plan.panels)[0], aims }] }],
        { timeZone: plan.site.timeZone, airC: plan.air.temperatureC },
      );
      return meanOutcome(lived, "shortDays");
    });
    expect(sets[1].shortDays).toBe(Math.min(...short));
    expect(new Set(short).size).toBeGreaterThan(2);
  });

  /** Short days and watt-hours short with one leg of each length, worked out by living with each. */
  const livedWithEach = (of: Plan) => {
    const skies = skiesOfPlan(of, null);
    const season = standSeason(of, skies.skies, panelUnits(of.panels));
    const source = skySource(of, skies);
    const flat = lyingFlat(season);
    const lived = legCandidates(season).map((leg) => {
      const ofDay = Uint8Array.from(flat.dayWh, (wh, day) => (leg.dayWh[day] > wh ? 1 : 0));
      const aims = aimByDay(
        source.sun,
        [flat, leg].map(({ tiltDeg }) => ({ tiltDeg, bearingDeg: 180 })),
        ofDay,
      );
      const [one] = batterySeasons(
        source,
        [{ ...of, name: "one leg", panels: [{ unit: panelUnits(of.panels)[0], aims }] }],
        { timeZone: of.site.timeZone, airC: of.air.temperatureC },
      );
      return { leg, days: meanOutcome(one, "shortDays"), wh: meanOutcome(one, "shortWh") };
    });
    return { lived, sets: fewestShortDaySets(season, skies, 1) };
  };

  it("of as many short days it takes the fewer watt-hours short, wherever that leg stands among the lengths", () => {
    // Early September, with a load that no leg carries: every day is short with each, by more or less.
    const hopeless = readPlan({
      ...plan,
      season: { from: "2027-09-01", to: "2027-09-10", stepMinutes: 60 },
      loads: { appliances: [{ name: "pump", watts: 60, use: { kind: "for-hours", hours: 24 } }] },
    });
    const { lived, sets } = livedWithEach(hopeless);
    expect(new Set(lived.map(({ days }) => days)).size).toBe(1);
    const least = lived.reduce((best, one) => (one.wh < best.wh ? one : best));
    const at = lived.indexOf(least);
    expect(at).toBeGreaterThan(0);
    expect(at).toBeLessThan(lived.length - 1);
    expect(sets[1].legs.map(({ legMm }) => legMm)).toEqual([least.leg.legMm]);
  });

  it("fewer short days come first, whatever the watt-hours", () => {
    const { lived, sets } = livedWithEach(plan);
    const fewest = Math.min(...lived.map(({ days }) => days));
    const among = lived.filter(({ days }) => days === fewest);
    const least = among.reduce((best, one) => (one.wh < best.wh - 1e-6 ? one : best));
    expect(sets[1].legs.map(({ legMm }) => legMm)).toEqual([least.leg.legMm]);
  });

  it("a leg that saves nothing is not cut", () => {
    const idle = readPlan({
      ...plan,
      season: { from: "2027-09-01", to: "2027-09-03", stepMinutes: 60 },
      loads: { appliances: [{ name: "clock", watts: 0.5, use: { kind: "for-hours", hours: 24 } }] },
    });
    const { sets } = livedWithEach(idle);
    expect(sets).toHaveLength(1);
    expect(sets[0]).toMatchObject({ legs: [], shortDays: 0, addsWh: 0 });
  });

  it("the longest of many lengths is among the dozen tried", () => {
    // Far in the north in late autumn the steepest leg is the best one.
    const steep = readPlan({
      ...plan,
      site: { latitudeDeg: 64, longitudeDeg: 5 },
      season: { from: "2027-11-01", to: "2027-11-04", stepMinutes: 60 },
      stand: { ...plan.stand, cutting: { stepMm: 10 } },
      loads: { appliances: [{ name: "pump", watts: 60, use: { kind: "for-hours", hours: 24 } }] },
    });
    const skies = skiesOfPlan(steep, null);
    const season = standSeason(steep, skies.skies, panelUnits(steep.panels));
    const candidates = legCandidates(season);
    expect(candidates.length).toBeGreaterThan(30);
    const [, one] = fewestShortDaySets(season, skies, 1);
    expect(one.legs[0].legMm).toBe(candidates[candidates.length - 1].legMm);
  });

  it("tells what each set brings, day by day, and how far it has come", () => {
    const skies = skiesOfPlan(plan, null);
    const season = standSeason(plan, skies.skies, panelUnits(plan.panels));
    const shares: number[] = [];
    const sets = fewestShortDaySets(season, skies, 1, (share) => shares.push(share));
    const flat = lyingFlat(season).dayWh;
    const candidates = legCandidates(season);
    expect(shares).toEqual(
      Array.from({ length: candidates.length + 1 }, (_, tried) => (tried + 1) / (candidates.length + 1)),
    );
    const [none, one] = sets;
    expect(sets).toHaveLength(2);
    expect([...none.dayWh]).toEqual([...flat]);
    expect(none.addsWh).toBe(0);
    const [leg] = one.legs;
    one.dayWh.forEach((wh, day) => {
      expect(wh).toBe(Math.max(flat[day], leg.dayWh[day]));
    });
    expect(one.totalWh).toBeCloseTo(sum(one.dayWh), 6);
    expect(one.scoreWh).toBeCloseTo(sum(one.dayWh) / flat.length, 6);
    expect(one.addsWh).toBeCloseTo((sum(one.dayWh) - sum(flat)) / flat.length, 6);
  });

  it("counts owned legs among what there is, and fixed panels where they are", () => {
    const owning = readPlan({
      ...plan,
      panels: [
        { name: "panel", module: { powerW: 60 }, lengthMm: 1100 },
        { name: "roof", module: { powerW: 15 }, mount: { kind: "fixed", tiltDeg: 5, bearingDeg: 90 } },
      ],
      stand: { ...plan.stand, legs: [{ name: "own", lengthMm: 500, owned: true }] },
    });
    const { season, skies, sets } = answersOf(owning, 0);
    const [own] = ownedLegs(season);
    const flat = lyingFlat(season);
    expect(sets).toHaveLength(1);
    sets[0].dayWh.forEach((wh, day) => {
      expect(wh).toBe(Math.max(flat.dayWh[day], own.dayWh[day]));
    });
    const source = skySource(owning, skies);
    const ofDay = Uint8Array.from(flat.dayWh, (wh, day) => (own.dayWh[day] > wh ? 1 : 0));
    const onStand = aimByDay(
      source.sun,
      [flat, own].map(({ tiltDeg }) => ({ tiltDeg, bearingDeg: 180 })),
      ofDay,
    );
    const [propped, roof] = panelUnits(owning.panels);
    const [lived] = batterySeasons(
      source,
      [
        {
          ...owning,
          name: "by hand",
          panels: [
            { unit: propped, aims: onStand },
            { unit: roof, aims: heldAim({ tiltDeg: 5, bearingDeg: 90 }) },
          ],
        },
      ],
      { timeZone: owning.site.timeZone, airC: owning.air.temperatureC },
    );
    expect(sets[0].shortDays).toBe(meanOutcome(lived, "shortDays"));
  });

  it("thins many lengths to a dozen, the shortest and the longest among them, and cuts no more than two legs", () => {
    const fine = readPlan({
      ...plan,
      season: { from: "2027-09-01", to: "2027-09-02", stepMinutes: 60 },
      stand: { ...plan.stand, cutting: { stepMm: 10 } },
    });
    const skies = skiesOfPlan(fine, null);
    const season = standSeason(fine, skies.skies, panelUnits(fine.panels));
    expect(legCandidates(season).length).toBeGreaterThan(30);
    const shares: number[] = [];
    fewestShortDaySets(season, skies, 7, (share) => shares.push(share));
    // None, 12 single legs, 66 pairs.
    expect(shares).toHaveLength(1 + 12 + 66);
    expect(shares.at(-1)).toBe(1);
  });

  it("a plan without loads is refused: no day is then short", () => {
    const problems = (): PlanError["problems"] => {
      try {
        answersOf({ ...plan, loads: { ...plan.loads, appliances: [] } });
      } catch (error) {
        if (error instanceof PlanError) return error.problems;
      }
      return [];
    };
    expect(problems()).toEqual([
      {
        path: "loads.appliances",
        value: [],
        allowed: "must list what is run, so that a day can be short",
        hint: "or ask for the best season total or worst month",
      },
    ]);
  });
});
