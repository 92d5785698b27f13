import { sum } from "d3";
import { describe, expect, it } from "vitest";
import { type Plan, type PlanInput, readPlan } from "../../../lib/plan/index.ts";
import { chosenLegs, legsAsSettings, legsOfSet } from "../../../lib/season/legs/chosen-legs.ts";
import { bestLegSets } from "../../../lib/season/legs/leg-set.ts";
import {
  bestLegsOfPlan,
  legCandidates,
  legsAnswer,
  lyingFlat,
  ownedLegs,
  settingFacts,
} from "../../../lib/season/legs/legs-answer.ts";
import { type StandSeason, standSeason } from "../../../lib/season/legs/stand-season.ts";
import { swapsAnswer } from "../../../lib/season/legs/swaps-answer.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { facingOf, settingsOf } from "../../../lib/season/light/settings.ts";
import { clearSkies } from "../random-plan.ts";

const OWNED = { name: "short", lengthMm: 200, owned: true };
const LONG = { name: "long", lengthMm: 600 };
const BY_TILT = { name: "steep", tiltDeg: 60, readFrom: "ground" as const };

const planWith = (stand: PlanInput["stand"] = {}, latitudeDeg = 50): Plan =>
  readPlan({
    site: { latitudeDeg, longitudeDeg: 8 },
    season: { from: "2027-03-30", to: "2027-04-02", stepMinutes: 60 },
    panels: [{ name: "panel", module: { powerW: 100 }, lengthMm: 1100 }],
    stand: { pivotMm: 600, cutting: { stepMm: 100 }, ...stand },
  });

const seasonOf = (plan: Plan): StandSeason => standSeason(plan, clearSkies(plan), panelUnits(plan.panels));

describe("standSeason", () => {
  it("maps every degree from flat to upright at the stand's own bearing", () => {
    const { ladder, facingDeg, days } = seasonOf(planWith({ facingDeg: 200 }));
    expect(facingDeg).toBe(200);
    expect(ladder.bearingDeg).toBe(200);
    expect(ladder.tiltsDeg).toEqual(Array.from({ length: 91 }, (_, tilt) => tilt));
    expect(days.map(({ date }) => date)).toEqual(["2027-03-30", "2027-03-31", "2027-04-01", "2027-04-02"]);
  });

  it("refines a map of 3-degree steps: what it says at 31 degrees is what the engine says, to 0.02 %", () => {
    const { ladder, energy } = seasonOf(planWith());
    for (const tilt of [0, 1, 31, 44, 89]) {
      energy(tilt, 180).forEach((wh, day) => {
        expect(Math.abs(ladder.dayWh[tilt][day] / wh - 1)).toBeLessThan(2e-4);
      });
    }
  });
});

describe("settingsOf", () => {
  it("has flat first, then the legs in the plan's order, all at the stand's bearing", () => {
    const settings = settingsOf(planWith({ legs: [LONG, BY_TILT], facingDeg: 360 }));
    expect(settings).toMatchObject([
      { name: "flat", legMm: null, tiltDeg: 0, bearingDeg: 0 },
      { name: "long", legMm: 600, bearingDeg: 0 },
      { name: "steep", bearingDeg: 0 },
    ]);
    // A square leg as long as its pivot distance stands at 45 degrees; 60 degrees take tan 60 times that.
    expect(settings[1].tiltDeg).toBeCloseTo(45, 9);
    expect(settings[2].legMm).toBeCloseTo(600 * Math.sqrt(3), 9);
  });

  it("faces the equator unless told otherwise", () => {
    expect(facingOf(planWith())).toBe(180);
    expect(facingOf(planWith({}, -30))).toBe(0);
    expect(facingOf(planWith({}, 0))).toBe(180);
  });
});

describe("legs of a plan", () => {
  it("owned ones are those that are marked so and have a length", () => {
    const season = seasonOf(planWith({ legs: [OWNED, LONG, BY_TILT] }));
    const owned = ownedLegs(season);
    expect(owned).toHaveLength(1);
    expect(owned[0].legMm).toBe(200);
    // 200 on 600: atan(1/3) = 18.43 degrees.
    expect(owned[0].tiltDeg).toBeCloseTo(18.43, 2);
    season.energy(owned[0].tiltDeg, 180).forEach((wh, day) => {
      expect(Math.abs(owned[0].dayWh[day] / wh - 1)).toBeLessThan(2e-4);
    });
  });

  it("lying flat is no leg at the lie of the ground", () => {
    expect(lyingFlat(seasonOf(planWith()))).toMatchObject({ legMm: 0, tiltDeg: 0 });
    const sloping = seasonOf(planWith({ groundSlopeDeg: 6 }));
    expect(lyingFlat(sloping).tiltDeg).toBe(6);
    expect(lyingFlat(sloping).dayWh).toBe(sloping.ladder.dayWh[6]);
  });

  it("candidates are the saw's steps, each with its days", () => {
    const season = seasonOf(planWith());
    const candidates = legCandidates(season);
    expect(candidates.map(({ legMm }) => legMm)).toEqual([100, 200, 300, 400, 500]);
    expect(candidates[0].dayWh).not.toEqual(candidates[4].dayWh);
  });
});

describe("bestLegsOfPlan", () => {
  it("asks for up to three legs for the season's total unless told otherwise", () => {
    const season = seasonOf(planWith({ legs: [OWNED] }));
    const asked = (most: number, objective: "season total" | "worst month") =>
      bestLegSets(
        season.days,
        lyingFlat(season).dayWh,
        ownedLegs(season),
        legCandidates(season),
        most,
        objective,
      );
    expect(bestLegsOfPlan(season)).toEqual(asked(3, "season total"));
    expect(bestLegsOfPlan(season, { most: 1, objective: "worst month" })).toEqual(asked(1, "worst month"));
    // March is poorer than April: by the worst month the score is March's mean, by the season that of all four days.
    const [byMonth] = bestLegsOfPlan(season, { most: 0, objective: "worst month" });
    expect(byMonth.scoreWh).toBeCloseTo(sum(byMonth.dayWh.subarray(0, 2)) / 2, 9);
    const [bySeason] = bestLegsOfPlan(season, { most: 0 });
    expect(bySeason.scoreWh).toBeCloseTo(sum(bySeason.dayWh) / 4, 9);
    expect(bestLegsOfPlan(season, { most: 0 })).toHaveLength(1);
  });
});

describe("settingFacts and legsAnswer", () => {
  it("tell what each setting brings all season, and what is to be known about legs", () => {
    const season = seasonOf(planWith({ legs: [LONG] }));
    const [flat, long] = settingFacts(season, settingsOf(season.plan));
    expect(flat.totalWh).toBeCloseTo(sum(season.energy(0, 180)), 6);
    expect(long.totalWh).toBeCloseTo(sum(season.energy(45, 180)), 6);
    expect(flat.tolerance.map(({ period }) => period.name)).toEqual(["season", "2027-03", "2027-04"]);
    expect(flat.tolerance[0].perMmWh).toBeNull();
    const answer = legsAnswer(season);
    expect(answer.objective).toBe("season total");
    expect(answer.settings.map(({ setting }) => setting.name)).toEqual(["flat", "long"]);
    expect(answer.sets).toEqual(bestLegsOfPlan(season));
    expect(answer.bands).toHaveLength(3);
    // At 50 N the latitude's own tilt is 50 degrees.
    expect(answer.rules.find(({ rule }) => rule === "latitude")?.tiltDeg).toEqual([50, 50]);
    expect(answer.ladder).toBe(season.ladder);
  });
});

describe("chosen legs", () => {
  const withLegs = planWith({ legs: [LONG, OWNED] });
  const setsOf = (plan: Plan) => bestLegsOfPlan(seasonOf(plan));

  it("are the plan's own unless a set is asked for", () => {
    expect(chosenLegs(withLegs, setsOf(withLegs), undefined).map(({ name }) => name)).toEqual([
      "long",
      "short",
    ]);
    const [none, one] = setsOf(withLegs);
    expect(chosenLegs(withLegs, [none, one], 1)).toEqual(legsOfSet(withLegs, one));
    expect(chosenLegs(withLegs, [none, one], 0)).toEqual(legsOfSet(withLegs, none));
  });

  it("a set stands beside the owned legs, each under its length", () => {
    const [none, one] = setsOf(withLegs);
    expect(legsOfSet(withLegs, none)).toMatchObject([{ name: "short", owned: true, legMm: 200 }]);
    const [{ legMm, tiltDeg }] = one.legs;
    expect(legsOfSet(withLegs, one).slice(1)).toEqual([
      { name: `leg ${legMm}`, owned: false, legMm, tiltDeg },
    ]);
  });

  it("without legs of its own a plan gets the largest set that pays, also where a larger one is asked for", () => {
    const bare = planWith();
    const sets = setsOf(bare);
    const largest = sets.at(-1);
    if (largest === undefined) throw new Error("expected sets");
    expect(largest.legs.length).toBeGreaterThanOrEqual(1);
    expect(largest.legs.length).toBeLessThan(4);
    expect(chosenLegs(bare, sets, undefined)).toEqual(legsOfSet(bare, largest));
    expect(chosenLegs(bare, sets, 4)).toEqual(legsOfSet(bare, largest));
    expect(chosenLegs(bare, [], 1)).toEqual([]);
  });

  it("become settings after flat, all facing as the stand does", () => {
    const plan = planWith({ legs: [LONG], facingDeg: 170 });
    expect(legsAsSettings(plan, [{ name: "leg 300", owned: false, legMm: 300, tiltDeg: 26.6 }])).toEqual([
      { name: "flat", legMm: null, tiltDeg: 0, bearingDeg: 170 },
      { name: "leg 300", legMm: 300, tiltDeg: 26.6, bearingDeg: 170 },
    ]);
  });
});

describe("swapsAnswer", () => {
  it("sets the calendar of the plan's settings beside the one tilt that is never changed", () => {
    const season = seasonOf(planWith({ legs: [OWNED, LONG] }));
    const answer = swapsAnswer(season);
    expect(answer.settings.map(({ name }) => name)).toEqual(["flat", "short", "long"]);
    answer.settings.forEach(({ tiltDeg }, at) => {
      expect(answer.dayWh[at]).toEqual(season.energy(tiltDeg, 180));
    });
    const totals = season.ladder.dayWh.map((dayWh) => sum(dayWh));
    expect(answer.forgetTiltWh).toBeCloseTo(Math.max(...totals), 9);
    expect(totals[answer.forgetTiltDeg]).toBeCloseTo(Math.max(...totals), 9);
    expect(answer.cloudIn).toBe(false);
    expect(answer.days).toBe(season.days);
    // At 50 N around the first of April 45 degrees are best on each day.
    expect(answer.calendar.stays).toEqual([{ setting: 2, first: 0, end: 4 }]);
  });

  it("keeps what it is told to keep", () => {
    // Wh made up by tilt: the leg is best on the last day alone, by 1 Wh of a gain of 91.
    const season = seasonOf(planWith({ legs: [OWNED, LONG] }));
    const made: StandSeason = {
      ...season,
      energy: (tiltDeg) =>
        tiltDeg === 0
          ? Float64Array.of(0, 0, 0, 0)
          : tiltDeg < 30
            ? Float64Array.of(30, 30, 30, 0)
            : Float64Array.of(0, 0, 0, 1),
    };
    expect(swapsAnswer(made, { keep: 0.98 }).calendar.swaps).toHaveLength(0);
    expect(swapsAnswer(made, { keep: 1, slack: 0.4 }).calendar.swaps).toMatchObject([
      { day: 3, from: 1, to: 2, earlyDays: 1 },
    ]);
  });
});
