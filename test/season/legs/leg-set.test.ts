import { sum } from "d3";
import { describe, expect, it } from "vitest";
import { readPlan } from "../../../lib/plan/index.ts";
import { bestSet } from "../../../lib/season/legs/best-set.ts";
import { bestLegSets, dayGroups, ENERGY_OBJECTIVES, type LegDays } from "../../../lib/season/legs/leg-set.ts";
import { bestPeakedSets } from "../../../lib/season/legs/peaked-set.ts";
import { sawableLegs } from "../../../lib/stand/sawable.ts";
import { standPanels } from "../../../lib/stand/stand-panel.ts";
import { stowing } from "../../../lib/stand/stow.ts";
import { clearLadder, randomPlan } from "../random-plan.ts";

const seeds = Array.from({ length: 20 }, (_, index) => index + 1);

describe("bestPeakedSets", () => {
  const tilts = Array.from({ length: 19 }, (_, index) => 5 * index);

  it("agrees with the search on every plan whose days are single-peaked, and there are such", () => {
    let agreed = 0;
    for (const seed of seeds) {
      const [base, ...columns] = clearLadder(randomPlan(seed), tilts).dayWh;
      const peaked = bestPeakedSets(base, columns, 4);
      if (peaked === null) continue;
      agreed += 1;
      const groups = { groupOfDay: new Uint8Array(base.length), count: 1 };
      for (const { indices, scoreWh } of peaked) {
        const searched = bestSet(base, columns, indices.length, groups);
        // The same sums taken in another order.
        expect(Math.abs(scoreWh - searched.scoreWh)).toBeLessThanOrEqual(1e-11 * searched.scoreWh);
      }
    }
    expect(agreed).toBeGreaterThanOrEqual(10);
  });

  it("knows a day with two peaks when it sees one", () => {
    const base = Float64Array.of(0, 0);
    const twoPeaks = [Float64Array.of(1, 3), Float64Array.of(2, 1), Float64Array.of(1, 3)];
    expect(bestPeakedSets(base, twoPeaks, 2)).toBeNull();
    const onePeak = [Float64Array.of(1, 3), Float64Array.of(2, 2), Float64Array.of(1, 2)];
    expect(bestPeakedSets(base, onePeak, 2)?.map(({ indices }) => indices)).toEqual([[], [0], [0, 1]]);
  });

  it("is right on days that peak anywhere with a base that cuts in", () => {
    // Hills of random height and place: single-peaked by making.
    for (let round = 1; round <= 30; round += 1) {
      const columns = Array.from({ length: 8 }, (_, tilt) =>
        Float64Array.from({ length: 15 }, (_, day) => {
          const peak = (day * round * 7) % 9;
          return Math.max(0, 50 + ((day * 13 + round) % 30) - ((round % 4) + 1) * (tilt - peak) ** 2);
        }),
      );
      const base = Float64Array.from({ length: 15 }, (_, day) => (day * 11 * round) % 60);
      const groups = { groupOfDay: new Uint8Array(15), count: 1 };
      for (const { indices, scoreWh } of bestPeakedSets(base, columns, 4) ?? []) {
        expect(scoreWh).toBeCloseTo(bestSet(base, columns, indices.length, groups).scoreWh, 9);
      }
    }
  });
});

describe("bestLegSets", () => {
  const plan = readPlan({
    site: { latitudeDeg: 48, longitudeDeg: 2 },
    season: { from: "2027-03-10", to: "2027-10-20", stepMinutes: 60 },
    panels: [{ name: "panel", module: { powerW: 100 }, lengthMm: 1100 }],
    stand: { pivotMm: 600 },
  });
  const legs = sawableLegs(plan.stand, stowing(plan.stand, standPanels(plan).shortestMm));
  const ladder = clearLadder(plan, [0, ...legs.map(({ tiltDeg }) => tiltDeg)]);
  const [flatWh, ...columns] = ladder.dayWh;
  const candidates: readonly LegDays[] = legs.map((leg, index) => ({ ...leg, dayWh: columns[index] }));

  it("offers every step of the saw that stands and stows", () => {
    const stow = stowing(plan.stand, standPanels(plan).shortestMm);
    for (const { legMm } of legs) {
      expect(legMm % plan.stand.cutting.stepMm).toBeCloseTo(0, 9);
      expect(legMm).toBeLessThanOrEqual(stow.limitMm);
    }
    const next = (legs.at(-1)?.legMm ?? 0) + plan.stand.cutting.stepMm;
    expect(next > stow.limitMm || next > plan.stand.pivotMm).toBe(true);
  });

  it.each(ENERGY_OBJECTIVES)("%s: each further leg adds what it says, and never takes away", (objective) => {
    const sets = bestLegSets(ladder.days, flatWh, [], candidates, 3, objective);
    expect(sets[0]).toMatchObject({ legs: [], addsWh: 0 });
    sets.slice(1).forEach((set, index) => {
      expect(set.addsWh).toBeGreaterThan(0);
      expect(set.scoreWh).toBeCloseTo(sets[index].scoreWh + set.addsWh, 9);
      expect(set.totalWh).toBeCloseTo(sum(set.dayWh), 6);
    });
  });

  it("the worst month is better served by the set chosen for it, the season by the other", () => {
    const [bySeason, byMonth] = ENERGY_OBJECTIVES.map((objective) =>
      bestLegSets(ladder.days, flatWh, [], candidates, 2, objective).at(-1),
    );
    if (!bySeason || !byMonth) throw new Error("no set");
    expect(byMonth.totalWh).toBeLessThanOrEqual(bySeason.totalWh + 1e-6);
    const groups = dayGroups(ladder.days, "worst month");
    const poorest = (dayWh: Float64Array) => bestSet(dayWh, [], 0, groups).scoreWh;
    expect(poorest(byMonth.dayWh)).toBeGreaterThanOrEqual(poorest(bySeason.dayWh) - 1e-9);
  });

  it("an owned leg stays, and the new one is chosen to go with it", () => {
    const owned = candidates[Math.floor(candidates.length / 2)];
    const alone = bestLegSets(ladder.days, flatWh, [], candidates, 1)[1];
    const beside = bestLegSets(ladder.days, flatWh, [owned], candidates, 1);
    expect(beside[0].totalWh).toBeGreaterThan(sum(flatWh));
    expect(beside[beside.length - 1].totalWh).toBeGreaterThanOrEqual(alone.totalWh - 1e-9);
    beside[0].dayWh.forEach((wh, day) => {
      expect(wh).toBe(Math.max(flatWh[day], owned.dayWh[day]));
    });
  });

  it("refuses a number of legs that is none", () => {
    expect(() => bestLegSets(ladder.days, flatWh, [], candidates, 5)).toThrow(RangeError);
    expect(() => bestLegSets(ladder.days, flatWh, [], candidates, 1.5)).toThrow(RangeError);
  });
});
