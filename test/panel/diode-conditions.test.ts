import { describe, expect, test } from "vitest";
import { idealityRatio, logSaturationRatio, SILICON_BAND_GAP_EV } from "../../lib/panel/diode-conditions.ts";
import {
  curveAt,
  curvePointsOf,
  fitDiode,
  maxPowerPoint,
  openCircuitV,
  shortCircuitA,
} from "../../lib/panel/index.ts";
import { completeNameplate } from "../../lib/plan/nameplate.ts";

describe("the saturation current", () => {
  test("is itself at 25 degC, doubles every six kelvins or so, and more for a wider gap", () => {
    expect(logSaturationRatio(SILICON_BAND_GAP_EV, 25)).toBe(0);
    // Silicon's saturation current doubles every 5 to 6 K near room temperature (textbook knowledge, no source at hand).
    const tenfold = logSaturationRatio(SILICON_BAND_GAP_EV, 35) / 10;
    expect(Math.LN2 / tenfold).toBeGreaterThan(4);
    expect(Math.LN2 / tenfold).toBeLessThan(6);
    expect(logSaturationRatio(1.5, 35)).toBeGreaterThan(logSaturationRatio(1.121, 35));
  });

  test("follows De Soto's equations 9 and 10, worked out by hand at 45 degC", () => {
    const [warm, cool] = [318.15, 298.15];
    const gap = 1.121 * (1 - 0.0002677 * 20);
    const byHand = 3 * Math.log(warm / cool) + (1.121 / cool - gap / warm) / 8.617333e-5;
    expect(logSaturationRatio(1.121, 45)).toBeCloseTo(byHand, 12);
  });
});

test("the ideality goes with the absolute temperature", () => {
  expect(idealityRatio(25)).toBe(1);
  expect(idealityRatio(-273.15)).toBeCloseTo(0, 12);
  expect(idealityRatio(323.15)).toBeCloseTo(2, 3);
});

describe("a 60 W module at other light and warmth (De Soto et al. 2006, solved by an independent program)", () => {
  const fitted = () =>
    fitDiode({ iscA: 3.8, vocV: 21.1, impA: 3.5, vmpV: 17.1, iscPerK: 0.00247, vocPerK: -0.08 })!.reference;

  // Light, cell temperature, then Isc, Voc, Vmp and Pmax to the digits that were printed.
  test.each([
    [800, 45, 3.0809, 19.281, 15.507, 43.747],
    [500, 25, 1.9023, 20.476, 17.112, 30.048],
    [200, 10, 0.75405, 20.921, 17.995, 12.58],
    [1000, 65, 3.8986, 17.881, 13.862, 48.946],
  ])("%d W/m2, %d degC", (light, cellC, iscA, vocV, vmpV, watts) => {
    const curve = curveAt(fitted(), light, cellC);
    expect(shortCircuitA(curve)).toBeCloseTo(iscA, 4);
    expect(openCircuitV(curve)).toBeCloseTo(vocV, 3);
    expect(maxPowerPoint(curve).volts).toBeCloseTo(vmpV, 3);
    expect(maxPowerPoint(curve).watts).toBeCloseTo(watts, 2);
  });

  test("shunt resistance goes against the light, series resistance stays", () => {
    const reference = fitted();
    const dim = curveAt(reference, 250, 25);
    expect(dim.shuntOhm).toBeCloseTo(4 * reference.shuntOhm, 8);
    expect(dim.seriesOhm).toBe(reference.seriesOhm);
  });
});

test("coefficients of a nameplate become amperes, volts and shares a kelvin", () => {
  const points = curvePointsOf(
    completeNameplate({
      powerW: 60,
      vmpV: 17.1,
      impA: 3.5,
      vocV: 20,
      iscA: 4,
      powerPctPerK: -0.5,
      vocPctPerK: -0.4,
      iscPctPerK: 0.05,
    }),
  );
  expect(points.iscPerK).toBeCloseTo(0.002, 12);
  expect(points.vocPerK).toBeCloseTo(-0.08, 12);
  expect(points.powerPerK).toBeCloseTo(-0.005, 12);
  expect(curvePointsOf(completeNameplate({ powerW: 60, vocPctPerK: -0.4 })).powerPerK).toBeUndefined();
});
