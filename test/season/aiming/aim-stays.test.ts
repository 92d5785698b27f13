import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bestSplitDays } from "../../../lib/season/aiming/aim-stays.ts";

const energy = fc.double({ min: 0, max: 50, noNaN: true });
const grid = fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 7 })).chain(([aims, bins]) =>
  fc.array(
    fc.array(energy, { minLength: bins, maxLength: bins }).map((wh) => Float64Array.from(wh)),
    { minLength: aims, maxLength: aims },
  ),
);

/** The best day on at most some aims, by trying every aim in every bin. */
const bruteForce = (
  binWh: readonly Float64Array[],
  mostAims: number,
  mayChange: (edge: number) => boolean,
): number => {
  const bins = binWh[0].length;
  let best = 0;
  const walk = (bin: number, aim: number, aims: number, sum: number): void => {
    if (bin === bins) {
      best = Math.max(best, sum);
      return;
    }
    binWh.forEach((wh, next) => {
      const changes = next !== aim;
      if (changes && bin > 0 && !mayChange(bin)) return;
      const used = aims + (changes ? 1 : 0);
      if (used <= mostAims) walk(bin + 1, next, used, sum + wh[bin]);
    });
  };
  walk(0, -1, 0, 0);
  return best;
};

describe("bestSplitDays", () => {
  test("finds what trying every aim in every bin finds", () => {
    fc.assert(
      fc.property(grid, fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }), (binWh, open) => {
        const mayChange = (edge: number) => open[edge];
        bestSplitDays(binWh, 4, mayChange).forEach((day, index) => {
          expect(day.energyWh).toBeCloseTo(bruteForce(binWh, index + 1, mayChange), 6);
        });
      }),
      { numRuns: 150 },
    );
  });

  test("never brings less with more aims, tells what it brings, and changes only where it may", () => {
    fc.assert(
      fc.property(grid, fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }), (binWh, open) => {
        const days = bestSplitDays(binWh, 4, (edge) => open[edge]);
        days.forEach((day, index) => {
          expect(day.stays.length).toBeLessThanOrEqual(index + 1);
          if (index > 0) expect(day.energyWh).toBeGreaterThanOrEqual(days[index - 1].energyWh);
          let bin = 0;
          let sum = 0;
          for (const { aim, from, to } of day.stays) {
            expect(from).toBe(bin);
            if (from > 0) expect(open[from]).toBe(true);
            for (; bin < to; bin += 1) sum += binWh[aim][bin];
          }
          expect(bin).toBe(binWh[0].length);
          expect(sum).toBeCloseTo(day.energyWh, 6);
        });
      }),
    );
  });

  test("gives the day with fewer aims again where another brings nothing", () => {
    const days = bestSplitDays([Float64Array.of(3, 1), Float64Array.of(1, 3)], 4, () => true);
    expect(days[1]).toEqual({
      stays: [
        { aim: 0, from: 0, to: 1 },
        { aim: 1, from: 1, to: 2 },
      ],
      energyWh: 6,
    });
    expect(days[3]).toBe(days[1]);
  });

  test("holds still in the dark", () => {
    expect(bestSplitDays([new Float64Array(4)], 2, () => true)[1]).toEqual({
      stays: [{ aim: 0, from: 0, to: 4 }],
      energyWh: 0,
    });
  });

  test("refuses a day without aims", () => {
    expect(() => bestSplitDays([], 1, () => true)).toThrow(RangeError);
    expect(() => bestSplitDays([Float64Array.of(1)], 0, () => true)).toThrow(RangeError);
  });
});
