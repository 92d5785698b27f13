import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bestSet } from "../../../lib/season/legs/best-set.ts";
import { bestLegSets } from "../../../lib/season/legs/leg-set.ts";
import { bestPeakedSets } from "../../../lib/season/legs/peaked-set.ts";
import { bestPoorestSet } from "../../../lib/season/legs/poorest-set.ts";
import { bestCalendars } from "../../../lib/season/legs/swap-calendar.ts";
import type { SeasonDay } from "../../../lib/sun/index.ts";

const wh = (...values: readonly number[]): Float64Array => Float64Array.of(...values);

const seasonDay = (month: number): SeasonDay => ({
  date: `2027-0${month}-01`,
  dayOfYear: 1,
  month,
  first: 0,
  end: 0,
  startMs: 0,
  noonMs: 0,
  noonAltitudeDeg: 0,
  sunHours: 0,
});

describe("what searches refuse", () => {
  const season = { groupOfDay: new Uint8Array(2), count: 1 };

  test("a set of less than none, columns of another season", () => {
    expect(() => bestSet(wh(1, 1), [], -1, season)).toThrow(
      new RangeError("bestSet: expected 0 or more columns, received -1"),
    );
    expect(() => bestSet(wh(1, 1), [wh(1, 2), wh(1, 2, 3)], 1, season)).toThrow(
      new RangeError("bestSet: expected columns of 2 days, received 3"),
    );
  });

  test("fewer than no legs, more than four, half a leg", () => {
    const setsOf = (most: number) => bestLegSets([seasonDay(4), seasonDay(4)], wh(1, 1), [], [], most);
    for (const most of [-1, 5, 1.5]) {
      expect(() => setsOf(most)).toThrow(
        new RangeError(`bestLegSets: expected 0 to 4 legs, received ${most}`),
      );
    }
    for (const most of [0, 4]) expect(setsOf(most)).toHaveLength(1);
  });

  test("a calendar without settings or without days", () => {
    expect(() => bestCalendars([], 1)).toThrow(
      new RangeError("bestCalendars: expected settings and days, received 0 and 0"),
    );
    expect(() => bestCalendars([wh()], 1)).toThrow(
      new RangeError("bestCalendars: expected settings and days, received 1 and 0"),
    );
  });
});

describe("best legs, worked by hand", () => {
  const leg = (legMm: number, ...days: readonly number[]) => ({
    name: `leg ${legMm}`,
    legMm,
    tiltDeg: legMm / 10,
    owned: false,
    dayWh: wh(...days),
  });

  test("the season's total and the worst month choose differently", () => {
    // Two days of April and two of June: the first leg brings 14 in all, the second 13; but in April it brings 2 a day.
    const days = [4, 4, 6, 6].map(seasonDay);
    const flat = wh(1, 1, 1, 1);
    const candidates = [leg(300, 2, 2, 5, 5), leg(600, 3, 3, 3.5, 3.5)];
    const best = (objective?: "season total" | "worst month") =>
      bestLegSets(days, flat, [], candidates, 1, ...(objective === undefined ? [] : [objective])).at(-1);
    expect(best()?.legs[0].legMm).toBe(300);
    expect(best()?.scoreWh).toBe(3.5);
    expect(best("season total")?.legs[0].legMm).toBe(300);
    expect(best("worst month")?.legs[0].legMm).toBe(600);
    expect(best("worst month")?.scoreWh).toBe(3);
  });

  test("a leg that adds nothing is left out, and lying flat is always there to compare", () => {
    const sets = bestLegSets([4, 4].map(seasonDay), wh(3, 3), [], [leg(300, 2, 2), leg(600, 3, 3)], 2);
    expect(sets.map(({ legs }) => legs.length)).toEqual([0]);
    expect(bestLegSets([4, 4].map(seasonDay), wh(0, 0), [], [], 1)).toHaveLength(1);
  });
});

/** Every way to spend the days, by trying. */
const mostWithSwaps = (settings: readonly Float64Array[], mostSwaps: number): number => {
  const days = settings[0].length;
  const walk = (day: number, now: number, swaps: number): number =>
    day === days
      ? 0
      : Math.max(
          ...settings.map((dayWh, next) => {
            const spent = swaps + (day > 0 && next !== now ? 1 : 0);
            return spent > mostSwaps ? Number.NEGATIVE_INFINITY : dayWh[day] + walk(day + 1, next, spent);
          }),
        );
  return walk(0, 0, 0);
};

// Small whole numbers, so that days and settings are often alike and sums are exact.
const columnsOf = (count: { minLength: number; maxLength: number }, days: number) =>
  fc.array(
    fc
      .array(fc.integer({ min: 0, max: 9 }), { minLength: days, maxLength: days })
      .map((values) => wh(...values)),
    count,
  );

test("calendars of up to four settings bring what trying every way brings, swap for swap", () => {
  fc.assert(
    fc.property(columnsOf({ minLength: 1, maxLength: 4 }, 6), (settings) => {
      for (const swaps of [0, 1, 2, 5]) {
        const best = bestCalendars(settings, swaps).at(-1);
        expect(best?.totalWh).toBe(mostWithSwaps(settings, swaps));
        expect((best?.stays.length ?? 0) - 1).toBeLessThanOrEqual(swaps);
      }
    }),
    { numRuns: 60 },
  );
});

test("the best set by the poorest group is that of trying every set, however the days are grouped", () => {
  const grouped = fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 6, maxLength: 6 });
  fc.assert(
    fc.property(columnsOf({ minLength: 1, maxLength: 5 }, 6), grouped, (columns, groupOfDay) => {
      fc.pre(new Set(groupOfDay).size === 3);
      const groups = { groupOfDay: Uint8Array.from(groupOfDay), count: 3 };
      const poorest = (indices: readonly number[]): number =>
        Math.min(
          ...[0, 1, 2].map((group) => {
            const days = groupOfDay.flatMap((of, day) => (of === group ? [day] : []));
            return (
              days.reduce(
                (sum, day) => sum + Math.max(0, ...indices.map((index) => columns[index][day])),
                0,
              ) / days.length
            );
          }),
        );
      const every = columns.flatMap((_, a) => [[a], ...columns.map((__, b) => [a, b])]);
      const best = bestPoorestSet(new Float64Array(6), columns, 2, groups);
      expect(best.scoreWh).toBeCloseTo(Math.max(0, ...every.map(poorest)), 10);
      expect(poorest(best.indices)).toBeCloseTo(best.scoreWh, 10);
    }),
  );
});

test("days with two peaks are told; a level stretch is one peak", () => {
  const base = wh(0, 0);
  expect(bestPeakedSets(base, [wh(1, 3), wh(3, 1), wh(2, 2)], 1)).toBeNull();
  const level = bestPeakedSets(base, [wh(1, 2), wh(2, 2), wh(2, 1)], 1);
  expect(level?.at(-1)).toEqual({ indices: [1], scoreWh: 2 });
});
