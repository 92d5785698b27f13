import { describe, expect, it } from "vitest";
import { type Plan, PlanError, readPlan } from "../../lib/plan/index.ts";
import { aimByDay } from "../../lib/season/aim-plan.ts";
import { batterySeasons, meanOutcome } from "../../lib/season/battery-season.ts";
import { legCandidates, lyingFlat } from "../../lib/season/legs-answer.ts";
import { panelUnits } from "../../lib/season/panel-unit.ts";
import { fewestShortDaySets } from "../../lib/season/short-day-sets.ts";
import { skiesOfPlan } from "../../lib/season/skies-of-plan.ts";
import { skySource } from "../../lib/season/sky-source.ts";
import { standSeason } from "../../lib/season/stand-season.ts";

// A clear autumn at 52 N with a load that only a tilted panel can carry: eight lengths to choose from.
const plan = readPlan({
  site: { latitudeDeg: 52, longitudeDeg: 5 },
  season: { from: "2027-09-01", to: "2027-11-15", stepMinutes: 60 },
  panels: [{ name: "panel", module: { powerW: 60 }, lengthMm: 1100 }],
  stand: { pivotMm: 600, legStyle: "plumb", cutting: { stepMm: 65 } },
  battery: { chemistry: "LiFePO4", capacityAh: 30 },
  loads: { appliances: [{ name: "pump", watts: 12, use: { kind: "for-hours", hours: 15 } }] },
});

const answersOf = (of: Plan) => {
  const skies = skiesOfPlan(of, null);
  const season = standSeason(of, skies.skies, panelUnits(of.panels));
  return { skies, season, sets: fewestShortDaySets(season, skies, 2) };
};

describe("fewestShortDaySets", () => {
  const { skies, season, sets } = answersOf(plan);

  it("a further leg never brings more short days, and here legs save many", () => {
    expect(sets.length).toBeGreaterThanOrEqual(2);
    expect(sets[0].legs).toEqual([]);
    sets.slice(1).forEach(({ shortDays }, index) => {
      expect(shortDays).toBeLessThanOrEqual(sets[index].shortDays ?? 0);
    });
    expect(sets[1].shortDays).toBeLessThan((sets[0].shortDays ?? 0) / 2);
  });

  it("no single leg does better than the one it names", () => {
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

  it("a plan without loads is refused: no day is then short", () => {
    expect(() => answersOf({ ...plan, loads: { ...plan.loads, appliances: [] } })).toThrow(PlanError);
  });
});
