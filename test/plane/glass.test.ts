import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { martinRuizGlass } from "../../lib/plane/index.ts";
import { fresnel } from "../references/comparisons/fresnel.ts";

describe("martinRuizGlass", () => {
  const glass = martinRuizGlass();

  test("passes everything square on, nothing on edge or from behind", () => {
    expect(glass.beam(1)).toBe(1);
    expect(glass.beam(0)).toBe(0);
    expect(glass.beam(-0.3)).toBe(0);
    expect(glass.beam(0.5)).toBeCloseTo(0.9579, 4);
    expect(glass.beam(Number.NaN)).toBeNaN();
  });

  test("passes more the squarer the light", () => {
    for (let cosine = 0.01; cosine <= 1; cosine += 0.01) {
      expect(glass.beam(cosine)).toBeGreaterThan(glass.beam(cosine - 0.01));
    }
  });

  test("passes less at a slant with a greater angular loss", () => {
    expect(martinRuizGlass(0.2).beam(0.3)).toBeLessThan(glass.beam(0.3));
    expect(martinRuizGlass(0.2).sky(40)).toBeLessThan(glass.sky(40));
  });

  test("has a table that strays from the formula by less than 5e-6 between its nodes", () => {
    const { table, tableSteps, beam } = glass;
    expect(table).toHaveLength(tableSteps + 2);
    let worst = 0;
    for (let i = 0; i <= 40 * tableSteps; i += 1) {
      const at = i / 40;
      const step = Math.floor(at);
      const read = table[step] + (at - step) * (table[step + 1] - table[step]);
      worst = Math.max(worst, Math.abs(read - beam(at / tableSteps)));
    }
    expect(worst).toBeLessThan(5e-6);
  });

  test("lets a flat panel see no ground, and a nearly flat one nearly none, without a jump", () => {
    expect(glass.ground(0)).toBe(0);
    let before = 0;
    // 1e-3 radians, where the series takes over, is 0.0573 degrees.
    for (const tiltDeg of [1e-9, 1e-5, 0.01, 0.0572, 0.0574, 0.1, 1, 5]) {
      expect(glass.ground(tiltDeg)).toBeGreaterThan(before);
      before = glass.ground(tiltDeg);
    }
    expect(glass.ground(0.0574) - glass.ground(0.0572)).toBeLessThan(2e-5);
    // Beyond the series the whole ratio counts: at 90 degrees it is pi / 2 - 1, the series' first term alone pi / 6.
    expect(glass.ground(90)).toBeCloseTo(glass.sky(90), 12);
  });

  /** The integral of the beam form over what an upright or flat panel sees of an even dome, by brute force. */
  const overDome = (tiltDeg: number, ground: boolean): number => {
    const tilt = (tiltDeg * Math.PI) / 180;
    const rings = 200;
    let [passed, all] = [0, 0];
    for (let i = 0; i < rings; i += 1) {
      const zenith = ((i + 0.5) / rings) * Math.PI;
      if (zenith > Math.PI / 2 !== ground) continue;
      for (let j = 0; j < rings; j += 1) {
        const azimuth = ((j + 0.5) / rings) * 2 * Math.PI;
        const cosine =
          Math.cos(zenith) * Math.cos(tilt) + Math.sin(zenith) * Math.sin(tilt) * Math.cos(azimuth);
        if (cosine <= 0) continue;
        passed += glass.beam(cosine) * cosine * Math.sin(zenith);
        all += cosine * Math.sin(zenith);
      }
    }
    return passed / all;
  };

  test("agrees with the beam form integrated over sky and ground, within the 0.011 that Martin & Ruiz's closed form is off", () => {
    for (const tiltDeg of [0, 90]) expect(glass.sky(tiltDeg)).toBeCloseTo(overDome(tiltDeg, false), 3);
    for (const tiltDeg of [20, 45, 60]) {
      expect(Math.abs(glass.sky(tiltDeg) - overDome(tiltDeg, false))).toBeLessThan(0.011);
      expect(Math.abs(glass.ground(tiltDeg) - overDome(tiltDeg, true))).toBeLessThan(0.015);
    }
  });

  test("is within 0.025 of plain optics up to 70 degrees, where they part by 0.021", () => {
    // The cells are bonded to their glass, so one surface between air and glass is what light at a slant loses at.
    const passes = (incidence: number) => 1 - fresnel(1.526, incidence).mean;
    for (let incidence = 0; incidence <= 70; incidence += 5) {
      const ours = glass.beam(Math.cos((incidence * Math.PI) / 180));
      // The measured form is a little kinder at a slant: cell and bond are not perfect absorbers square on either.
      expect(Math.abs(ours - passes(incidence) / passes(0))).toBeLessThan(0.025);
    }
  });

  test("stays between 0 and 1 for any glass at any angle", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (angularLoss, tiltDeg, cosine) => {
          const any = martinRuizGlass(angularLoss);
          for (const passes of [any.beam(cosine), any.sky(tiltDeg), any.ground(tiltDeg)]) {
            expect(passes).toBeGreaterThanOrEqual(0);
            expect(passes).toBeLessThanOrEqual(1);
          }
        },
      ),
    );
  });

  test("takes an angular loss of 1, and refuses one that is none", () => {
    expect(martinRuizGlass(1).beam(0.5)).toBeCloseTo((1 - Math.exp(-0.5)) / (1 - Math.exp(-1)), 14);
    for (const angularLoss of [0, -0.1, 1.01, Number.NaN]) {
      expect(() => martinRuizGlass(angularLoss)).toThrow(
        new RangeError(`martinRuizGlass: expected an angular loss above 0, up to 1, received ${angularLoss}`),
      );
    }
  });
});
