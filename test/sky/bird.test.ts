import { describe, expect, test } from "vitest";
import { airMassOfSine } from "../../lib/sky/air-mass.ts";
import { birdClearLight, broadbandAod, type ClearAir } from "../../lib/sky/bird.ts";
import { clearSkyColumns } from "../../lib/sky/clear-sky-columns.ts";
import { emptySkyColumns } from "../../lib/sky/columns.ts";
import { extraterrestrialNormal } from "../../lib/sky/extraterrestrial.ts";
import { sunColumns } from "../../lib/sun/index.ts";

/** The report's default air, and that of a clean, dry height. */
const DEFAULT: ClearAir = {
  pressureHPa: 1013.25,
  ozoneCm: 0.34,
  waterCm: 1.42,
  aod380: 0.3538,
  aod500: 0.2661,
  forwardShare: 0.84,
  aerosolAbsorption: 0.1,
};
const CLEAN: ClearAir = { ...DEFAULT, pressureHPa: 840, waterCm: 0.5, aod380: 0.1, aod500: 0.08 };

/** Kasten 1966, the air mass printed with the model. */
const kasten1966 = (zenithDeg: number): number =>
  1 / (Math.cos((zenithDeg * Math.PI) / 180) + 0.15 * (93.885 - zenithDeg) ** -1.25);

const lightAt = (zenithDeg: number, air: ClearAir) =>
  birdClearLight(1367, Math.cos((zenithDeg * Math.PI) / 180), kasten1966(zenithDeg), air, 0.2);

describe("birdClearLight against its equations worked by another program", () => {
  // Bird & Hulstrom 1981, SERI/TR-642-761, default atmosphere, 1367 W/m2, albedo 0.2; to two decimals.
  test.each([
    [0, 852.92, 192.88, 1045.81],
    [30, 813.97, 183.85, 888.77],
    [60, 641.91, 148.8, 469.76],
    [75, 405.95, 103.2, 208.27],
    [80, 270.94, 74.6, 121.65],
  ])("zenith %d: beam %d, diffuse %d, global %d", (zenithDeg, beam, diffuse, global) => {
    const light = lightAt(zenithDeg, DEFAULT);
    expect(light.beamNormal).toBeCloseTo(beam, 1);
    expect(light.diffuse).toBeCloseTo(diffuse, 1);
    expect(light.global).toBeCloseTo(global, 1);
  });

  test.each([
    [30, 988.09, 956.05],
    [60, 868.31, 516.13],
    [80, 553.57, 141.96],
  ])("clean, dry and high, zenith %d: beam %d, global %d", (zenithDeg, beam, global) => {
    const light = lightAt(zenithDeg, CLEAN);
    expect(light.beamNormal).toBeCloseTo(beam, 1);
    expect(light.global).toBeCloseTo(global, 1);
  });
});

describe("parts of Bird's model by hand", () => {
  test("haze over the whole spectrum: 0.2758 x 0.4 + 0.35 x 0.2", () => {
    expect(broadbandAod(0.4, 0.2)).toBeCloseTo(0.18032, 12);
  });

  test("haze that scatters all forward and absorbs nothing leaves the sky's own reflectance at 0.0685", () => {
    const forward = { ...DEFAULT, forwardShare: 1 };
    const [dark, bright] = [0, 0.5].map((albedo) => birdClearLight(1361, 0.5, 2, forward, albedo));
    expect(bright.global / dark.global).toBeCloseTo(1 / (1 - 0.5 * 0.0685), 12);
    // Half forward: 0.0685 + 0.5 (1 - scattered); thin haze absorbs next to nothing, so scattered is exp(-depth m^0.9108).
    const half = { ...DEFAULT, forwardShare: 0.5, aerosolAbsorption: 0 };
    const [noGround, snow] = [0, 0.8].map((albedo) => birdClearLight(1361, 0.5, 2, half, albedo));
    const aod = broadbandAod(0.3538, 0.2661);
    const aerosol = Math.exp(-(aod ** 0.873) * (1 + aod - aod ** 0.7088) * 2 ** 0.9108);
    const skyAlbedo = 0.0685 + 0.5 * (1 - aerosol);
    expect(snow.global / noGround.global).toBeCloseTo(1 / (1 - 0.8 * skyAlbedo), 12);
  });
});

describe("clearSkyColumns row by row", () => {
  const day = () =>
    sunColumns(
      { latitudeDeg: 52, longitudeDeg: 0, timeZone: "Etc/UTC" },
      { from: "2027-05-01", to: "2027-05-01" },
      60,
    );

  test.each([
    ["the report's default air", DEFAULT, 0.2],
    ["clean, dry and high", CLEAN, 0],
    ["urban haze over snow", { ...DEFAULT, aerosolAbsorption: 0.385, forwardShare: 0.6 }, 0.8],
    ["thick haze", { ...DEFAULT, aod380: 2, aod500: 1.8, waterCm: 6 }, 0.5],
  ] as const)("is the plain form at every height of the sun: %s", (_, air, albedo) => {
    const sun = day();
    const sky = clearSkyColumns(sun, air, albedo, { airC: 10, windMs: 2 });
    expect(sky.length).toBeGreaterThan(10);
    for (let row = 0; row < sun.length; row += 1) {
      const mass = airMassOfSine(sun.up[row]);
      const plain = birdClearLight(extraterrestrialNormal(121), sun.up[row], mass, air, albedo);
      expect(sky.extraterrestrial[row]).toBeCloseTo(extraterrestrialNormal(121), 9);
      expect(sky.airMass[row]).toBe(mass);
      expect(sky.beamNormal[row]).toBeCloseTo(plain.beamNormal, 8);
      expect(sky.diffuse[row]).toBeCloseTo(plain.diffuse, 8);
      expect(sky.global[row]).toBeCloseTo(plain.global, 8);
    }
  });

  test("a row with the sun on the horizon or below is dark, whatever stood in its place", () => {
    const sun = day();
    sun.up[0] = 0;
    sun.up[1] = -0.1;
    const out = emptySkyColumns(sun.length);
    for (const column of [out.beamNormal, out.diffuse, out.global]) column.fill(777);
    clearSkyColumns(sun, DEFAULT, 0.2, { airC: 10, windMs: 2 }, out);
    for (const column of [out.beamNormal, out.diffuse, out.global]) {
      expect([column[0], column[1]]).toEqual([0, 0]);
      expect(column[2]).toBeGreaterThan(0);
      expect(column[2]).not.toBe(777);
    }
  });

  test("columns of another length are refused, and told how long they should be", () => {
    const sun = day();
    expect(() =>
      clearSkyColumns(sun, DEFAULT, 0.2, { airC: 10, windMs: 2 }, emptySkyColumns(sun.length + 1)),
    ).toThrow(`clearSkyColumns: expected out of ${sun.length} rows, received ${sun.length + 1}`);
  });
});

describe("emptySkyColumns", () => {
  test("eight columns of their own over one buffer, all zero", () => {
    const sky = emptySkyColumns(3);
    const columns = [
      sky.beamNormal,
      sky.diffuse,
      sky.global,
      sky.extraterrestrial,
      sky.airMass,
      sky.albedo,
      sky.airC,
      sky.windMs,
    ];
    for (const [index, column] of columns.entries()) {
      expect([...column]).toEqual([0, 0, 0]);
      column.fill(index + 1);
    }
    for (const [index, column] of columns.entries())
      expect([...column]).toEqual([1, 1, 1].map((one) => one * (index + 1)));
    expect(new Set(columns.map(({ buffer }) => buffer)).size).toBe(1);
    expect(sky.beamNormal.buffer.byteLength).toBe(8 * 3 * 8);
  });
});
