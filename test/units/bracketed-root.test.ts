import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bracketedRoot } from "../../lib/units/bracketed-root.ts";

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

describe("looks at the function", () => {
  const looks = (f: (x: number) => number, low: number, high: number, tolerance: number) => {
    const seen: number[] = [];
    const root = bracketedRoot(
      (x) => {
        seen.push(x);
        return f(x);
      },
      low,
      high,
      tolerance,
    );
    return { seen, root };
  };

  test("a straight line takes one between its ends, whichever way it runs", () => {
    // Dyadic numbers, so that nothing is rounded: 3 (x - 1.25) from -1 to 3 is 0 at 1.25.
    expect(looks((x) => 3 * (x - 1.25), -1, 3, 1e-12)).toEqual({ seen: [-1, 3, 1.25], root: 1.25 });
    expect(looks((x) => 3 * (1.25 - x), -1, 3, 1e-12).seen).toEqual([-1, 3, 1.25]);
    expect(looks((x) => 3 * (x - 1.25), 3, -1, 1e-12).seen).toEqual([3, -1, 1.25]);
  });

  test("an end that is a root takes none", () => {
    expect(looks((x) => x, 0, 1, 1e-12).seen).toEqual([0, 1]);
    expect(looks((x) => x - 1, 0, 1, 1e-12).seen).toEqual([0, 1]);
  });

  test("a parabola: false position, then the end that stayed counts half", () => {
    // x^2 - 1 from 4, where it is 15, to 0, where it is -1: 4 / 16 = 0.25, of value -0.9375. 15 stayed and counts 7.5:
    // 0.25 + 0.9375 x 3.75 / 8.4375 = 2 / 3. The third look is the middle between that and 4.
    const { seen } = looks((x) => x * x - 1, 4, 0, 1e-12);
    expect(seen[2]).toBe(0.25);
    expect(seen[3]).toBeCloseTo(2 / 3, 12);
    expect(seen[4]).toBeCloseTo(7 / 3, 12);
  });

  test("no curve takes more than three for each halving of its bracket", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.99, max: 0.99, noNaN: true }),
        fc.integer({ min: 1, max: 8 }),
        fc.integer({ min: -60, max: 60 }).filter((steep) => steep !== 0),
        (root, bend, steep) => {
          const odd = (x: number) => (x - root) ** (2 * bend + 1);
          const bent = (x: number) => Math.exp(steep * x) - Math.exp(steep * root);
          for (const f of [odd, bent]) {
            // From 2 down to 2^-20 in 21 halvings.
            const found = looks(f, -1, 1, 2 ** -20);
            expect(found.seen.length).toBeLessThanOrEqual(2 + 3 * 21);
            expect(Math.abs(found.root - root)).toBeLessThanOrEqual(2 ** -20);
          }
        },
      ),
    );
  });

  test("ends as soon as the bracket is as narrow as asked", () => {
    const f = (x: number) => Math.exp(x) - 5;
    const [rough, fine] = [0.5, 1e-12].map((tolerance) => looks(f, 0, 4, tolerance));
    expect(rough.seen.length).toBeLessThan(fine.seen.length - 2);
    expect(Math.abs(rough.root - Math.log(5))).toBeLessThanOrEqual(0.5);
    expect(looks(f, 0, 4, 4).seen).toEqual([0, 4]);
  });
});
