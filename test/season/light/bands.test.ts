import { quantileSorted } from "d3";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bandOfSkies, meanOfSkies } from "../../../lib/season/light/bands.ts";

const skies = fc
  .array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 5, maxLength: 30 })
  .map((values) => values.map((value) => Float64Array.of(value)));

const even = (count: number): readonly number[] => Array.from({ length: count }, () => 1 / count);

describe("meanOfSkies", () => {
  test("of no sky is no day", () => {
    expect(meanOfSkies([], [])).toHaveLength(0);
  });

  test("weighs each sky", () => {
    expect([...meanOfSkies([Float64Array.of(10, 0), Float64Array.of(20, 8)], [0.25, 0.75])]).toEqual([
      17.5, 6,
    ]);
  });
});

describe("bandOfSkies", () => {
  test("is unknown below five skies", () => {
    expect(bandOfSkies(Array(4).fill(Float64Array.of(1)), even(4))).toBeNull();
  });

  test("p10 <= p50 <= p90, all within the skies", () => {
    fc.assert(
      fc.property(skies, (days) => {
        const band = bandOfSkies(days, even(days.length));
        const values = days.map(([value]) => value);
        expect(band!.p10Wh[0]).toBeGreaterThanOrEqual(Math.min(...values));
        expect(band!.p50Wh[0]).toBeGreaterThanOrEqual(band!.p10Wh[0]);
        expect(band!.p90Wh[0]).toBeGreaterThanOrEqual(band!.p50Wh[0]);
        expect(band!.p90Wh[0]).toBeLessThanOrEqual(Math.max(...values));
      }),
    );
  });

  test("the median of evenly weighted skies is the median of d3", () => {
    fc.assert(
      fc.property(skies, (days) => {
        const sorted = days.map(([value]) => value).sort((a, b) => a - b);
        const median = quantileSorted(sorted, 0.5);
        expect(bandOfSkies(days, even(days.length))!.p50Wh[0]).toBeCloseTo(median ?? Number.NaN, 9);
      }),
    );
  });

  test("pulls the median towards the sky with most of the weight", () => {
    const days = [3, 1, 4, 2, 5].map((value) => Float64Array.of(value));
    const band = bandOfSkies(days, [0.05, 0.05, 0.8, 0.05, 0.05]);
    // By hand: 3 stands at 0.125 of the weight and 4 at 0.15 + 0.4 = 0.55, so 0.5 is 3 + 0.375 / 0.425.
    expect(band?.p50Wh[0]).toBeCloseTo(3 + 0.375 / 0.425, 12);
  });

  test("by hand, day by day, skies in any order", () => {
    // Five alike: 10, 20 ... 50 stand at 0.1, 0.3, 0.5, 0.7 and 0.9 of the weight, so p10, p50 and p90 are three of them.
    const days = [30, 10, 50, 20, 40].map((value) => Float64Array.of(value, 100 - value));
    const band = bandOfSkies(days, even(5));
    expect(band?.p10Wh[0]).toBeCloseTo(10, 9);
    expect(band?.p50Wh[0]).toBeCloseTo(30, 9);
    expect(band?.p90Wh[0]).toBeCloseTo(50, 9);
    expect(band?.p10Wh[1]).toBeCloseTo(50, 9);
    expect(band?.p90Wh[1]).toBeCloseTo(90, 9);
    // Ten alike stand at 0.05, 0.15 ...: p10 lies half-way between the first two, p90 between the last two.
    const ten = bandOfSkies(
      Array.from({ length: 10 }, (_, sky) => Float64Array.of(10 * sky)),
      even(10),
    );
    expect(ten?.p10Wh[0]).toBeCloseTo(5, 9);
    expect(ten?.p90Wh[0]).toBeCloseTo(85, 9);
  });

  test("beyond the outer skies lies nothing: the darkest is p10 where it weighs more than a fifth", () => {
    const days = [1, 2, 3, 4, 5].map((value) => Float64Array.of(value));
    // 1 stands at 0.15 of the weight, 5 at 0.85.
    const band = bandOfSkies(days, [0.3, 0.15, 0.1, 0.15, 0.3]);
    expect([band?.p10Wh[0], band?.p90Wh[0]]).toEqual([1, 5]);
    // A sky without weight stands where its neighbour ends, and divides by nothing.
    const none = bandOfSkies(days, [0, 0, 0.5, 0, 0.5]);
    expect([none?.p10Wh[0], none?.p50Wh[0], none?.p90Wh[0]].every(Number.isFinite)).toBe(true);
  });
});
