import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Branch, maxPowerV, ParallelBranches } from "../../lib/circuit/index.ts";
import { curveAt, maxPowerPoint } from "../../lib/panel/index.ts";
import { branch, large, small } from "./branch.ts";

const lit = (branches: readonly Branch[], light: number, cellC: number): ParallelBranches => {
  const parallel = new ParallelBranches(branches);
  for (let at = 0; at < branches.length; at += 1) parallel.light(at, light, cellC);
  return parallel;
};

const anyLight = fc.double({ min: 5, max: 1300, noNaN: true });
const anyCellC = fc.double({ min: -20, max: 80, noNaN: true });

describe("maxPowerV", () => {
  test("is the panel's own, and stays at the least voltage where that lies above it", () => {
    fc.assert(
      fc.property(anyLight, anyCellC, fc.double({ min: 0, max: 1, noNaN: true }), (light, cellC, share) => {
        const parallel = lit([branch()], light, cellC);
        const best = maxPowerPoint(curveAt(small, light, cellC));
        const openV = parallel.openV(0);
        expect(Math.abs(maxPowerV(parallel, 0) - best.volts)).toBeLessThan(0.06);
        const leastV = best.volts + 0.1 + share * Math.max(0, openV - best.volts - 0.2);
        fc.pre(leastV < openV);
        expect(maxPowerV(parallel, leastV)).toBe(leastV);
      }),
    );
  });

  test("is none where no branch reaches the least voltage, or the one to start at", () => {
    const parallel = lit([branch()], 800, 40);
    const openV = parallel.openV(0);
    expect(maxPowerV(parallel, openV)).toBeNaN();
    expect(maxPowerV(parallel, openV - 0.1)).toBeCloseTo(openV - 0.1, 2);
    expect(maxPowerV(parallel, 0, openV)).toBeGreaterThan(10);
    expect(maxPowerV(parallel, 0, openV + 1e-9)).toBeNaN();
    expect(maxPowerV(lit([branch()], 0, 20), 0)).toBeNaN();
    // One of two branches is enough to start.
    const both = lit([branch(), branch({ reference: large })], 800, 40);
    expect(maxPowerV(both, 0, both.openV(1))).toBeGreaterThan(10);
    expect(
      maxPowerV(lit([branch({ reference: large }), branch()], 800, 40), 0, both.openV(1)),
    ).toBeGreaterThan(10);
  });

  type Lit = readonly [branch: Branch, light: number, cellC: number];

  const partly = (...all: readonly Lit[]): ParallelBranches => {
    const parallel = new ParallelBranches(all.map(([one]) => one));
    all.forEach(([, light, cellC], at) => {
      parallel.light(at, light, cellC);
    });
    return parallel;
  };

  /** Most power by looking at every hundredth of a volt. */
  const scanned = (parallel: ParallelBranches, leastV: number): number => {
    let most = 0;
    for (let volts = leastV; volts < 45; volts += 0.01) most = Math.max(most, volts * parallel.at(volts));
    return most;
  };

  const bright = branch({ reference: large });
  const mixed: readonly (readonly [string, readonly Lit[]])[] = [
    [
      "the upper of two peaks, the lower branch in dim light",
      [
        [branch(), 200, 30],
        [bright, 900, 40],
      ],
    ],
    [
      "the lower of two peaks, the upper branch in dim light",
      [
        [branch({ howMany: 4 }), 1000, 30],
        [bright, 60, 20],
      ],
    ],
    [
      "two peaks of much the same height",
      [
        [branch({ howMany: 2 }), 800, 25],
        [bright, 540, 25],
      ],
    ],
    [
      "two panels alike in different light",
      [
        [branch(), 1000, 50],
        [branch(), 150, 20],
      ],
    ],
    [
      "three branches, cold and hot, by long cables and blocking diodes",
      [
        [branch({ cableOhm: 0.4 }), 900, -10],
        [branch({ blockingV: 0.4, howMany: 3 }), 700, 70],
        [bright, 120, 10],
      ],
    ],
    [
      "one in the dark",
      [
        [branch(), 0, 10],
        [bright, 300, 10],
      ],
    ],
  ];

  test.each(mixed)("%s, in any order, from any least voltage", (_, all) => {
    for (const order of [all, [...all].reverse()]) {
      const parallel = partly(...order);
      for (const leastV of [0, 10, 14.2, 17, 18.5, 22.5, 26, 30, 31.5, 33]) {
        const volts = maxPowerV(parallel, leastV);
        const watts = Number.isNaN(volts) ? 0 : volts * parallel.at(volts);
        expect(Number.isNaN(volts) || volts >= leastV).toBe(true);
        // The voltage is found to a millivolt, which matters where the best of a range is its lower end; within the straight
        // pieces of Lambert's table the power is level to a millionth.
        const millivolt = 1.1e-3 * Math.abs(parallel.amps + volts * parallel.slope);
        const most = scanned(parallel, leastV);
        expect(watts).toBeGreaterThanOrEqual(most * (1 - 2e-6) - (Number.isNaN(volts) ? 0 : millivolt));
      }
    }
  });

  test("is the peak itself where the least voltage lies just below it", () => {
    const parallel = lit([branch()], 800, 40);
    const peak = maxPowerV(parallel, 0);
    for (const below of [0.05, 0.3, 0.7, 0.95, 1.2, 3]) {
      expect(Math.abs(maxPowerV(parallel, peak - below) - peak)).toBeLessThan(0.02);
    }
  });
});
