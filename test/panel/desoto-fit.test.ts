import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  curveAt,
  curvePointsOf,
  fitDiode,
  maxPowerPoint,
  openCircuitV,
  shortCircuitA,
} from "../../lib/panel/index.ts";
import { completeNameplate } from "../../lib/plan/nameplate.ts";
import { anyNameplate } from "./any-curve.ts";

const plain = { iscA: 3.8, vocV: 21.1, impA: 3.5, vmpV: 17.1, iscPerK: 0.00247, vocPerK: -0.08 };

describe("fitDiode", () => {
  test("returns Isc, Voc, Vmp, Imp and Pmax at standard test conditions, far within 0.1 %", () => {
    fc.assert(
      fc.property(anyNameplate, (plate) => {
        const points = curvePointsOf(completeNameplate(plate));
        const fit = fitDiode(points);
        fc.pre(fit !== null);
        const curve = curveAt(fit!.reference, 1000, 25);
        const best = maxPowerPoint(curve);
        expect(shortCircuitA(curve) / points.iscA).toBeCloseTo(1, 9);
        expect(openCircuitV(curve) / points.vocV).toBeCloseTo(1, 9);
        expect(best.volts / points.vmpV).toBeCloseTo(1, 6);
        expect(best.amps / points.impA).toBeCloseTo(1, 6);
        expect(best.watts / (points.vmpV * points.impA)).toBeCloseTo(1, 9);
      }),
      { numRuns: 60 },
    );
  });

  test("meets the temperature coefficient of power within 2 % of its value", () => {
    fc.assert(
      fc.property(anyNameplate, (plate) => {
        const points = curvePointsOf(completeNameplate(plate));
        const fit = fitDiode(points);
        fc.pre(fit !== null);
        const wattsAt = (cellC: number) => maxPowerPoint(curveAt(fit!.reference, 1000, cellC)).watts;
        // At 25 degC and over two spans, none of them the one that the fit itself looks at.
        for (const [cool, warm] of [
          [24.5, 25.5],
          [25, 45],
          [25, 55],
        ] as const) {
          const found = (wattsAt(warm) - wattsAt(cool)) / (warm - cool) / wattsAt(25);
          expect(Math.abs(found / (points.powerPerK ?? Number.NaN) - 1)).toBeLessThan(0.02);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("meets the coefficient of voltage where that of power is not asked for", () => {
    const fit = fitDiode(plain);
    expect(fit?.adjustPct).toBe(0);
    expect(fit?.vocPerK).toBeCloseTo(-0.08, 9);
    expect(fit?.reference.bandGapEv).toBe(1.121);
    expect(fit?.reference.idealityV).toBeCloseTo(0.9012, 4);
  });

  test("turns the other coefficients until that of power is met, and says by how much", () => {
    const fit = fitDiode({ ...plain, powerPerK: -0.005 });
    expect(fit?.powerPerK).toBeCloseTo(-0.005, 9);
    expect(fit?.adjustPct).toBeGreaterThan(5);
    expect(fit?.reference.photocurrentPerK).toBeCloseTo(0.00247 * (1 - (fit?.adjustPct ?? 0) / 100), 12);
  });

  test("lets the band gap give way on a curve too full for the ideality to", () => {
    const full = { iscA: 5.8, vocV: 21.95, impA: 5.55, vmpV: 18, iscPerK: 0.003, vocPerK: -0.066 };
    const fit = fitDiode({ ...full, powerPerK: -0.004 });
    expect(fit?.powerPerK).toBeCloseTo(-0.004, 8);
    expect(fit?.reference.bandGapEv).toBeGreaterThan(1.2);
  });

  test("says null where no curve passes through the points", () => {
    // Current all but level to Vmp, then a slow fall to Voc: no diode bends so.
    expect(fitDiode({ ...plain, iscA: 3.53, vocV: 22 })).toBeNull();
    expect(fitDiode({ ...plain, vmpV: 8, impA: 3.5 })).toBeNull();
  });
});

describe("curveAt", () => {
  const fitted = () => fitDiode(plain)!.reference;

  test("is the reference at standard test conditions", () => {
    const reference = fitted();
    expect(curveAt(reference, 1000, 25)).toEqual({
      photocurrentA: reference.photocurrentA,
      saturationA: reference.saturationA,
      seriesOhm: reference.seriesOhm,
      shuntOhm: reference.shuntOhm,
      idealityV: reference.idealityV,
    });
  });

  test("gives more power in more light and in colder cells, always", () => {
    const reference = fitted();
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1400, noNaN: true }),
        fc.double({ min: -30, max: 90, noNaN: true }),
        (light, cellC) => {
          const watts = maxPowerPoint(curveAt(reference, light, cellC)).watts;
          expect(maxPowerPoint(curveAt(reference, 1.05 * light, cellC)).watts).toBeGreaterThan(watts);
          expect(maxPowerPoint(curveAt(reference, light, cellC + 5)).watts).toBeLessThan(watts);
        },
      ),
    );
  });

  test("gives nothing in the dark", () => {
    expect(maxPowerPoint(curveAt(fitted(), 0, 10)).watts).toBe(0);
  });
});
