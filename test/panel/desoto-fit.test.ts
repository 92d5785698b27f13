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

  test("finds the five parameters of a 60 W module that an independent program solved to 1e-14", () => {
    // De Soto, Klein & Beckman 2006, Solar Energy 80, 78, five equations; to the digits that were printed.
    const reference = fitDiode(plain)?.reference;
    expect(reference?.idealityV).toBeCloseTo(0.901169, 6);
    expect(reference?.photocurrentA).toBeCloseTo(3.8091, 4);
    // The last printed digit of the ideality is worth 21.1 / 0.9012^2 x 5e-7 = 1.3e-5 of the saturation current.
    expect(Math.abs((reference?.saturationA ?? 0) / 2.49491e-10 - 1)).toBeLessThan(1.3e-5);
    expect(reference?.seriesOhm).toBeCloseTo(0.386192, 6);
    expect(reference?.shuntOhm).toBeCloseTo(161.283, 3);
    expect(reference?.photocurrentPerK).toBe(0.00247);
  });

  test("lets the band gap give way where no ideality lets the voltage fall so steeply", () => {
    const steep = fitDiode({ ...plain, vocPerK: -0.2 });
    expect(steep?.vocPerK).toBeCloseTo(-0.2, 9);
    expect(steep?.reference.bandGapEv).toBeGreaterThan(1.2);
    // The ideality is the greatest that a sound curve allows: its shunt takes next to nothing.
    expect(steep?.reference.shuntOhm).toBeGreaterThan(1e5);
    const curve = curveAt(steep!.reference, 1000, 25);
    expect(maxPowerPoint(curve).watts).toBeCloseTo(17.1 * 3.5, 6);
    expect(openCircuitV(curve)).toBeCloseTo(21.1, 9);
  });

  test("goes as far as it may towards a coefficient of power that is out of reach", () => {
    // At most 100 per cent: no coefficient of current left, and twice that of voltage.
    const steep = fitDiode({ ...plain, powerPerK: -0.02 });
    expect(steep?.adjustPct).toBe(100);
    expect(steep?.reference.photocurrentPerK).toBe(0);
    expect(steep?.vocPerK).toBeCloseTo(-0.16, 9);
    expect(steep?.powerPerK).toBeCloseTo(-0.0099, 4);
    // The other way: twice the coefficient of current, and none of voltage.
    const rising = fitDiode({ ...plain, powerPerK: 0.01 });
    expect(rising?.adjustPct).toBe(-100);
    expect(rising?.reference.photocurrentPerK).toBeCloseTo(0.00494, 12);
    expect(rising?.vocPerK).toBeCloseTo(0, 9);
    expect(rising?.powerPerK).toBeGreaterThan(0);
  });

  test("says the coefficients that the fitted curve has, the power's from 20 to 45 degC", () => {
    const fit = fitDiode(plain);
    const at = (cellC: number) => curveAt(fit!.reference, 1000, cellC);
    const watts = (cellC: number) => maxPowerPoint(at(cellC)).watts;
    expect(fit?.vocPerK).toBeCloseTo((openCircuitV(at(27)) - openCircuitV(at(25))) / 2, 12);
    expect(fit?.powerPerK).toBeCloseTo((watts(45) - watts(20)) / 25 / 59.85, 9);
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
    expect(fitDiode({ ...plain, iscA: 3.53, vocV: 22, powerPerK: -0.004 })).toBeNull();
    expect(fitDiode({ ...plain, vmpV: 8, impA: 3.5 })).toBeNull();
    // No curve's voltage rises with warmth by a volt a kelvin, however narrow its band gap.
    expect(fitDiode({ ...plain, vocPerK: 1 })).toBeNull();
    expect(fitDiode({ ...plain, vocPerK: 1, powerPerK: -0.004 })).toBeNull();
  });
});

test("every curve that is found is sound, whatever the nameplate", () => {
  const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  let [tried, found] = [0, 0];
  fc.assert(
    fc.property(
      within(1, 60),
      within(1.05, 1.5),
      within(0.1, 10),
      within(1.01, 1.3),
      within(-0.005, -0.002),
      (vmpV, vocShare, impA, iscShare, vocShareK) => {
        const vocV = vmpV * vocShare;
        const iscA = impA * iscShare;
        tried += 1;
        const fit = fitDiode({ iscA, vocV, impA, vmpV, iscPerK: 0.0005 * iscA, vocPerK: vocShareK * vocV });
        if (fit === null) return;
        found += 1;
        const { photocurrentA, saturationA, seriesOhm, shuntOhm } = fit.reference;
        for (const one of [saturationA, shuntOhm, seriesOhm]) expect(one).toBeGreaterThan(0);
        expect(photocurrentA).toBeGreaterThanOrEqual(iscA);
        expect(maxPowerPoint(curveAt(fit.reference, 1000, 25)).watts / (vmpV * impA)).toBeCloseTo(1, 6);
      },
    ),
  );
  expect(found / tried).toBeGreaterThan(0.2);
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
