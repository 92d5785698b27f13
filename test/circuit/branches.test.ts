import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Branch, currentIntoHeldV, maxPowerV, ParallelBranches } from "../../lib/circuit/index.ts";
import { curveAt, openCircuitV } from "../../lib/panel/index.ts";
import { branch, large, small } from "./branch.ts";

const anyBranch = fc
  .record({
    reference: fc.constantFrom(small, large),
    howMany: fc.integer({ min: 1, max: 4 }),
    shareLeft: fc.double({ min: 0.5, max: 1, noNaN: true }),
    cableOhm: fc.double({ min: 0, max: 0.5, noNaN: true }),
    blockingV: fc.constantFrom(0, 0.4),
  })
  .map(branch);

const anyLight = fc.double({ min: 5, max: 1300, noNaN: true });
const anyCellC = fc.double({ min: -20, max: 80, noNaN: true });

const lit = (branches: readonly Branch[], light: number, cellC: number, commonOhm = 0): ParallelBranches => {
  const parallel = new ParallelBranches(branches, commonOhm);
  for (let at = 0; at < branches.length; at += 1) parallel.light(at, light, cellC);
  return parallel;
};

describe("ParallelBranches", () => {
  test("current and slope of a leaky panel in the short circuit, by hand", () => {
    // 1 A of light, 5 ohm across and 1 ohm in series; the diode takes 1e-9 A. The terminals take 1 A x 5 / 6, and a volt
    // there takes 1 / 6 A more.
    const leaky = { ...small, photocurrentA: 1, saturationA: 1e-9, seriesOhm: 1, shuntOhm: 5, idealityV: 1 };
    const parallel = lit([branch({ reference: leaky, howMany: 2 })], 1000, 25);
    expect(parallel.at(0)).toBeCloseTo(2 * (5 / 6), 5);
    expect(parallel.slope).toBeCloseTo(-2 / 6, 5);
    // Open: 1 A through 5 ohm would be 5 V, where the diode takes 1.5e-7 A.
    expect(parallel.openV(0)).toBeCloseTo(5, 5);
    expect(parallel.openV(0)).toBeCloseTo(openCircuitV(curveAt(leaky, 1000, 25)), 7);
    const half = lit([branch({ reference: { ...leaky, shuntOhm: 20 } })], 1000, 25);
    // 20 V would be more than the diode's 20.7 V less what leaks: between the two.
    expect(half.openV(0)).toBeCloseTo(openCircuitV(curveAt({ ...leaky, shuntOhm: 20 }, 1000, 25)), 6);
  });

  test("slope and its slope are those of the current, by differences", () => {
    fc.assert(
      fc.property(
        fc.array(anyBranch, { minLength: 1, maxLength: 3 }),
        anyLight,
        anyCellC,
        fc.double({ min: 0, max: 0.97, noNaN: true }),
        (branches, light, cellC, share) => {
          const parallel = lit(branches, light, cellC);
          const volts = share * Math.min(...branches.map((_, at) => parallel.openV(at)));
          // The current's table is straight within a 64th of its logarithm, some 15 mV: differences span some more.
          const h = 0.1;
          const [below, amps, above] = [volts - h, volts, volts + h].map((at) => parallel.at(at));
          fc.pre(above > 0);
          parallel.at(volts);
          const { slope, bend } = parallel;
          const scale = branches.reduce(
            (sum, { howMany, reference }) => sum + howMany * reference.photocurrentA,
            0,
          );
          expect(parallel.amps).toBe(amps);
          expect(Math.abs(slope - (above - below) / (2 * h))).toBeLessThan(
            0.01 * Math.abs(slope) + 1e-3 * scale,
          );
          expect(Math.abs(bend - (above - 2 * amps + below) / h ** 2)).toBeLessThan(
            0.05 * Math.abs(bend) + 5e-3 * scale,
          );
        },
      ),
      { numRuns: 300 },
    );
  });

  test("a branch gives nothing above its open-circuit voltage, less its blocking diode", () => {
    fc.assert(
      fc.property(anyBranch, anyLight, anyCellC, (one, light, cellC) => {
        const parallel = lit([one], light, cellC);
        const full = openCircuitV(curveAt(one.reference, light, cellC));
        // The tabled saturation current is straight within a kelvin: 1e-4 of its logarithm's 25.
        expect(Math.abs(parallel.openV(0) - Math.max(0, full - one.blockingV))).toBeLessThan(2e-3);
        expect(parallel.at(parallel.openV(0) + 0.01)).toBe(0);
        expect([parallel.amps, parallel.slope, parallel.bend]).toEqual([0, 0, 0]);
        expect(parallel.at(parallel.openV(0) - 0.05)).toBeGreaterThan(0);
      }),
    );
  });

  test("says open-circuit voltages afresh for each light, and 0 in the dark", () => {
    const parallel = lit([branch(), branch({ reference: large, blockingV: 0.4 })], 900, 30);
    const [bright, brighter] = [parallel.openV(0), parallel.openV(1)];
    expect(brighter).toBeGreaterThan(bright + 10);
    parallel.light(0, 100, 30);
    expect(parallel.openV(0)).toBeLessThan(bright - 1);
    expect(parallel.openV(1)).toBe(brighter);
    parallel.light(1, 0, 30);
    expect(parallel.openV(1)).toBe(0);
    // Light too weak to lift the panel over its blocking diode.
    parallel.light(1, 1e-9, 30);
    expect(parallel.openV(1)).toBe(0);
    parallel.light(0, Number.NaN, 30);
    expect(parallel.at(12)).toBeNaN();
  });

  test("a light current that warmth would turn negative is none", () => {
    const cooling = { ...small, photocurrentPerK: -1 };
    const parallel = lit([branch({ reference: cooling })], 1000, 60);
    expect(parallel.openV(0)).toBe(0);
    expect(parallel.at(0)).toBe(0);
  });

  test("a resistance behind the joint is as good as in each panel's own cable, as often as there are panels", () => {
    const three = { howMany: 3, shareLeft: 0.9 };
    const behind = lit([branch({ ...three, cableOhm: 0.05 })], 700, 40, 0.02);
    const own = lit([branch({ ...three, cableOhm: 0.05 + 3 * 0.02 })], 700, 40);
    for (const volts of [0, 10, 15, 18]) expect(behind.at(volts)).toBeCloseTo(own.at(volts), 12);
  });

  test("refuses a resistance behind the joint of several branches, since they share it", () => {
    const refusal = new RangeError("ParallelBranches: expected one branch with a common resistance");
    expect(() => new ParallelBranches([branch(), branch()], 0.1)).toThrow(refusal);
    expect(() => new ParallelBranches([], 0.1)).toThrow(refusal);
    expect(new ParallelBranches([branch(), branch()]).count).toBe(2);
    expect(new ParallelBranches([branch()], 0.1).count).toBe(1);
  });

  test("guesses where a branch alone gives most, to half a per cent of its open-circuit voltage, 5 % at worst", () => {
    let [off, guesses] = [0, 0];
    fc.assert(
      fc.property(anyBranch, anyLight, anyCellC, (one, light, cellC) => {
        const parallel = lit([{ ...one, blockingV: 0 }], light, cellC);
        const openV = parallel.openV(0);
        const guess = parallel.usualPeakV(0, openV);
        const share = Math.abs(guess - maxPowerV(parallel, 0)) / openV;
        expect(share).toBeLessThan(0.05);
        off += share;
        guesses += 1;
      }),
    );
    expect(off / guesses).toBeLessThan(0.006);
  });
});

/** Counts how often the current at a voltage, by far the costliest part, is asked for. */
class CountedBranches extends ParallelBranches {
  looks = 0;
  override at(jointV: number): number {
    this.looks += 1;
    return super.at(jointV);
  }
}

describe("looks at the curve are few, for any branch", () => {
  const looksOf = (one: Branch, light: number, cellC: number, work: (branches: ParallelBranches) => void) => {
    const counted = new CountedBranches([one]);
    counted.light(0, light, cellC);
    work(counted);
    return counted.looks;
  };

  test("four or five for the most power, three where the peak lies below the least voltage", () => {
    fc.assert(
      fc.property(anyBranch, anyLight, anyCellC, (one, light, cellC) => {
        expect(looksOf(one, light, cellC, (branches) => maxPowerV(branches, 0))).toBeLessThanOrEqual(5);
      }),
    );
    const nearOpen = (branches: ParallelBranches) => maxPowerV(branches, branches.openV(0) - 0.2);
    expect(looksOf(branch(), 800, 60, nearOpen)).toBeLessThanOrEqual(3);
  });

  test("one for a held voltage with no resistance behind it", () => {
    expect(looksOf(branch(), 800, 40, (branches) => currentIntoHeldV(branches, 14, 0))).toBe(1);
  });

  test("three or so, never more than eight, for a held voltage behind a resistance", () => {
    fc.assert(
      fc.property(
        anyBranch,
        anyLight,
        anyCellC,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.001, max: 0.5, noNaN: true }),
        (one, light, cellC, share, ohm) => {
          const looks = looksOf(one, light, cellC, (branches) =>
            currentIntoHeldV(branches, share * branches.openV(0), ohm),
          );
          expect(looks).toBeLessThanOrEqual(8);
        },
      ),
    );
  });
});

describe("currentIntoHeldV", () => {
  test("is the current at the held voltage and its own drop, to a nanoampere or so", () => {
    fc.assert(
      fc.property(
        fc.array(anyBranch, { minLength: 1, maxLength: 3 }),
        anyLight,
        anyCellC,
        fc.double({ min: 0, max: 1.1, noNaN: true }),
        // Far more than any cable, so that its drop turns branches off by the way.
        fc.double({ min: 0, max: 3, noNaN: true }),
        (branches, light, cellC, share, ohm) => {
          const parallel = lit(branches, light, cellC);
          const heldV = share * parallel.openV(0);
          const amps = currentIntoHeldV(parallel, heldV, ohm);
          // The last step is below a nanoampere, and the curve's own slope magnifies what it leaves.
          expect(Math.abs(parallel.at(heldV + ohm * amps) - amps)).toBeLessThan(
            1e-8 * (1 - ohm * parallel.slope),
          );
          expect(amps).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  test("where the whole current's drop would turn every panel off, is that of panels with longer cables", () => {
    // Four 60-cell panels give 35 A; through 0.5 ohm that is 17.5 V on top of 30 V, above their 38.7 V.
    const four = branch({ reference: large, howMany: 4 });
    for (const ohm of [0.3, 0.5, 1, 2]) {
      const own = lit([{ ...four, cableOhm: 4 * ohm }], 1000, 25).at(30);
      // Lambert's table, 5e-6, times four panels' ideality over their resistance, some 3 A.
      expect(Math.abs(currentIntoHeldV(lit([four], 1000, 25), 30, ohm) - own)).toBeLessThan(1e-4);
    }
  });

  test("is that of the held voltage itself without a resistance, and none above the open circuit", () => {
    const parallel = lit([branch()], 800, 40);
    expect(currentIntoHeldV(parallel, 14, 0)).toBe(parallel.at(14));
    expect(currentIntoHeldV(parallel, 30, 0.1)).toBe(0);
  });
});
