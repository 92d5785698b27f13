import { describe, expect, test } from "vitest";
import { capacityShare } from "../../../lib/circuit/index.ts";
import type { PlanInput } from "../../../lib/plan/index.ts";
import { emptyPlaneColumns, martinRuizGlass, planeColumns } from "../../../lib/plane/index.ts";
import { batterySeasons } from "../../../lib/season/battery/battery-season.ts";
import { sizingRule } from "../../../lib/season/battery/sizing-rule.ts";
import { todayOf } from "../../../lib/season/battery/today.ts";
import { readySkies, type SeasonSkies } from "../../../lib/season/light/skies.ts";
import { clearSkies } from "../random-plan.ts";
import { quickPlan } from "./battery-plan.ts";

const ruleFor = (
  changes: Partial<PlanInput> = {},
  airC: number | readonly number[] = 10,
  made?: SeasonSkies,
) => {
  const plan = quickPlan(changes);
  const skies = made ?? clearSkies(plan);
  const { asIs } = todayOf(plan, skies);
  const source = { kind: "years" as const, sun: skies.sun, skies: [skies.clear], cloudIn: false };
  const [season] = batterySeasons(source, [asIs], { timeZone: plan.site.timeZone, airC });
  return { rule: sizingRule(skies, season, airC), skies, wantedWh: season.outcomes[0].wantedWh };
};

/** kWh/m2 a day past the glass of a plane, over days `from` up to, not including, `to`. */
const peakSunHours = ({ sun, clear }: SeasonSkies, tiltDeg: number, from: number, to: number): number => {
  const light = planeColumns(
    sun,
    clear.dome,
    { tiltDeg, bearingDeg: 180 },
    martinRuizGlass(),
    emptyPlaneColumns(sun.length),
  );
  let sum = 0;
  for (let row = sun.days[from].first; row < sun.days[to - 1].end; row += 1)
    sum += light.absorbed[row] * sun.hours[row];
  return sum / 1000 / (to - from);
};

describe("sizingRule", () => {
  test("storage by hand: days for the poorest month x load / usable share / share left in the cold", () => {
    const { rule, skies, wantedWh } = ruleFor();
    if (rule === null) throw new Error("expected a rule");
    // Two days of March, two of April, each clear and flat: March has the lower sun.
    const march = peakSunHours(skies, 0, 0, 2);
    expect(rule.month).toBe("2027-03");
    expect(rule.peakSunHours).toBeCloseTo(march, 6);
    expect(rule.peakSunHours).toBeLessThan(peakSunHours(skies, 0, 2, 4));
    // Masters 2004, equation 9.20.
    expect(rule.days).toBeCloseTo(9.43 - 1.9 * march + 0.11 * march ** 2, 6);
    // A lamp of 20 W for five hours; 90 % usable; the share left at the plan's usual 15 degC.
    expect(wantedWh / 4).toBeCloseTo(100, 6);
    expect(rule.capacityWh).toBeCloseTo((100 * rule.days) / 0.9 / capacityShare("LiFePO4", 15), 6);
    expect(rule.presentWh).toBeCloseTo(20 * 12.8, 9);
  });

  test("the cold asks for more, unless the battery is kept warm", () => {
    const capacity = (changes: Partial<PlanInput>) => ruleFor(changes).rule?.capacityWh ?? Number.NaN;
    const cold = { air: { temperatureC: -15 } };
    expect(capacity(cold)).toBeGreaterThan(1.05 * capacity({ air: { temperatureC: 25 } }));
    const kept = { battery: { chemistry: "LiFePO4" as const, capacityAh: 20, keptAtC: 25 } };
    expect(capacity({ ...cold, ...kept })).toBeCloseTo(capacity({ ...kept, air: { temperatureC: 25 } }), 6);
  });

  test("the poorest month is found wherever it stands, and warmth is the mean of its own days", () => {
    // Autumn: October, the last of three, has the lowest sun; five days of it at -8 degC, September at 20.
    const airC = new Array<number>(12).fill(20).with(9, -8);
    const { rule, skies } = ruleFor({
      season: { from: "2027-08-30", to: "2027-10-05", stepMinutes: 60 },
      air: { temperatureC: airC },
    });
    expect(rule?.month).toBe("2027-10");
    expect(rule?.peakSunHours).toBeCloseTo(peakSunHours(skies, 0, 32, 37), 6);
    expect(rule?.capacityWh).toBeCloseTo((100 * (rule?.days ?? 0)) / 0.9 / capacityShare("LiFePO4", -8), 6);
  });

  test("the load is that of a day, on average over the seasons", () => {
    const plan = quickPlan();
    const skies = clearSkies(plan);
    const { asIs } = todayOf(plan, skies);
    const source = {
      kind: "years" as const,
      sun: skies.sun,
      skies: [skies.clear, skies.clear],
      cloudIn: true,
    };
    const [season] = batterySeasons(source, [asIs], { timeZone: plan.site.timeZone, airC: 10 });
    const alone = ruleFor().rule;
    expect(sizingRule(skies, season, 10)?.capacityWh).toBeCloseTo(alone?.capacityWh ?? Number.NaN, 6);
  });

  test("weighs panels by their rated power and count", () => {
    const { rule, skies } = ruleFor({
      panels: [
        {
          name: "flat",
          howMany: 2,
          module: { powerW: 50 },
          mount: { kind: "fixed", tiltDeg: 0, bearingDeg: 180 },
        },
        { name: "steep", module: { powerW: 300 }, mount: { kind: "fixed", tiltDeg: 60, bearingDeg: 180 } },
      ],
    });
    const mix = 0.25 * peakSunHours(skies, 0, 0, 2) + 0.75 * peakSunHours(skies, 60, 0, 2);
    const april = 0.25 * peakSunHours(skies, 0, 2, 4) + 0.75 * peakSunHours(skies, 60, 2, 4);
    expect(rule?.peakSunHours).toBeCloseTo(Math.min(mix, april), 2);
  });

  test("goes by the expected skies where there are any, each by its weight", () => {
    const plan = quickPlan();
    const { sun, clear } = clearSkies(plan);
    const dimmed = (share: number) => ({
      ...clear.sky,
      beamNormal: clear.sky.beamNormal.map((watts) => share * watts),
      diffuse: clear.sky.diffuse.map((watts) => share * watts),
      global: clear.sky.global.map((watts) => share * watts),
    });
    const skies = readySkies(
      sun,
      clear.sky,
      [
        { weight: 0.25, sky: dimmed(0.5) },
        { weight: 0.75, sky: clear.sky },
      ],
      "isotropic",
    );
    const plain = readySkies(sun, clear.sky, [], "isotropic");
    const [mixed, bright] = [ruleFor({}, 10, skies), ruleFor({}, 10, plain)].map(
      ({ rule }) => rule?.peakSunHours ?? Number.NaN,
    );
    // Under an isotropic sky light on a plane goes with what arrives: 0.25 x 0.5 + 0.75.
    expect(mixed).toBeCloseTo(0.875 * bright, 6);
  });

  test("has nothing to say without loads, nor in the dark", () => {
    expect(ruleFor({ loads: {} }).rule).toBeNull();
    // At 60 N a flat panel gets less than one peak sun hour in December, where the rule ends.
    const december = {
      site: { latitudeDeg: 60, longitudeDeg: 8 },
      season: { from: "2027-12-20", to: "2027-12-22", stepMinutes: 60 as const },
    };
    expect(ruleFor(december).rule).toBeNull();
    // High in the subtropics a clear June day brings a flat panel more than eight.
    const high = {
      site: { latitudeDeg: 33, longitudeDeg: 8, elevationM: 4200 },
      season: { from: "2027-06-20", to: "2027-06-22", stepMinutes: 60 as const },
    };
    expect(peakSunHours(ruleFor(high).skies, 0, 0, 3)).toBeGreaterThan(8);
    expect(ruleFor(high).rule).toBeNull();
  });
});
