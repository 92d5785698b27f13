import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bridgeHoles } from "../../../lib/sky/weather/read/bridge.ts";

const NONE = Number.NaN;

const bridged = (values: readonly number[], longest: number) => {
  const column = Float64Array.from(values);
  return { ...bridgeHoles(column, longest), values: Array.from(column) };
};

describe("bridgeHoles", () => {
  test("runs straight from one side of a hole to the other", () => {
    expect(bridged([4, NONE, NONE, 10], 2)).toEqual({ values: [4, 6, 8, 10], filled: 2, open: [] });
  });

  test("leaves a hole that is one too long, and says where", () => {
    expect(bridged([1, NONE, NONE, NONE, 5, NONE, 7], 2)).toEqual({
      values: [1, NONE, NONE, NONE, 5, 6, 7],
      filled: 1,
      open: [[1, 4]],
    });
  });

  test("a hole at an end takes the value beside it", () => {
    expect(bridged([NONE, 3, NONE, NONE], 2)).toEqual({ values: [3, 3, 3, 3], filled: 3, open: [] });
  });

  test("a column of nothing but holes stays so, however short", () => {
    expect(bridged([NONE], 5)).toEqual({ values: [NONE], filled: 0, open: [[0, 1]] });
    expect(bridged([], 5)).toEqual({ values: [], filled: 0, open: [] });
  });

  test("keeps what was there, and every value filled in lies between its neighbours", () => {
    const cell = fc.oneof(fc.constant(NONE), fc.integer({ min: -20, max: 40 }));
    fc.assert(
      fc.property(fc.array(cell, { maxLength: 30 }), fc.integer({ min: 0, max: 5 }), (given, longest) => {
        const { values, filled, open } = bridged(given, longest);
        const left = open.reduce((sum, [first, end]) => sum + end - first, 0);
        expect(filled + left).toBe(given.filter(Number.isNaN).length);
        expect(values.filter(Number.isNaN)).toHaveLength(left);
        const there = given.filter((value) => !Number.isNaN(value));
        for (const [index, value] of values.entries()) {
          if (!Number.isNaN(given[index])) expect(value).toBe(given[index]);
          else if (!Number.isNaN(value)) {
            expect(value).toBeGreaterThanOrEqual(Math.min(...there));
            expect(value).toBeLessThanOrEqual(Math.max(...there));
          }
        }
      }),
    );
  });
});
