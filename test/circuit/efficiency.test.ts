import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { efficiencyCurve } from "../../lib/circuit/index.ts";

/** A peak in the middle: 90 % at 10 W, 98 % at 50 W, 30 % at 100 W. */
const peaked = () =>
  efficiencyCurve(
    [
      { loadPct: 10, efficiencyPct: 90 },
      { loadPct: 50, efficiencyPct: 98 },
      { loadPct: 100, efficiencyPct: 30 },
    ],
    100,
  );

describe("efficiencyCurve", () => {
  test("is straight between its points and level before the first and after the last", () => {
    const { outW } = peaked();
    expect(outW(5)).toBeCloseTo(4.5, 12);
    expect(outW(10)).toBeCloseTo(9, 12);
    // Half way from 90 % to 98 %.
    expect(outW(30)).toBeCloseTo(30 * 0.94, 12);
    expect(outW(50)).toBeCloseTo(49, 12);
    // A tenth of the way from 98 % to 30 %: 91.2 % of 55 W.
    expect(outW(55)).toBeCloseTo(50.16, 12);
    const level = efficiencyCurve([{ loadPct: 100, efficiencyPct: 96 }], 200);
    expect([level.outW(50), level.outW(200), level.outW(300)]).toEqual([48, 192, 288]);
    expect(peaked().outW(0)).toBe(0);
    expect(peaked().outW(-3)).toBe(0);
  });

  test("holds what it gave where a falling efficiency would give less for more", () => {
    const { outW } = peaked();
    // Past 50 W the efficiency falls by 1.36 % a watt: W (1.66 - 0.0136 W) is most at 1.66 / 0.0272 = 61.03 W, with
    // 1.66^2 / 0.0544 = 50.66 W out.
    expect(outW(61)).toBeCloseTo(50.6544, 4);
    for (const inW of [61.03, 70, 99, 100, 130, 168]) expect(outW(inW)).toBeCloseTo(50.6544, 3);
    // 30 % of 169 W is more again.
    expect(outW(169)).toBeCloseTo(50.7, 9);
  });

  test("holds it across further points that give less, until one gives more", () => {
    const { outW } = efficiencyCurve(
      [
        { loadPct: 0, efficiencyPct: 100 },
        { loadPct: 10, efficiencyPct: 100 },
        { loadPct: 20, efficiencyPct: 40 },
        { loadPct: 40, efficiencyPct: 40 },
        { loadPct: 100, efficiencyPct: 40 },
      ],
      100,
    );
    // From 10 W on: W (1.6 - 0.06 W), most at 13.33 W with 10.667 W out; 40 % of 26.67 W is that again.
    expect(outW(10)).toBeCloseTo(10, 12);
    expect(outW(12)).toBeCloseTo(10.56, 12);
    for (const inW of [14, 20, 22, 26]) expect(outW(inW)).toBeCloseTo(32 / 3, 12);
    expect(outW(27)).toBeCloseTo(10.8, 12);
    expect(outW(70)).toBeCloseTo(28, 12);
  });

  test("holds the peak of an early stretch past a later one that falls short of it", () => {
    const { outW } = efficiencyCurve(
      [
        { loadPct: 50, efficiencyPct: 90 },
        { loadPct: 60, efficiencyPct: 50 },
        { loadPct: 80, efficiencyPct: 40 },
        { loadPct: 100, efficiencyPct: 40 },
      ],
      100,
    );
    // Falls from 45 W at once (W (2.9 - 0.04 W) is most at 36 W, before the stretch): 45 W is held to the end and beyond.
    for (const inW of [50, 51, 60, 75, 90, 100, 110]) expect(outW(inW)).toBeCloseTo(45, 12);
    expect(outW(120)).toBeCloseTo(48, 12);
  });

  test("never gives less for more, whatever the points", () => {
    const anyPoints = fc
      .uniqueArray(
        fc.record({
          loadPct: fc.integer({ min: 0, max: 100 }),
          efficiencyPct: fc.integer({ min: 0, max: 100 }),
        }),
        { minLength: 1, maxLength: 8, selector: ({ loadPct }) => loadPct },
      )
      .map((points) => points.sort((a, b) => a.loadPct - b.loadPct));
    fc.assert(
      fc.property(anyPoints, (points) => {
        const { outW } = efficiencyCurve(points, 100);
        let before = 0;
        for (let inW = 0; inW <= 120; inW += 2.5) {
          const out = outW(inW);
          expect(out).toBeGreaterThanOrEqual(before - 1e-12);
          expect(out).toBeLessThanOrEqual(inW + 1e-12);
          before = out;
        }
      }),
    );
  });

  test("refuses no point and no power", () => {
    expect(() => efficiencyCurve([], 100)).toThrow(
      new RangeError("efficiencyCurve: expected at least one point, received none"),
    );
    const points = [{ loadPct: 100, efficiencyPct: 96 }];
    expect(() => efficiencyCurve(points, 0)).toThrow(
      new RangeError("efficiencyCurve: expected a rated power above 0 W, received 0"),
    );
    expect(() => efficiencyCurve(points, Number.NaN)).toThrow("received NaN");
  });
});
