import { randomLcg } from "d3";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bestSet, type DayGroups, poorestMean } from "../../../lib/season/legs/best-set.ts";
import { bestPoorestSet } from "../../../lib/season/legs/poorest-set.ts";
import { clearLadder, randomPlan } from "../random-plan.ts";

/** Every set of at most `most` of `count` columns. */
const everySet = (count: number, most: number): readonly (readonly number[])[] => {
  const sets: (readonly number[])[] = [[]];
  for (let size = 1, last: (readonly number[])[] = [[]]; size <= most; size += 1) {
    last = last.flatMap((set) =>
      Array.from({ length: count - ((set.at(-1) ?? -1) + 1) }, (_, i) => [
        ...set,
        (set.at(-1) ?? -1) + 1 + i,
      ]),
    );
    sets.push(...last);
  }
  return sets;
};

const scoreOf = (
  base: Float64Array,
  columns: readonly Float64Array[],
  set: readonly number[],
  groups: DayGroups,
): number =>
  poorestMean(
    base.map((wh, day) => Math.max(wh, ...set.map((i) => columns[i][day]))),
    groups,
  );

const bestByTrying = (
  base: Float64Array,
  columns: readonly Float64Array[],
  most: number,
  groups: DayGroups,
): number => Math.max(...everySet(columns.length, most).map((set) => scoreOf(base, columns, set, groups)));

const wholeSeason = (days: number): DayGroups => ({ groupOfDay: new Uint8Array(days), count: 1 });

const byMonth = (months: readonly number[]): DayGroups => {
  const seen = [...new Set(months)];
  return { groupOfDay: Uint8Array.from(months, (month) => seen.indexOf(month)), count: seen.length };
};

describe("bestSet", () => {
  it("counts its sets right: 1 + 12 + 66 + 220 + 495", () => {
    expect(everySet(12, 4)).toHaveLength(794);
  });

  const seeds = Array.from({ length: 20 }, (_, index) => index + 1);

  it.each(seeds)(
    "plan %i: finds what trying every set finds, for the season and for the worst month",
    (seed) => {
      const ladder = clearLadder(
        randomPlan(seed),
        Array.from({ length: 13 }, (_, index) => index * 7),
      );
      const [base, ...columns] = ladder.dayWh;
      for (const groups of [wholeSeason(base.length), byMonth(ladder.days.map(({ month }) => month))]) {
        let before = poorestMean(base, groups);
        for (let most = 1; most <= 4; most += 1) {
          const set = bestSet(base, columns, most, groups);
          const tried = bestByTrying(base, columns, most, groups);
          // The same sums; equal but for the order in which two alike sets were met.
          expect(Math.abs(set.scoreWh - tried)).toBeLessThanOrEqual(1e-11 * tried);
          expect(set.scoreWh).toBe(scoreOf(base, columns, set.indices, groups));
          const quick = bestPoorestSet(base, columns, most, groups);
          expect(Math.abs(quick.scoreWh - tried)).toBeLessThanOrEqual(1e-11 * tried);
          expect(quick.scoreWh).toBe(scoreOf(base, columns, quick.indices, groups));
          // A further leg never brings less.
          expect(set.scoreWh).toBeGreaterThanOrEqual(before);
          before = set.scoreWh;
        }
      }
    },
  );

  it("is exact on columns of pure noise too, where no bound helps", () => {
    const random = randomLcg(0.25);
    const noise = () => Float64Array.from({ length: 20 }, () => 100 * random());
    for (let round = 0; round < 20; round += 1) {
      const base = noise().map((wh) => wh / 2);
      const columns = Array.from({ length: 9 }, noise);
      const groups: DayGroups = {
        groupOfDay: Uint8Array.from({ length: 20 }, (_, day) => day % 3),
        count: 3,
      };
      for (const most of [1, 2, 3, 4]) {
        expect(bestPoorestSet(base, columns, most, groups).scoreWh).toBeCloseTo(
          bestByTrying(base, columns, most, groups),
          9,
        );
        expect(bestSet(base, columns, most, groups).scoreWh).toBeCloseTo(
          bestByTrying(base, columns, most, groups),
          9,
        );
      }
    }
  });

  it("a legless season, and one leg too many, are no trouble", () => {
    const base = Float64Array.of(3, 4);
    expect(bestSet(base, [], 3, wholeSeason(2))).toEqual({ indices: [], scoreWh: 3.5 });
    expect(bestSet(base, [Float64Array.of(5, 1)], 3, wholeSeason(2))).toEqual({ indices: [0], scoreWh: 4.5 });
    // A leg that brings nothing is not in the set.
    expect(bestSet(base, [Float64Array.of(3, 4)], 1, wholeSeason(2)).indices).toEqual([]);
    expect(() => bestSet(base, [Float64Array.of(1)], 1, wholeSeason(2))).toThrow(RangeError);
    expect(() => bestSet(base, [], -1, wholeSeason(2))).toThrow(RangeError);
  });

  it("the greedy choice is beaten where it must be", () => {
    // Greedy takes the all-round column first; the two specialists together bring more.
    const base = Float64Array.of(0, 0);
    const columns = [Float64Array.of(6, 6), Float64Array.of(10, 0), Float64Array.of(0, 10)];
    expect(bestSet(base, columns, 1, wholeSeason(2)).indices).toEqual([0]);
    expect(bestSet(base, columns, 2, wholeSeason(2)).indices).toEqual([1, 2]);
  });

  it("the score never falls when a day rises", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 6, maxLength: 6 }),
        fc.nat(5),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (days, which, more) => {
          const groups: DayGroups = { groupOfDay: Uint8Array.of(0, 0, 1, 1, 2, 2), count: 3 };
          const raised = Float64Array.from(days, (wh, day) => (day === which ? wh + more : wh));
          expect(poorestMean(raised, groups)).toBeGreaterThanOrEqual(
            poorestMean(Float64Array.from(days), groups),
          );
        },
      ),
    );
  });
});
