import { describe, expect, test } from "vitest";
import { GROUND_KINDS } from "../../lib/plan/site.ts";
import { esraClearLight, linkeTurbidityOf } from "../../lib/sky/esra.ts";
import { dailyExtraterrestrial, extraterrestrialBetween } from "../../lib/sky/extraterrestrial.ts";
import { albedoOf, reflectanceOf } from "../../lib/sky/ground.ts";
import { twelveOf } from "../../lib/sky/monthly.ts";
import { aerosolDepth, airClassOf, angstromBetaOfVisibility, clearAirOf } from "../../lib/sky/turbidity.ts";

describe("turbidity", () => {
  test("the handbook's classes follow from its visibility relation (Iqbal 1983, table 6.2 and eq. 6.6.3, from memory)", () => {
    for (const turbidity of ["clean", "standard", "clear", "turbid", "very turbid"] as const) {
      const { angstromBeta, visibilityKm } = airClassOf(turbidity);
      // Two printed decimals.
      expect(Math.abs(angstromBetaOfVisibility(visibilityKm) - angstromBeta)).toBeLessThan(0.005);
    }
    // 0.55^1.3 (3.912 / 20 - 0.01162) (0.02472 x 15 + 1.132) = 0.459707 x 0.18398 x 1.5028
    expect(angstromBetaOfVisibility(20)).toBeCloseTo(0.127103, 5);
    expect(angstromBetaOfVisibility(5)).toBeGreaterThan(0.39);
    expect(angstromBetaOfVisibility(500)).toBe(0);
    expect(() => angstromBetaOfVisibility(1)).toThrow("expected visibility 5 km or more, received 1");
  });

  test("standard air has the haze of the standard spectra at the sea (ASTM G173-03: 0.084 at 500 nm, from memory)", () => {
    const air = clearAirOf({ turbidity: "standard", ozoneCm: 0.34 }, 0);
    expect(air.aod500).toBeCloseTo(0.084, 4);
    // Angstrom's law with 1.3: 0.0341 x 0.38^-1.3.
    expect(air.aod380).toBeCloseTo(0.11996, 4);
    expect(air.waterCm).toBe(1.42);
    expect(air.pressureHPa).toBe(1013.25);
  });

  test("haze of a class and water left out thin with height; what is stated stays", () => {
    const high = clearAirOf({ turbidity: "standard", ozoneCm: 0.34 }, 2400);
    expect(high.aod500).toBeCloseTo(0.084 * Math.exp(-2), 4);
    expect(high.aod380).toBeCloseTo(0.11996 * Math.exp(-2), 4);
    expect(high.waterCm).toBeCloseTo(1.42 * Math.exp(-1.2), 6);
    const stated = clearAirOf({ turbidity: { aod380: 0.2, aod500: 0.1 }, waterCm: 2, ozoneCm: 0.3 }, 2400);
    expect(stated).toMatchObject({ aod380: 0.2, aod500: 0.1, waterCm: 2 });
    expect(clearAirOf({ turbidity: "standard", ozoneCm: 0.34 }, -400).waterCm).toBe(1.42);
  });

  test("examples: aerosolDepth, linkeTurbidityOf, esraClearLight", () => {
    expect(aerosolDepth(0.1, 0.5)).toBeCloseTo(0.246, 3);
    expect(linkeTurbidityOf(0.1, 1.5, 0.5)).toBeCloseTo(3.8, 1);
    expect(esraClearLight(1367, 0.5, 1.994, 3, 1013.25).beamNormal).toBeCloseTo(801, 0);
    expect(esraClearLight(1367, -0.1, 38, 3, 1013.25).global).toBe(0);
  });
});

describe("extraterrestrial integrals", () => {
  test("hours add up to the day, and a polar night has none", () => {
    const hours = Array.from({ length: 24 }, (_, hour) =>
      extraterrestrialBetween(52, 15, hour * 15 - 180, hour * 15 - 165, 1361),
    );
    expect(hours.reduce((a, b) => a + b)).toBeCloseTo(dailyExtraterrestrial(52, 15, 1361), 6);
    expect(dailyExtraterrestrial(80, -20, 1361)).toBe(0);
    expect(dailyExtraterrestrial(90, 20, 1361)).toBeCloseTo(24 * 1361 * Math.sin((20 * Math.PI) / 180), 6);
  });

  test("between two hour angles, by hand; what lies under the horizon counts nothing", () => {
    // Equator at an equinox: (12 / pi) 1361 (sin 30 - sin 0); sunset is at 90.
    expect(extraterrestrialBetween(0, 0, 0, 30, 1361)).toBeCloseTo((12 / Math.PI) * 1361 * 0.5, 9);
    expect(extraterrestrialBetween(0, 0, 60, 150, 1361)).toBeCloseTo(
      extraterrestrialBetween(0, 0, 60, 90, 1361),
      9,
    );
    expect(extraterrestrialBetween(0, 0, -150, -60, 1361)).toBeCloseTo(
      extraterrestrialBetween(0, 0, 60, 90, 1361),
      9,
    );
    expect(extraterrestrialBetween(0, 0, 95, 120, 1361)).toBe(0);
    expect(extraterrestrialBetween(0, 0, 30, 30, 1361)).toBe(0);
  });

  test("examples", () => {
    expect(dailyExtraterrestrial(43, 9.4, 1357)).toBeCloseTo(9380, -1);
    expect(extraterrestrialBetween(40, -11.6, -45, -30, 1397)).toBeCloseTo(649, 0);
  });
});

describe("ground", () => {
  test("every kind of ground has a reflectance inside its source's range", () => {
    expect(GROUND_KINDS.length).toBeGreaterThan(5);
    for (const kind of GROUND_KINDS) {
      const { albedo, least, most } = reflectanceOf(kind);
      expect(albedo).toBeGreaterThanOrEqual(least);
      expect(albedo).toBeLessThanOrEqual(most);
    }
  });

  test("a kind, one number or twelve become twelve", () => {
    expect(albedoOf("grass")).toEqual(Array(12).fill(0.2));
    expect(albedoOf(0.5)).toEqual(Array(12).fill(0.5));
    const own = [0.8, 0.8, 0.6, 0.3, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.4, 0.8];
    expect(albedoOf(own)).toEqual(own);
    expect(() => twelveOf([1, 2])).toThrow("expected 12 monthly values, received 2");
  });
});
