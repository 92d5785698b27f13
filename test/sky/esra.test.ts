import { describe, expect, test } from "vitest";
import { esraClearLight, linkeTurbidityOf } from "../../lib/sky/esra.ts";

describe("esraClearLight", () => {
  // Rigollier, Bauer & Wald 2000, eqs. 3 to 13, as written out (powers of mass and turbidity, not nested) in another
  // language; the last digit shown is rounded.
  test.each([
    [1367, 0.5, 1.994, 3, 1013.25, 800.9636, 89.7986],
    [1361, 0.8, 1.249, 5, 900, 769.8745, 188.8497],
    [1361, 0.05, 15.2, 2, 1013.25, 396.8324, 16.0844],
    // Beyond an air mass of 20 the Rayleigh depth has its own form; a low sun in haze is kept above zero.
    [1361, 0.02, 26, 3, 1013.25, 133.1726, 15.9152],
    [1361, 0.01, 30, 6, 1013.25, 10.3238, 7.0213],
  ])(
    "%d W/m2, sine %d, mass %d, turbidity %d, %d hPa",
    (above, sine, mass, turbidity, hPa, beam, diffuse) => {
      const light = esraClearLight(above, sine, mass, turbidity, hPa);
      expect(light.beamNormal).toBeCloseTo(beam, 3);
      expect(light.diffuse).toBeCloseTo(diffuse, 3);
      expect(light.global).toBeCloseTo(beam * sine + diffuse, 3);
    },
  );

  test("has no light with the sun on the horizon", () => {
    expect(esraClearLight(1361, 0, 37.9, 3, 1013.25)).toEqual({ beamNormal: 0, diffuse: 0, global: 0 });
  });
});

test("Dogniaux's turbidity, by hand", () => {
  // 115 / (39.5 exp(-1.5) + 47.4) + 0.1 + 16.33 x 0.1; sun at 59.997 degrees, 3 cm, beta 0.2
  expect(linkeTurbidityOf(0.1, 1.5, 0.5)).toBeCloseTo(3.778767, 5);
  expect(linkeTurbidityOf(0.2, 3, 0.866)).toBeCloseTo(6.36915, 5);
});
