import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { faimanCellC, HEAT_LOSS, heatLossOfNoct, rossCellC, rossCoefficient } from "../../lib/panel/index.ts";

const light = fc.double({ min: 0, max: 1400, noNaN: true });
const air = fc.double({ min: -50, max: 50, noNaN: true });
const wind = fc.double({ min: 0, max: 30, noNaN: true });

describe("faimanCellC", () => {
  test("is the air's in the dark, and never below it", () => {
    expect(faimanCellC(0, -7, 3)).toBe(-7);
    fc.assert(
      fc.property(light, air, wind, (planeWm2, airC, windMs) => {
        expect(faimanCellC(planeWm2, airC, windMs)).toBeGreaterThanOrEqual(airC);
      }),
    );
  });

  test("falls with the wind", () => {
    expect(faimanCellC(800, 20, 5)).toBeLessThan(faimanCellC(800, 20, 1));
  });

  test("is warmer on a roof, by 1.8 times the rise", () => {
    fc.assert(
      fc.property(light, air, wind, (planeWm2, airC, windMs) => {
        const rise = faimanCellC(planeWm2, airC, windMs) - airC;
        const onRoof = faimanCellC(planeWm2, airC, windMs, HEAT_LOSS["flat-on-roof"]) - airC;
        expect(onRoof).toBeCloseTo(1.8 * rise, 8);
      }),
    );
  });

  test("lets NaN through", () => {
    expect(faimanCellC(Number.NaN, 20, 1)).toBeNaN();
    expect(faimanCellC(800, Number.NaN, 1)).toBeNaN();
    expect(faimanCellC(800, 20, Number.NaN)).toBeNaN();
  });
});

describe("NOCT", () => {
  test("gives the coefficient of Ross, and the temperature by it", () => {
    expect(rossCoefficient(45)).toBe(0.03125);
    expect(rossCellC(1000, 30, 47)).toBe(63.75);
  });

  test("near Faiman's mean is Faiman's mean", () => {
    const { u0, u1 } = heatLossOfNoct(45.1256);
    expect(u0).toBeCloseTo(HEAT_LOSS["open-rack"].u0, 3);
    expect(u1).toBe(HEAT_LOSS["open-rack"].u1);
  });

  test("is met at its own conditions", () => {
    for (const noctC of [25, 43.5, 80]) {
      expect(faimanCellC(800, 20, 1, heatLossOfNoct(noctC))).toBeCloseTo(noctC, 10);
    }
  });

  test("is refused outside 25 to 80 degC", () => {
    for (const noctC of [24.9, 80.1, Number.NaN]) {
      expect(() => heatLossOfNoct(noctC)).toThrow(
        new RangeError(`heatLossOfNoct: expected NOCT 25 to 80 degC, received ${noctC}`),
      );
    }
  });
});
