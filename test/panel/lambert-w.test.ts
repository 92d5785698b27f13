import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { lambertW0, lambertW0OfExp } from "../../lib/panel/lambert-w.ts";

describe("lambertW0", () => {
  test("undoes w e^w", () => {
    fc.assert(
      fc.property(fc.double({ min: -0.99, max: 100, noNaN: true }), (w) => {
        // Beside -1 the function's slope is unbounded: rounding of the argument is worth its square root.
        const sensitivity = 1 / Math.abs(1 + w);
        expect(Math.abs(lambertW0(w * Math.exp(w)) - w)).toBeLessThan(
          1e-14 * Math.max(1, Math.abs(w)) * (1 + sensitivity),
        );
      }),
    );
  });

  test("is -1 at the branch point, 0 at 0, 1 at e, and nothing below -1/e", () => {
    expect(lambertW0(-1 / Math.E)).toBeCloseTo(-1, 7);
    expect(lambertW0(0)).toBe(0);
    expect(lambertW0(Math.E)).toBeCloseTo(1, 15);
    expect(lambertW0(-0.37)).toBeNaN();
    expect(lambertW0(Number.NaN)).toBeNaN();
  });
});

describe("lambertW0OfExp", () => {
  test("solves w + ln w = y from where e^y is tiny to where it overflows", () => {
    fc.assert(
      fc.property(fc.double({ min: -700, max: 1e6, noNaN: true }), (y) => {
        const w = lambertW0OfExp(y);
        expect(w).toBeGreaterThan(0);
        expect(Math.abs(w + Math.log(w) - y)).toBeLessThanOrEqual(1e-14 * Math.max(1, Math.abs(y)));
      }),
    );
  });

  test("agrees with the function of the argument itself", () => {
    for (const x of [1e-5, 0.3, 1, 7, 1e9]) expect(lambertW0OfExp(Math.log(x))).toBe(lambertW0(x));
  });

  test("is 0 where e^y underflows, and lets NaN through", () => {
    expect(lambertW0OfExp(-800)).toBe(0);
    expect(lambertW0OfExp(Number.NEGATIVE_INFINITY)).toBe(0);
    expect(lambertW0OfExp(Number.NaN)).toBeNaN();
  });
});

describe("rounds are few, wherever it is asked", () => {
  const callsOf = (name: "exp" | "log", work: () => unknown): number => {
    const spy = vi.spyOn(Math, name);
    try {
      work();
      return spy.mock.calls.length;
    } finally {
      spy.mockRestore();
    }
  };

  test("one logarithm each by Newton's method, eight at most with the first guess's", () => {
    fc.assert(
      fc.property(fc.double({ min: -700, max: 700, noNaN: true }), (y) => {
        expect(callsOf("log", () => lambertW0OfExp(y))).toBeLessThanOrEqual(8);
      }),
    );
  });

  test("one exponential each by Halley's, five at most from the branch point to 0", () => {
    fc.assert(
      fc.property(fc.double({ min: -1 / Math.E, max: -1e-300, noNaN: true }), (x) => {
        expect(callsOf("exp", () => lambertW0(x))).toBeLessThanOrEqual(5);
      }),
    );
  });
});
