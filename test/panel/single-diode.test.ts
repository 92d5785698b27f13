import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import {
  currentAt,
  type DiodeCurve,
  maxPowerPoint,
  openCircuitV,
  shortCircuitA,
} from "../../lib/panel/index.ts";
import { anyCurve } from "./any-curve.ts";

/** The equation itself: what is left over when a current is put in. */
const leftOver = (curve: DiodeCurve, volts: number, amps: number): number => {
  const diodeV = volts + amps * curve.seriesOhm;
  return (
    curve.photocurrentA -
    curve.saturationA * Math.expm1(diodeV / curve.idealityV) -
    diodeV / curve.shuntOhm -
    amps
  );
};

/** The current by plain bisection of the equation: slow, and with nothing in common with the closed form. */
const bisected = (curve: DiodeCurve, volts: number): number => {
  let [low, high] = [-10 * curve.photocurrentA, 2 * curve.photocurrentA];
  for (let step = 0; step < 200; step += 1) {
    const middle = (low + high) / 2;
    if (leftOver(curve, volts, middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};

describe("currentAt", () => {
  test("solves the equation, as bisection does", () => {
    fc.assert(
      fc.property(anyCurve, fc.double({ min: 0, max: 1.02, noNaN: true }), (curve, share) => {
        const volts = share * openCircuitV(curve);
        expect(Math.abs(currentAt(curve, volts) - bisected(curve, volts))).toBeLessThan(
          1e-9 * curve.photocurrentA,
        );
      }),
    );
  });

  test("falls as the voltage rises", () => {
    fc.assert(
      fc.property(anyCurve, (curve) => {
        const open = openCircuitV(curve);
        for (let share = 0.1; share <= 1; share += 0.1) {
          expect(currentAt(curve, share * open)).toBeLessThan(currentAt(curve, (share - 0.1) * open));
        }
      }),
    );
  });

  test("holds at both limits of the resistances", () => {
    const ideal = {
      photocurrentA: 5,
      saturationA: 1e-9,
      seriesOhm: 0,
      shuntOhm: Number.POSITIVE_INFINITY,
      idealityV: 1,
    };
    expect(currentAt(ideal, 0)).toBeCloseTo(5, 12);
    expect(currentAt(ideal, 20)).toBeCloseTo(5 - 1e-9 * Math.expm1(20), 12);
    expect(currentAt({ ...ideal, seriesOhm: 1e-9 }, 20)).toBeCloseTo(currentAt(ideal, 20), 6);
    expect(openCircuitV(ideal)).toBeCloseTo(Math.log1p(5e9), 10);
  });

  test("is negative above the open-circuit voltage", () => {
    fc.assert(
      fc.property(anyCurve, (curve) => {
        expect(currentAt(curve, 1.05 * openCircuitV(curve))).toBeLessThan(0);
      }),
    );
  });
});

describe("openCircuitV and shortCircuitA", () => {
  test("are where current and voltage vanish", () => {
    fc.assert(
      fc.property(anyCurve, (curve) => {
        expect(Math.abs(currentAt(curve, openCircuitV(curve)))).toBeLessThan(1e-9 * curve.photocurrentA);
        expect(shortCircuitA(curve)).toBeLessThanOrEqual(curve.photocurrentA * (1 + 1e-9));
        expect(shortCircuitA(curve)).toBeGreaterThan(0);
      }),
    );
  });

  test("are 0 in the dark", () => {
    const dark = { photocurrentA: 0, saturationA: 1e-9, seriesOhm: 0.3, shuntOhm: 100, idealityV: 0.9 };
    expect(openCircuitV(dark)).toBe(0);
    expect(shortCircuitA(dark)).toBeCloseTo(0, 12);
    expect(maxPowerPoint(dark)).toEqual({ volts: 0, amps: 0, watts: 0 });
  });
});

describe("maxPowerPoint", () => {
  test("lies on the curve, and no other point gives more", () => {
    fc.assert(
      fc.property(anyCurve, (curve) => {
        const { volts, amps, watts } = maxPowerPoint(curve);
        expect(amps).toBeCloseTo(currentAt(curve, volts), 7);
        expect(watts).toBe(volts * amps);
        const open = openCircuitV(curve);
        for (let share = 0; share <= 1; share += 0.01) {
          expect(share * open * currentAt(curve, share * open)).toBeLessThanOrEqual(watts * (1 + 1e-12));
        }
      }),
    );
  });

  test("lets NaN through", () => {
    const curve = {
      photocurrentA: Number.NaN,
      saturationA: 1e-9,
      seriesOhm: 0.3,
      shuntOhm: 100,
      idealityV: 0.9,
    };
    expect(maxPowerPoint(curve).watts).toBeNaN();
    expect(currentAt(curve, 12)).toBeNaN();
  });
});

/** How often an exponential, by far the costliest part of a round, is asked for. */
const exponentials = (work: () => unknown): number => {
  const exp = vi.spyOn(Math, "exp");
  try {
    work();
    return exp.mock.calls.length;
  } finally {
    exp.mockRestore();
  }
};

describe("Newton's rounds are few, on any curve", () => {
  test("some seven for the open-circuit voltage, with one exponential each", () => {
    fc.assert(
      fc.property(anyCurve, (curve) => {
        expect(exponentials(() => openCircuitV(curve))).toBeLessThanOrEqual(8);
      }),
    );
  });

  test("some ten for the point of most power, with two each; six on average", () => {
    let [all, curves] = [0, 0];
    fc.assert(
      fc.property(anyCurve, (curve) => {
        const each = exponentials(() => maxPowerPoint(curve)) - exponentials(() => openCircuitV(curve));
        expect(each).toBeLessThanOrEqual(2 * 11);
        all += each;
        curves += 1;
      }),
    );
    expect(all / curves).toBeLessThan(2 * 7);
  });
});
