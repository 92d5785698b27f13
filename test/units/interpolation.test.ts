import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { between, placeAmong, readCurve } from "../../lib/units/interpolation.ts";

const rising = fc
  .uniqueArray(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 12 })
  .map((nodes) => nodes.sort((a, b) => a - b));

describe("straight lines", () => {
  test("between(low, high, share) reaches both ends and the middle", () => {
    expect([0, 0.5, 1].map((share) => between(4, 10, share))).toEqual([4, 7, 10]);
    expect(between(4, 10, Number.NaN)).toBeNaN();
  });

  test("placeAmong(nodes, at): the place leads back to the point, and stays at the ends beyond them", () => {
    fc.assert(
      fc.property(rising, fc.double({ min: -1500, max: 1500, noNaN: true }), (nodes, at) => {
        const { below, share } = placeAmong(nodes, at);
        const back = between(nodes[below], nodes[below + 1] ?? nodes[below], share);
        const held = Math.min(nodes[nodes.length - 1], Math.max(nodes[0], at));
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
        expect(back).toBeCloseTo(held, 9);
      }),
    );
    expect(placeAmong([0, 10, 30], 15)).toEqual({ below: 1, share: 0.25 });
    expect(placeAmong([0, 10], Number.NaN).share).toBeNaN();
  });

  test("readCurve(curve, at) reads points exactly, lines between them, and the ends beyond", () => {
    const curve = [
      [0, 1],
      [10, 3],
      [20, -1],
    ] as const;
    expect([-5, 0, 5, 10, 15, 20, 99].map((at) => readCurve(curve, at))).toEqual([1, 1, 2, 3, 1, -1, -1]);
    expect(readCurve(curve, Number.NaN)).toBeNaN();
  });
});
