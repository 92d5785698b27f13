import { randomLcg } from "d3";
import { describe, expect, it } from "vitest";
import { bestCalendars, type Stay, swapCalendar } from "../../../lib/season/legs/swap-calendar.ts";
import { clearLadder, randomPlan } from "../random-plan.ts";

const totalOf = (settings: readonly Float64Array[], stays: readonly Stay[]): number =>
  stays.reduce(
    (sum, { setting, first, end }) => sum + settings[setting].subarray(first, end).reduce((a, b) => a + b, 0),
    0,
  );

/** Every calendar with at most `swaps` swaps, by trying all settings and all days. */
const bestByTrying = (settings: readonly Float64Array[], swaps: number): number => {
  const days = settings[0].length;
  const sums = settings.map((dayWh) => {
    const sum = new Float64Array(days + 1);
    for (let day = 0; day < days; day += 1) sum[day + 1] = sum[day] + dayWh[day];
    return sum;
  });
  const from = (first: number, setting: number, left: number): number => {
    let best = sums[setting][days] - sums[setting][first];
    if (left === 0) return best;
    for (let day = first + 1; day < days; day += 1) {
      const kept = sums[setting][day] - sums[setting][first];
      for (let other = 0; other < settings.length; other += 1) {
        if (other !== setting) best = Math.max(best, kept + from(day, other, left - 1));
      }
    }
    return best;
  };
  return Math.max(...settings.map((_, setting) => from(0, setting, swaps)));
};

/** A season shortened to a day in every few, so that trying everything ends. */
const thinned = (dayWh: Float64Array): Float64Array => {
  const every = Math.ceil(dayWh.length / 24);
  return dayWh.filter((_, day) => day % every === 0);
};

const atMost = (settings: readonly Float64Array[], swaps: number): number =>
  Math.max(
    ...bestCalendars(settings, swaps)
      .filter(({ stays }) => stays.length - 1 <= swaps)
      .map(({ totalWh }) => totalWh),
  );

describe("bestCalendars", () => {
  const seeds = Array.from({ length: 20 }, (_, index) => index + 1);

  it.each(seeds)("plan %i: brings what trying every calendar brings, for 0 to 3 swaps", (seed) => {
    const settings = clearLadder(randomPlan(seed), [0, 20, 45, 70]).dayWh.map(thinned);
    for (let swaps = 0; swaps <= 3; swaps += 1) {
      const tried = bestByTrying(settings, swaps);
      expect(Math.abs(atMost(settings, swaps) - tried)).toBeLessThanOrEqual(1e-9 * tried);
    }
  });

  it("is right on noise, where best settings come and go, there and back again", () => {
    const random = randomLcg(0.5);
    for (let round = 0; round < 20; round += 1) {
      const settings = Array.from({ length: 3 }, () =>
        Float64Array.from({ length: 12 }, () => 100 * random()),
      );
      for (let swaps = 0; swaps <= 3; swaps += 1) {
        expect(atMost(settings, swaps)).toBeCloseTo(bestByTrying(settings, swaps), 9);
      }
    }
    // One swap brings less than none; two bring more.
    const settings = [Float64Array.of(5, 5, 0, 5, 5), Float64Array.of(0, 0, 9, 0, 0)];
    expect(bestCalendars(settings, 9).map(({ stays }) => stays.length - 1)).toEqual([0, 2]);
  });

  it("each calendar covers every day once, brings its total, and more than the one before", () => {
    for (const seed of seeds) {
      const settings = clearLadder(randomPlan(seed), [0, 25, 50, 75]).dayWh;
      const days = settings[0].length;
      let before = -1;
      for (const { stays, totalWh } of bestCalendars(settings, 20)) {
        expect(stays[0].first).toBe(0);
        expect(stays.at(-1)?.end).toBe(days);
        stays.slice(1).forEach((stay, index) => {
          expect(stay.first).toBe(stays[index].end);
          expect(stay.setting).not.toBe(stays[index].setting);
        });
        expect(totalOf(settings, stays)).toBeCloseTo(totalWh, 6);
        expect(totalWh).toBeGreaterThan(before);
        before = totalWh;
      }
    }
  });

  it("refuses a season without days", () => {
    expect(() => bestCalendars([], 3)).toThrow(RangeError);
    expect(() => bestCalendars([new Float64Array(0)], 3)).toThrow(RangeError);
  });
});

describe("swapCalendar", () => {
  // Ten days: flat brings 10 a day, the leg 4 at first and 16 later.
  const flat = new Float64Array(10).fill(10);
  const leg = Float64Array.of(4, 4, 4, 4, 9, 11, 16, 16, 16, 16);

  it("changes on the day the leg overtakes, and knows what that is worth", () => {
    const answer = swapCalendar([flat, leg], 1);
    expect(answer.stays).toEqual([
      { setting: 0, first: 0, end: 5 },
      { setting: 1, first: 5, end: 10 },
    ]);
    expect(answer.totalWh).toBe(125);
    expect(answer.everyDayWh).toBe(125);
    expect(answer.firstWh).toBe(100);
    // Never changed, both bring 100; of equals the first.
    expect([answer.forgetSetting, answer.forgetWh]).toEqual([0, 100]);
    expect(answer.keptShare).toBe(1);
    expect(answer.swaps).toMatchObject([{ day: 5, from: 0, to: 1, worthWh: 25 }]);
  });

  it("says how early and how late a swap may be", () => {
    // Gain 25; a slack of 8 % is 2 Wh: one day early costs 1, two cost 7; one day late costs 1, two cost 7.
    const [swap] = swapCalendar([flat, leg], 1, 0.08).swaps;
    expect([swap.earlyDays, swap.lateDays]).toEqual([1, 1]);
    // With 7 Wh to spare: two days each way.
    const [loose] = swapCalendar([flat, leg], 1, 0.28).swaps;
    expect([loose.earlyDays, loose.lateDays]).toEqual([2, 2]);
  });

  it("keeps no more swaps than the share asked for needs", () => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const settings = clearLadder(randomPlan(seed), [0, 25, 50, 75]).dayWh;
      const answer = swapCalendar(settings, 0.99);
      expect(answer.keptShare).toBeGreaterThanOrEqual(0.99 - 1e-9);
      const target = answer.firstWh + 0.99 * (answer.everyDayWh - answer.firstWh);
      const fewer = answer.stays.length - 2;
      if (fewer >= 0) expect(atMost(settings, fewer)).toBeLessThan(target);
      // Every swap is worth making, and more swaps asked for never bring less.
      for (const { worthWh } of answer.swaps) expect(worthWh).toBeGreaterThan(0);
      expect(swapCalendar(settings, 1).totalWh).toBeGreaterThanOrEqual(answer.totalWh);
      expect(answer.forgetWh).toBeLessThanOrEqual(answer.totalWh + 1e-9);
    }
  });

  it("nothing to gain, no swap", () => {
    const answer = swapCalendar([flat, new Float64Array(10)]);
    expect(answer.swaps).toEqual([]);
    expect(answer.keptShare).toBe(1);
  });
});
