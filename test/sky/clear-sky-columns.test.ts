import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { airMassOfSine, relativeAirMass, standardPressureHPa } from "../../lib/sky/air-mass.ts";
import { birdClearLight, type ClearAir } from "../../lib/sky/bird.ts";
import { clearSkyColumns } from "../../lib/sky/clear-sky-columns.ts";
import { emptySkyColumns } from "../../lib/sky/columns.ts";
import { extraterrestrialClock, extraterrestrialNormal } from "../../lib/sky/extraterrestrial.ts";
import { clearAirOf } from "../../lib/sky/turbidity.ts";
import { sunColumns } from "../../lib/sun/index.ts";

const WEATHER = { airC: 15, windMs: 2 };
const AIR = clearAirOf({ turbidity: "standard", ozoneCm: 0.32 }, 0);

const anyAir: fc.Arbitrary<ClearAir> = fc.record({
  pressureHPa: fc.double({ min: 500, max: 1070, noNaN: true }),
  ozoneCm: fc.double({ min: 0, max: 0.6, noNaN: true }),
  waterCm: fc.double({ min: 0, max: 10, noNaN: true }),
  aod380: fc.double({ min: 0, max: 2, noNaN: true }),
  aod500: fc.double({ min: 0, max: 2, noNaN: true }),
  forwardShare: fc.constant(0.84),
  aerosolAbsorption: fc.double({ min: 0, max: 0.385, noNaN: true }),
});

const sunAt = (latitudeDeg: number, from: string, to: string) =>
  sunColumns({ latitudeDeg, longitudeDeg: 0, timeZone: "Etc/UTC" }, { from, to }, 60);

// The first sun of the Arctic spring, never high; and June days with the sun at every height up to 61 degrees.
const [ARCTIC, TEMPERATE] = [sunAt(78, "2027-02-25", "2027-04-05"), sunAt(52, "2027-06-10", "2027-06-30")];

describe("clearSkyColumns", () => {
  test("agrees with the plain form in any air, to the rounding of shared logarithms", () => {
    fc.assert(
      fc.property(anyAir, fc.double({ min: 0, max: 1, noNaN: true }), (air, albedo) => {
        const sky = clearSkyColumns(ARCTIC, air, albedo, WEATHER);
        for (let row = 0; row < sky.length; row += 7) {
          const plain = birdClearLight(
            extraterrestrialClock()(ARCTIC.timeMs[row]),
            ARCTIC.up[row],
            airMassOfSine(ARCTIC.up[row]),
            air,
            albedo,
          );
          // exp(c ln m) against m ** c: a few units in the last place, times exponents of up to 40.
          expect(sky.beamNormal[row]).toBeCloseTo(plain.beamNormal, 8);
          expect(sky.diffuse[row]).toBeCloseTo(plain.diffuse, 8);
          expect(sky.global[row]).toBeCloseTo(plain.global, 8);
        }
      }),
      { numRuns: 30 },
    );
  });

  test("is never negative and never above the extraterrestrial light", () => {
    fc.assert(
      fc.property(anyAir, fc.double({ min: 0, max: 0.9, noNaN: true }), (air, albedo) => {
        const sky = clearSkyColumns(TEMPERATE, air, albedo, WEATHER);
        for (let row = 0; row < sky.length; row += 5) {
          expect(sky.beamNormal[row]).toBeGreaterThanOrEqual(0);
          expect(sky.beamNormal[row]).toBeLessThanOrEqual(sky.extraterrestrial[row]);
          expect(sky.diffuse[row]).toBeGreaterThanOrEqual(0);
          // Bright ground sends light back up and the air down again: at 0.9 that adds up to a seventh.
          expect(sky.global[row]).toBeLessThanOrEqual(1.15 * sky.extraterrestrial[row] * TEMPERATE.up[row]);
        }
      }),
      { numRuns: 30 },
    );
  });

  test("more haze or more water never brightens the day", () => {
    const day = (waterCm: number, aod500: number): number => {
      const air = { ...AIR, waterCm, aod380: 1.43 * aod500, aod500 };
      const { global } = clearSkyColumns(TEMPERATE, air, 0.2, WEATHER);
      return global.reduce((sum, watts, row) => sum + watts * TEMPERATE.hours[row], 0);
    };
    expect(day(1, 0.1)).toBeGreaterThan(day(3, 0.1));
    expect(day(1, 0.1)).toBeGreaterThan(day(1, 0.3));
  });

  test("monthly albedo, temperature and wind act in the month of the solar day", () => {
    const months = Array.from({ length: 12 }, (_, month) => month / 12);
    const spring = sunAt(52, "2027-03-30", "2027-04-02");
    const sky = clearSkyColumns(spring, AIR, months, { airC: months, windMs: months });
    for (const { first, end, month } of spring.days) {
      for (let row = first; row < end; row += 1) {
        expect(sky.albedo[row]).toBe((month - 1) / 12);
        expect(sky.airC[row]).toBe((month - 1) / 12);
        expect(sky.windMs[row]).toBe((month - 1) / 12);
      }
    }
    expect(new Set(sky.albedo)).toEqual(new Set([2 / 12, 3 / 12]));
  });

  test("fills the columns it is given, and no others", () => {
    const out = emptySkyColumns(TEMPERATE.length);
    expect(clearSkyColumns(TEMPERATE, AIR, 0.2, WEATHER, out)).toBe(out);
    expect(out.global).toEqual(clearSkyColumns(TEMPERATE, AIR, 0.2, WEATHER).global);
    expect(() => clearSkyColumns(TEMPERATE, AIR, 0.2, WEATHER, emptySkyColumns(3))).toThrow(RangeError);
    expect(() => clearSkyColumns(TEMPERATE, AIR, [0.2, 0.2], WEATHER)).toThrow(/twelve|12/);
  });

  test("a night has no light, and NaN stays NaN", () => {
    expect(birdClearLight(1361, 0, 38, AIR, 0.2)).toEqual({ beamNormal: 0, diffuse: 0, global: 0 });
    expect(birdClearLight(1361, -0.2, 38, AIR, 0.2).global).toBe(0);
    expect(birdClearLight(Number.NaN, 0.5, 2, AIR, 0.2).global).toBeNaN();
    expect(airMassOfSine(Number.NaN)).toBeNaN();
  });
});

describe("birdClearLight", () => {
  test("bright ground adds what goes back and forth: over 1 - albedo x the sky's own reflectance", () => {
    // Without aerosol the sky sends back 0.0685.
    const air = { ...AIR, aod380: 0, aod500: 0 };
    const dark = birdClearLight(1361, 0.5, 2, air, 0);
    const snow = birdClearLight(1361, 0.5, 2, air, 0.8);
    expect(snow.global / dark.global).toBeCloseTo(1 / (1 - 0.8 * 0.0685), 12);
    expect(snow.beamNormal).toBe(dark.beamNormal);
    expect(snow.diffuse - dark.diffuse).toBeCloseTo(snow.global - dark.global, 9);
  });

  test("without air in the way only the model's 0.9662 is left of the beam", () => {
    const none = { ...AIR, pressureHPa: 1e-9, ozoneCm: 0, waterCm: 0, aod380: 0, aod500: 0 };
    expect(birdClearLight(1000, 0.5, 2, none, 0).beamNormal).toBeCloseTo(966.2, 0);
  });
});

describe("air mass and extraterrestrial light", () => {
  test("air mass grows as the sun sinks and keeps the horizon's value below it", () => {
    for (let altitude = 0; altitude < 90; altitude += 1) {
      expect(relativeAirMass(altitude)).toBeGreaterThan(relativeAirMass(altitude + 1));
    }
    expect(relativeAirMass(-5)).toBe(relativeAirMass(0));
  });

  test("examples: relativeAirMass(30), standardPressureHPa(1000), extraterrestrialNormal(1)", () => {
    expect(relativeAirMass(30)).toBeCloseTo(1.9943, 4);
    expect(standardPressureHPa(1000)).toBeCloseTo(898.75, 2);
    expect(extraterrestrialNormal(1)).toBeCloseTo(1408.7, 1);
    expect(standardPressureHPa(0)).toBe(1013.25);
    // ISO 2533: 226.32 hPa at 11 km, 1074.78 hPa 500 m below the sea (from memory).
    expect(standardPressureHPa(11_000)).toBeCloseTo(226.32, 1);
    expect(standardPressureHPa(-500)).toBeCloseTo(1074.78, 1);
    expect(() => standardPressureHPa(-501)).toThrow(RangeError);
    // Kasten & Young 1989, table 1: 37.92 at the horizon, 0.9997 overhead.
    expect(relativeAirMass(0)).toBeCloseTo(37.92, 2);
    expect(relativeAirMass(90)).toBeCloseTo(0.9997, 4);
    expect(() => standardPressureHPa(20_000)).toThrow("expected elevation -500 to 11000 m, received 20000");
  });

  test("the clock of the extraterrestrial light turns at midnight UTC, in leap years too", () => {
    const at = extraterrestrialClock();
    expect(at(Date.UTC(2027, 0, 1))).toBe(extraterrestrialNormal(1));
    expect(at(Date.UTC(2027, 0, 1, 23, 59))).toBe(extraterrestrialNormal(1));
    expect(at(Date.UTC(2027, 0, 2))).toBe(extraterrestrialNormal(2));
    expect(at(Date.UTC(2028, 11, 31, 12))).toBe(extraterrestrialNormal(366));
  });
});
