import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  ATOMS,
  addSpread,
  type SpreadFamily,
  sliceMeans,
} from "../../../lib/sky/climate/days/clearness-spread.ts";
import { daySpreads, ratioLimits, UNCERTAINTY_STEPS } from "../../../lib/sky/climate/days/day-spread.ts";

const family = fc.constantFrom<SpreadFamily>("bendt", "saunier");
const meanOf = (values: Float64Array): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

describe("addSpread", () => {
  test("meets any mean, with masses that are never negative and sum to 1", () => {
    fc.assert(
      fc.property(family, fc.double({ min: 0, max: 1, noNaN: true }), (shape, mean) => {
        const masses = new Float64Array(ATOMS);
        addSpread(shape, mean, 1, masses);
        let [sum, first] = [0, 0];
        for (const [atom, mass] of masses.entries()) {
          expect(mass).toBeGreaterThanOrEqual(0);
          sum += mass;
          first += (mass * atom) / (ATOMS - 1);
        }
        expect(sum).toBeCloseTo(1, 12);
        expect(first).toBeCloseTo(mean, 12);
      }),
    );
  });

  test("is flat for Bendt's shape at one half, and has no clear and no black days for Saunier's", () => {
    const bendt = new Float64Array(ATOMS);
    addSpread("bendt", 0.5, 1, bendt);
    expect(bendt[40]).toBeCloseTo(bendt[90], 12);
    const saunier = new Float64Array(ATOMS);
    addSpread("saunier", 0.5, 1, saunier);
    expect([saunier[0], saunier[ATOMS - 1]]).toEqual([0, 0]);
    // x (1 - x): the middle has twice the density of the point where x (1 - x) is an eighth.
    expect(saunier[64] / saunier[Math.round((0.5 - Math.sqrt(0.125)) * 128)]).toBeCloseTo(2, 1);
  });

  test("refuses a mean outside 0 to 1", () => {
    expect(() => addSpread("bendt", 1.01, 1, new Float64Array(ATOMS))).toThrow(
      "addSpread: expected a mean of 0 to 1, received 1.01",
    );
  });
});

describe("sliceMeans", () => {
  test("ascend, and keep the mean", () => {
    fc.assert(
      fc.property(
        family,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 60 }),
        (shape, mean, count) => {
          const masses = new Float64Array(ATOMS);
          addSpread(shape, mean, 1, masses);
          const slices = new Float64Array(count);
          sliceMeans(masses, slices);
          expect(meanOf(slices)).toBeCloseTo(mean, 11);
          for (let slice = 1; slice < count; slice++) {
            expect(slices[slice]).toBeGreaterThanOrEqual(slices[slice - 1] - 1e-12);
          }
        },
      ),
    );
  });
});

const day = fc.record({
  latitudeDeg: fc.double({ min: -90, max: 90, noNaN: true }),
  clearClearness: fc.double({ min: 0.2, max: 0.85, noNaN: true }),
  ratio: fc.double({ min: 0.02, max: 1.2, noNaN: true }),
  uncertainty: fc.double({ min: 0, max: 0.3, noNaN: true }),
});

describe("daySpreads", () => {
  const { slices, slicesByUncertainty } = daySpreads();

  test("slices ascend between the limits and keep the day's mean, uncertainty or no uncertainty", () => {
    fc.assert(
      fc.property(day, (mean) => {
        const out = new Float64Array(10);
        slices(mean, out);
        const [least, most] = ratioLimits(mean);
        expect(meanOf(out)).toBeCloseTo(mean.ratio, 9);
        expect(out[0]).toBeGreaterThanOrEqual(least - 1e-12);
        expect(out[9]).toBeLessThanOrEqual(most + 1e-12);
      }),
    );
  });

  test("uncertainty widens the slices", () => {
    const sure = new Float64Array(10);
    const uncertain = new Float64Array(10);
    slices({ latitudeDeg: 50, clearClearness: 0.72, ratio: 0.55, uncertainty: 0 }, sure);
    slices({ latitudeDeg: 50, clearClearness: 0.72, ratio: 0.55, uncertainty: 0.15 }, uncertain);
    expect(uncertain[0]).toBeLessThan(sure[0]);
    expect(uncertain[9]).toBeGreaterThan(sure[9]);
  });

  test("by uncertainty, each column has a larger mean than the last", () => {
    const columns = UNCERTAINTY_STEPS.map(() => new Float64Array(20));
    slicesByUncertainty({ latitudeDeg: 50, clearClearness: 0.72, ratio: 0.55, uncertainty: 0.11 }, columns);
    const means = columns.map(meanOf);
    // Two standard deviations of 0.11 x 0.55 either way.
    expect(means[0]).toBeCloseTo(0.55 * (1 - 0.22), 6);
    expect(means[2]).toBeCloseTo(0.55, 6);
    expect(means[4]).toBeCloseTo(0.55 * (1 + 0.22), 6);
  });

  test("a clear month has only clear days", () => {
    const out = new Float64Array(10);
    slices({ latitudeDeg: 40, clearClearness: 0.75, ratio: 1, uncertainty: 0 }, out);
    for (const ratio of out) expect(ratio).toBeCloseTo(1, 12);
  });

  test("no line on the map makes a step: the spread changes little from latitude to latitude", () => {
    const [here, there] = [new Float64Array(10), new Float64Array(10)];
    for (let latitudeDeg = -90; latitudeDeg < 90; latitudeDeg += 0.25) {
      slices({ latitudeDeg, clearClearness: 0.72, ratio: 0.6, uncertainty: 0 }, here);
      slices({ latitudeDeg: latitudeDeg + 0.25, clearClearness: 0.72, ratio: 0.6, uncertainty: 0 }, there);
      for (const [slice, value] of here.entries()) expect(Math.abs(value - there[slice])).toBeLessThan(0.015);
    }
  });
});
