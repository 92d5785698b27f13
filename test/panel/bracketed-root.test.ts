import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bracketedRoot } from "../../lib/panel/bracketed-root.ts";

describe("bracketedRoot", () => {
  test("finds roots known by other means, rising or falling, from either end", () => {
    expect(bracketedRoot((x) => x * x - 2, 0, 2, 1e-14)).toBeCloseTo(Math.SQRT2, 13);
    expect(bracketedRoot((x) => 2 - x * x, 2, 0, 1e-14)).toBeCloseTo(Math.SQRT2, 13);
    expect(bracketedRoot(Math.cos, 0, 3, 1e-14)).toBeCloseTo(Math.PI / 2, 13);
  });

  test("finds the root of any steep or flat curve between its ends", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.99, max: 0.99, noNaN: true }),
        fc.integer({ min: 0, max: 4 }),
        fc.double({ min: -20, max: 20, noNaN: true }),
        (root, bend, logScale) => {
          const f = (x: number) =>
            Math.exp(logScale) * Math.sign(x - root) * Math.abs(x - root) ** (2 * bend + 1);
          expect(Math.abs(bracketedRoot(f, -1, 1, 1e-12) - root)).toBeLessThan(1e-2);
          if (bend === 0) expect(bracketedRoot(f, -1, 1, 1e-12)).toBeCloseTo(root, 10);
        },
      ),
    );
  });

  test("is quicker than halving on a gentle curve, and never looks outside its ends", () => {
    const seen: number[] = [];
    bracketedRoot(
      (x) => {
        seen.push(x);
        return Math.exp(x) - 5;
      },
      0,
      4,
      1e-12,
    );
    // Halving alone would take 42 looks.
    expect(seen.length).toBeLessThan(30);
    expect(Math.min(...seen)).toBe(0);
    expect(Math.max(...seen)).toBe(4);
  });

  test("gives an end that is itself a root", () => {
    expect(bracketedRoot((x) => x, 0, 1, 1e-12)).toBe(0);
    expect(bracketedRoot((x) => x - 1, 0, 1, 1e-12)).toBe(1);
  });

  test("copes with a curve that is infinite at an end", () => {
    expect(bracketedRoot((x) => Math.log(x), 0, 3, 1e-13)).toBeCloseTo(1, 11);
  });

  test("says NaN where the ends don't differ in sign, or one is NaN", () => {
    expect(bracketedRoot((x) => x * x + 1, -1, 1, 1e-12)).toBeNaN();
    expect(bracketedRoot((x) => -x * x - 1, -1, 1, 1e-12)).toBeNaN();
    expect(bracketedRoot((x) => (x < 0 ? Number.NaN : 1), -1, 1, 1e-12)).toBeNaN();
  });
});
