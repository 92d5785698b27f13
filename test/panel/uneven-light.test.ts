import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { curveAt } from "../../lib/panel/diode-conditions.ts";
import { diodePanel } from "../../lib/panel/panel-model.ts";
import { currentAt, maxPowerPoint, openCircuitV } from "../../lib/panel/single-diode.ts";
import {
  BYPASS_DROP_V,
  highestPeak,
  powerPeaks,
  stuckPeak,
  type UnevenPanel,
  unevenCurrentAt,
  unevenOpenCircuitV,
  unevenVoltageAt,
  voltageAt,
} from "../../lib/panel/uneven-light.ts";

const { reference } = diodePanel({ powerW: 100 }).fit;

const inLight = (lightWm2: number, cellC = 40) => curveAt(reference, lightWm2, cellC);

const groupsIn = (lights: readonly number[], bypassDropV: number | null = BYPASS_DROP_V): UnevenPanel => ({
  groups: lights.map((light) => [{ share: 1 / lights.length, curve: inLight(light) }]),
  bypassDropV,
});

const light = fc.double({ min: 1, max: 1200, noNaN: true });
const lights = fc.array(light, { minLength: 2, maxLength: 6 });

describe("a panel in uneven light", () => {
  test("voltageAt(curve, amps) undoes currentAt(curve, volts), below 0 V too", () => {
    fc.assert(
      fc.property(light, fc.double({ min: -5, max: 1.02, noNaN: true }), (lit, share) => {
        const curve = inLight(lit);
        const volts = share * openCircuitV(curve);
        expect(voltageAt(curve, currentAt(curve, volts))).toBeCloseTo(volts, 7);
      }),
    );
  });

  test("in even light it is the plain curve to 1e-9, with its one peak", () => {
    fc.assert(
      fc.property(
        light,
        fc.integer({ min: 1, max: 6 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (lit, groups, share) => {
          const panel = groupsIn(new Array<number>(groups).fill(lit));
          const curve = inLight(lit);
          const volts = share * openCircuitV(curve);
          expect(Math.abs(unevenCurrentAt(panel, volts) - currentAt(curve, volts))).toBeLessThan(1e-9);
          expect(powerPeaks(panel)).toHaveLength(1);
          expect(Math.abs(highestPeak(panel).watts - maxPowerPoint(curve).watts)).toBeLessThan(1e-9);
          expect(unevenOpenCircuitV(panel)).toBeCloseTo(openCircuitV(curve), 9);
        },
      ),
    );
  });

  test("its peaks are those that a scan of the whole curve finds", () => {
    fc.assert(
      fc.property(lights, (each) => {
        const panel = groupsIn(each);
        const most = unevenCurrentAt(panel, 0);
        const points = Array.from({ length: 4001 }, (_, i) => (most * i) / 4000).map(
          (amps) => amps * unevenVoltageAt(panel, amps),
        );
        const best = Math.max(...points);
        const { watts } = highestPeak(panel);
        expect(watts).toBeGreaterThanOrEqual(best * (1 - 1e-12));
        expect(watts).toBeLessThan(best * 1.001);
        const tops = points.filter((w, i) => i > 0 && i < 4000 && w > points[i - 1] && w >= points[i + 1]);
        expect(powerPeaks(panel).length).toBeGreaterThanOrEqual(tops.length);
      }),
      { numRuns: 60 },
    );
  });

  test("more shade on a group never brings more, and the first top from the open circuit never beats the highest", () => {
    fc.assert(
      fc.property(
        lights,
        fc.nat({ max: 5 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (each, at, left) => {
          const darker = each.map((lit, group) =>
            group === at % each.length ? Math.max(1, left * lit) : lit,
          );
          const before = highestPeak(groupsIn(each)).watts;
          expect(highestPeak(groupsIn(darker)).watts).toBeLessThanOrEqual(before * (1 + 1e-9));
          expect(stuckPeak(groupsIn(each)).watts).toBeLessThanOrEqual(before * (1 + 1e-12));
        },
      ),
      { numRuns: 60 },
    );
  });

  test("the current falls as the voltage rises, and is 0 from the open circuit on", () => {
    fc.assert(
      fc.property(
        lights,
        fc.double({ min: 0, max: 25, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (each, volts, more) => {
          const panel = groupsIn(each);
          expect(unevenCurrentAt(panel, volts + more)).toBeLessThanOrEqual(
            unevenCurrentAt(panel, volts) + 1e-12,
          );
        },
      ),
      { numRuns: 60 },
    );
    expect(unevenCurrentAt(groupsIn([800, 300]), 40)).toBe(0);
    expect(unevenCurrentAt(groupsIn([800, 300]), Number.NaN)).toBeNaN();
  });

  test("two half shadows over the same group cost no more than one", () => {
    const dark = inLight(150);
    const lit = inLight(900);
    const other = [{ share: 0.5, curve: lit }];
    const one = [
      { share: 0.25, curve: dark },
      { share: 0.25, curve: lit },
    ];
    const two = [{ share: 0.5, curve: dark }];
    const watts = (group: typeof one): number =>
      highestPeak({ groups: [group, other], bypassDropV: BYPASS_DROP_V }).watts;
    expect(watts(one)).toBeCloseTo(watts(two), 6);
  });

  test("with bypass diodes half a panel in shadow is no use to a battery; without, the shadow takes all of it", () => {
    const half = groupsIn([1000, 100]);
    expect(unevenCurrentAt(half, 13.5)).toBeLessThan(0.15 * currentAt(inLight(1000), 13.5));
    expect(highestPeak(groupsIn([1000, 100], null)).watts).toBeLessThan(highestPeak(half).watts / 2);
  });

  test("in the dark there is no peak", () => {
    expect(powerPeaks(groupsIn([0, 0]))).toEqual([]);
    expect(highestPeak(groupsIn([0, 0]))).toEqual({ volts: 0, amps: 0, watts: 0 });
  });
});
