import { describe, expect, test } from "vitest";
import type { Plan, PlanInput } from "../../../lib/plan/index.ts";
import {
  batteryOfPlan,
  smallestPanelsOfPlan,
  worthOfPlan,
} from "../../../lib/season/battery/battery-answer.ts";
import { batterySeasons, meanOutcome, quantileOutcome } from "../../../lib/season/battery/battery-season.ts";
import { choicesOf } from "../../../lib/season/battery/set-ups.ts";
import { sizingRule } from "../../../lib/season/battery/sizing-rule.ts";
import { smallestSecondPanel } from "../../../lib/season/battery/smallest-panel.ts";
import { todayOf } from "../../../lib/season/battery/today.ts";
import { wiringOf } from "../../../lib/season/battery/wiring.ts";
import { worthOf } from "../../../lib/season/battery/worth.ts";
import { readySkies } from "../../../lib/season/light/skies.ts";
import { type PlanSkies, skiesOfPlan } from "../../../lib/season/light/skies-of-plan.ts";
import { skySource } from "../../../lib/season/light/sky-source.ts";
import { clearSkies } from "../random-plan.ts";
import { quickPlan } from "./battery-plan.ts";

/** Years that let through so much of the clear sky, each day of a year the same. */
const yearsOf = (shares: readonly number[]): PlanSkies => {
  const { sun, clear } = clearSkies(quickPlan());
  const expected = shares.map((share) => ({
    weight: 1 / shares.length,
    sky: {
      ...clear.sky,
      beamNormal: clear.sky.beamNormal.map((watts) => share * watts),
      diffuse: clear.sky.diffuse.map((watts) => share * watts),
      global: clear.sky.global.map((watts) => share * watts),
    },
  }));
  return { skies: readySkies(sun, clear.sky, expected), notes: [], cloud: null };
};

const pump = (watts: number): Partial<PlanInput> => ({
  loads: { appliances: [{ name: "pump", watts, use: { kind: "for-hours", hours: 24 } }] },
});

const sourceOf = (plan: Plan, skies: PlanSkies) => skySource(plan, skies);
const optionsOf = (plan: Plan) => ({ timeZone: plan.site.timeZone, airC: plan.air.temperatureC });

describe("batterySeasons", () => {
  // 12 W day and night are 288 Wh a day; flat, a clear day brings some 450 Wh, a fifth of it 90.
  const plan = quickPlan(pump(12));

  test("one season for each year, gathered day by day", () => {
    const skies = yearsOf([1, 0.2, 0.1, 0.05, 0.02]);
    const { asIs } = todayOf(plan, skies.skies);
    const source = sourceOf(plan, skies);
    const told: (readonly [number, number])[] = [];
    const [season] = batterySeasons(source, [asIs], {
      ...optionsOf(plan),
      onProgress: (done, seasons) => told.push([done, seasons]),
    });
    expect(told).toEqual([
      [1, 5],
      [2, 5],
      [3, 5],
      [4, 5],
      [5, 5],
    ]);
    expect(season.outcomes).toHaveLength(5);
    expect(season.days).toBe(skies.skies.sun.days);
    expect(season.setUp).toBe(asIs);
    // Each year by itself comes to the same, and the means of the days are theirs.
    const alone = skies.skies.expected.map(
      (sky) =>
        batterySeasons(
          { kind: "years", sun: source.sun, skies: [sky], cloudIn: true },
          [asIs],
          optionsOf(plan),
        )[0],
    );
    alone.forEach((one, year) => {
      expect(one.outcomes[0]).toEqual(season.outcomes[year]);
    });
    for (const column of [
      "meanLowest",
      "meanOfferedWh",
      "meanUsedWh",
      "meanShortWh",
      "meanCurtailedWh",
      "shortShare",
    ] as const) {
      season[column].forEach((value, day) => {
        const mean = alone.reduce((sum, one) => sum + one[column][day], 0) / 5;
        expect(value).toBeCloseTo(mean, 9);
      });
    }
    for (const [column, outcome] of [
      ["meanOfferedWh", "offeredWh"],
      ["meanUsedWh", "usedWh"],
      ["meanShortWh", "shortWh"],
      ["meanCurtailedWh", "curtailedWh"],
    ] as const) {
      const total = season[column].reduce((sum, wh) => sum + wh, 0);
      expect(total).toBeGreaterThan(0);
      expect(total).toBeCloseTo(meanOutcome(season, outcome), 6);
    }
    expect(Math.max(...season.shortShare)).toBeCloseTo(0.8, 9);
    // The median year's lowest states are those of the third of five.
    season.lowest?.p50.forEach((state, day) => {
      expect(state).toBeCloseTo(alone[2].meanLowest[day], 9);
    });
    expect(season.lowest?.p10[0]).toBeCloseTo(Math.min(...alone.map(({ meanLowest }) => meanLowest[0])), 9);
    expect(season.lowest?.p90[3]).toBeCloseTo(Math.max(...alone.map(({ meanLowest }) => meanLowest[3])), 9);
  });

  test("each year has its own air, the dark what the plan says", () => {
    const skies = yearsOf([0.5, 0.5]);
    const [mild, frosty] = skies.skies.expected;
    const cold = { ...frosty, sky: { ...frosty.sky, airC: frosty.sky.airC.map(() => -20) } };
    const { asIs } = todayOf(plan, skies.skies);
    const source = { kind: "years" as const, sun: skies.skies.sun, skies: [mild, cold], cloudIn: true };
    const [{ outcomes }] = batterySeasons(source, [asIs], optionsOf(plan));
    // Lithium takes no charge below freezing: all that is offered beyond the loads is curtailed.
    expect(outcomes[1].curtailedWh).toBeGreaterThan(outcomes[0].curtailedWh + 100);
    expect(outcomes[1].shortDays).toBeGreaterThan(outcomes[0].shortDays);
  });

  test("seasons drawn from a climate are lived through like years, in the air of the climate", () => {
    const climate = quickPlan({
      ...pump(12),
      sky: {
        source: "climate",
        from: {
          kind: "months",
          clearness: new Array<number>(12).fill(0.4),
          airLowC: new Array<number>(12).fill(-30),
          airHighC: new Array<number>(12).fill(-20),
        },
        seasons: 10,
      },
    });
    const skies = skiesOfPlan(climate, null);
    const { asIs } = todayOf(climate, skies.skies);
    const [season] = batterySeasons(skySource(climate, skies), [asIs], optionsOf(climate));
    expect(season.outcomes).toHaveLength(10);
    expect(new Set(season.outcomes.map(({ offeredWh }) => offeredWh)).size).toBe(10);
    // Lithium takes no charge below freezing: from the first night on only what the loads take at once is of use.
    for (const { curtailedWh, shortDays } of season.outcomes) {
      expect(curtailedWh).toBeGreaterThan(0);
      expect(shortDays).toBeGreaterThan(0);
    }
    expect(batteryOfPlan(climate, skies).uncertainty).toBe("many seasons");
  });

  test("set-ups with different loads live side by side under the same sky", () => {
    const skies = yearsOf([0.6]);
    const { asIs } = todayOf(plan, skies.skies);
    const idle = { ...asIs, name: "idle", loads: { ...asIs.loads, appliances: [] } };
    const [busy, quiet, again] = batterySeasons(sourceOf(plan, skies), [asIs, idle, asIs], optionsOf(plan));
    expect(busy.outcomes[0].wantedWh).toBeCloseTo(4 * 288, 6);
    expect(quiet.outcomes[0].wantedWh).toBe(0);
    expect(again.outcomes).toEqual(busy.outcomes);
    expect(busy.lowest).toBeNull();
    // A controller of 0.25 W takes 6 Wh a day for itself.
    expect(quiet.outcomes[0].lostWh).toBeGreaterThan(4 * 6);
  });

  test("refuses a source without a season", () => {
    const { skies } = yearsOf([1]);
    const empty = { kind: "years" as const, sun: skies.sun, skies: [], cloudIn: true };
    expect(() => batterySeasons(empty, [], optionsOf(plan))).toThrow(
      "batterySeasons: expected at least one season, received none",
    );
  });

  test("means and quantiles over the seasons; no quantile of fewer than five", () => {
    const skies = yearsOf([1, 0.8, 0.6, 0.4, 0.2]);
    const { asIs } = todayOf(plan, skies.skies);
    const [season] = batterySeasons(sourceOf(plan, skies), [asIs], optionsOf(plan));
    const offered = season.outcomes.map(({ offeredWh }) => offeredWh).sort((a, b) => a - b);
    expect(meanOutcome(season, "offeredWh")).toBeCloseTo(offered.reduce((a, b) => a + b, 0) / 5, 9);
    // Of five the quarter points are the second and the fourth.
    expect(quantileOutcome(season, "offeredWh", 0.25)).toBe(offered[1]);
    expect(quantileOutcome({ ...season, outcomes: season.outcomes.slice(1) }, "offeredWh", 0.25)).toBeNull();
  });
});

describe("batteryOfPlan", () => {
  test("is the plan's set-up as it is, its wiring and the handbook's rule, told as it comes", () => {
    const plan = quickPlan();
    const skies = yearsOf([1, 0.5]);
    const shares: number[] = [];
    const { season, wiring, rule, uncertainty } = batteryOfPlan(plan, skies, (share) => shares.push(share));
    const { asIs } = todayOf(plan, skies.skies);
    const source = sourceOf(plan, skies);
    const [alone] = batterySeasons(source, [asIs], optionsOf(plan));
    expect(season.outcomes).toEqual(alone.outcomes);
    expect(wiring).toEqual(wiringOf(source, asIs, optionsOf(plan)));
    expect(rule).toEqual(sizingRule(skies.skies, alone, plan.air.temperatureC));
    expect(uncertainty).toBe("few years");
    expect(shares).toEqual([0.25, 0.5, 0.75, 1]);
  });

  test("says how far the skies can be trusted", () => {
    const plan = quickPlan();
    const uncertaintyUnder = (shares: readonly number[]) => batteryOfPlan(plan, yearsOf(shares)).uncertainty;
    expect(uncertaintyUnder([])).toBe("clear sky only");
    expect(uncertaintyUnder([1, 1, 1, 1])).toBe("few years");
    expect(uncertaintyUnder([1, 1, 1, 1, 1])).toBe("many seasons");
  });
});

describe("worthOfPlan, by hand", () => {
  // Flat, 12 W day and night: every remedy has something to mend.
  const plan = quickPlan({
    ...pump(12),
    worth: {
      years: 4,
      wantedShortDays: 1.5,
      instead: {
        hookUpNight: 20,
        drivingHour: 6,
        drivingHourWh: 200,
        generatorHour: 3,
        generatorHourWh: 500,
      },
    },
  });

  test("judges each remedy by what its loads got under the same skies", () => {
    const skies = yearsOf([1, 0.7, 0.5, 0.3, 0.1]);
    const shares: number[] = [];
    const { answer, uncertainty } = worthOfPlan(plan, skies, (share) => shares.push(share));
    expect(shares).toEqual(Array.from({ length: 10 }, (_, at) => (at + 1) / 10));
    expect(uncertainty).toBe("many seasons");
    const choices = choicesOf(plan, skies.skies);
    const [today, ...rest] = batterySeasons(
      sourceOf(plan, skies),
      [choices.asIs, ...choices.remedies.map(({ setUp }) => setUp)],
      optionsOf(plan),
    );
    const days = 4;
    expect(answer.days).toBe(days);
    const short = meanOutcome(today, "shortDays");
    const shortWh = meanOutcome(today, "shortWh");
    expect(short).toBeGreaterThan(1);
    expect(answer.asIs).toMatchObject({
      shortDays: short,
      shortDaysP90: quantileOutcome(today, "shortDays", 0.9),
      shortWh,
      usedWhADay: meanOutcome(today, "usedWh") / days,
      offeredWhADay: meanOutcome(today, "offeredWh") / days,
      fullByNoonShare: meanOutcome(today, "fullByNoonDays") / days,
    });
    // Every way to top up, counted as it happens; the answer rests on the cheapest, since the plan names none.
    expect(answer.wayStated).toBe(false);
    expect(answer.ways.map(({ by }) => by)).toEqual(["hook-up", "driving", "generator"]);
    const [hookUp, driving, generator] = answer.ways;
    expect(hookUp.price).toBeCloseTo(hookUp.topUps * 20, 9);
    expect(driving.price).toBeCloseTo(driving.hours * 6, 9);
    expect(generator.price).toBeCloseTo(generator.hours * 3, 9);
    expect(answer.asIs.coping.price).toBe(Math.min(...answer.ways.map((way) => way.price)));
    // One refill serves for several days: far fewer than the short days.
    expect(hookUp.topUps).toBeGreaterThan(0);
    expect(hookUp.topUps).toBeLessThan(short);
    // What is good against the cold alone is left out where the cold blocks nothing.
    const remedies = choices.remedies.filter(({ against }) => against !== "cold");
    expect(remedies).toHaveLength(choices.remedies.length - 1);
    expect(answer.rows).toHaveLength(remedies.length);
    answer.rows.forEach((row) => {
      const at = choices.remedies.findIndex(({ setUp }) => setUp.name === row.name);
      const { setUp, says, price } = choices.remedies[at];
      expect(row).toMatchObject({ name: setUp.name, says, price });
      const [nowShort, used, offered] = (["shortDays", "usedWh", "offeredWh"] as const).map((of) =>
        meanOutcome(rest[at], of),
      );
      expect(row.shortDays).toBe(nowShort);
      expect(row.shortDaysAvoided).toBeCloseTo(short - nowShort, 9);
      expect(row.paperWhADay).toBeCloseTo((offered - meanOutcome(today, "offeredWh")) / days, 9);
      const moreWh = used - meanOutcome(today, "usedWh");
      expect(row.usefulWhADay).toBeCloseTo(moreWh / days, 9);
      expect(row.enough).toBe(nowShort <= 1.5);
      if (row.pricePerShortDay !== null)
        expect(row.pricePerShortDay).toBeCloseTo(price / ((short - nowShort) * 4), 9);
      else expect(short - nowShort).toBeLessThanOrEqual(0.01);
      // Price over four years' kWh; where less than a watt-hour is gained over them there is no such price.
      if (row.pricePerUsefulKWh !== null)
        expect(row.pricePerUsefulKWh).toBeCloseTo(price / ((moreWh * 4) / 1000), 6);
      else expect(moreWh * 4).toBeLessThanOrEqual(1);
      const saved = answer.asIs.coping.price - row.coping.price;
      if (row.paysAfter !== null) expect(row.paysAfter).toBeCloseTo(price / saved, 9);
      else expect(saved).toBeLessThanOrEqual(0.01 * 20);
    });
    expect(answer.rows.some(({ pricePerShortDay }) => pricePerShortDay !== null)).toBe(true);
    expect(answer.rows.some(({ enough }) => enough)).toBe(true);
    expect(answer.rows.some(({ enough }) => !enough)).toBe(true);
  });

  test("as many short days as are put up with are enough", () => {
    const dark = quickPlan({ ...pump(400), worth: { wantedShortDays: 4 } });
    const rows = worthOfPlan(dark, yearsOf([0.5])).answer.rows.filter(({ shortDays }) => shortDays === 4);
    expect(rows.length).toBeGreaterThan(0);
    for (const { enough } of rows) expect(enough).toBe(true);
  });

  test("what mends nothing never pays", () => {
    // Nothing is short today: no remedy avoids anything, whatever it brings.
    const easy = quickPlan({ ...pump(0.5), battery: { chemistry: "LiFePO4", capacityAh: 200 } });
    const { answer } = worthOfPlan(easy, yearsOf([1]));
    expect(answer.ways.map(({ price, topUps }) => [price, topUps])).toEqual([
      [0, 0],
      [0, 0],
      [0, 0],
    ]);
    for (const row of answer.rows) {
      expect(row.paysAfter).toBeNull();
      expect(row.pricePerShortDay).toBeNull();
      expect(row.shortDaysP90).toBeNull();
      expect(row.enough).toBe(true);
    }
    expect(answer.rows.find(({ name }) => name === "bigger battery")?.pricePerUsefulKWh).toBeNull();
  });

  test("a hair's difference is none: a hundredth of a day, a watt-hour a season", () => {
    const skies = yearsOf([0.5]);
    const choices = choicesOf(plan, skies.skies);
    const { asIs } = choices;
    // The same set-up but for a thousandth of its load.
    const { loads } = asIs;
    const hair = (kept: number) => ({
      setUp: {
        ...asIs,
        name: "hair",
        loads: { ...loads, appliances: loads.appliances.map((one) => ({ ...one, watts: one.watts * kept })) },
      },
      says: "",
      price: 5,
      needs: [],
      unsafe: [],
    });
    const rowsOf = (kept: number) =>
      worthOf(sourceOf(plan, skies), { ...choices, remedies: [hair(kept)] }, plan.worth, optionsOf(plan))
        .rows[0];
    expect(rowsOf(0.9999).paysAfter).toBeNull();
    const row = rowsOf(0.99);
    // 1 % of 12 W over four days is 12 Wh less to be short of, though the days stay as short as they were.
    expect(row.shortDaysAvoided).toBe(0);
    expect(row.pricePerShortDay).toBeNull();
  });
});

describe("smallestSecondPanel", () => {
  const found = (load: number, wantedShortDays: number, changes: Partial<PlanInput> = {}) => {
    const plan = quickPlan({ ...pump(load), worth: { wantedShortDays }, ...changes });
    const skies = yearsOf([0.5]);
    const choices = choicesOf(plan, skies.skies);
    const source = sourceOf(plan, skies);
    const shortWith = (watts: number): number => {
      const remedy = watts === 0 ? { setUp: choices.asIs } : choices.withSecondPanel("roof", watts);
      if (remedy === null) return Number.NaN;
      return meanOutcome(batterySeasons(source, [remedy.setUp], optionsOf(plan))[0], "shortDays");
    };
    const shares: number[] = [];
    const smallest = smallestSecondPanel(source, choices, plan.worth, optionsOf(plan), "roof", (share) =>
      shares.push(share),
    );
    return { smallest, shortWith, shares, choices, plan, skies };
  };

  test("is the first of the steps of five watts that is enough", () => {
    const { smallest, shortWith, shares, choices } = found(14, 1);
    const watts = smallest?.watts ?? Number.NaN;
    expect(watts % 5).toBe(0);
    expect(shortWith(watts)).toBeLessThanOrEqual(1);
    expect(shortWith(watts - 5)).toBeGreaterThan(1);
    expect(smallest).toMatchObject({
      where: "roof",
      shortDays: shortWith(watts),
      price: choices.withSecondPanel("roof", watts)?.price,
    });
    // None, the largest, and at most seven halvings of 120 steps.
    expect(shares.length).toBeLessThanOrEqual(9);
    shares.forEach((share, at) => {
      expect(share).toBeCloseTo((at + 1) / 9, 12);
    });
  });

  test("is none where none is needed, and says when the largest tried is not enough", () => {
    const { smallest, shortWith } = found(1, 0);
    expect(shortWith(0)).toBe(0);
    expect(smallest).toEqual({ where: "roof", watts: 0, shortDays: 0, price: 0, needs: [] });
    const hopeless = found(400, 1);
    expect(hopeless.smallest).toEqual({
      where: "roof",
      watts: null,
      shortDays: hopeless.shortWith(600),
      price: null,
      needs: [],
    });
    expect(hopeless.smallest?.shortDays).toBeGreaterThan(1);
  });

  test("as many short days as are put up with are enough", () => {
    const { smallest, shortWith } = found(400, 4);
    expect(shortWith(0)).toBe(4);
    expect(smallest?.watts).toBe(0);
  });

  test("looks on the roof, and on legs where there are any", () => {
    const { plan, skies } = found(1, 0);
    const shares: number[] = [];
    const both = smallestPanelsOfPlan(plan, skies, (share) => shares.push(share));
    expect(both.map(({ where }) => where)).toEqual(["roof", "legs"]);
    expect(shares[0]).toBeCloseTo(1 / 18, 9);
    expect(shares[1]).toBeCloseTo(0.5 + 1 / 18, 9);
    const bare = quickPlan({ ...pump(1), stand: {} });
    expect(smallestPanelsOfPlan(bare, skies).map(({ where }) => where)).toEqual(["roof"]);
  });
});
