import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  circumsolarShare,
  hayDavies,
  horizonShare,
  isotropic,
  perez,
  SKY_MODELS,
  skyBrightness,
  skyClearness,
} from "../../lib/plane/index.ts";
import type { SkyMoment, SkySplit } from "../../lib/plane/sky-model.ts";
import { airMassOfSine } from "../../lib/sky/air-mass.ts";
import { anyMoment } from "./any-light.ts";

const blank = (): SkySplit => ({ circumsolar: 0, dome: 0, horizon: 0 });

const momentOf = (altitudeDeg: number, beamNormal: number, diffuse: number): SkyMoment => ({
  beamNormal,
  diffuse,
  sinAltitude: Math.sin((altitudeDeg * Math.PI) / 180),
  extraterrestrial: 1361,
  airMass: 1 / Math.sin((altitudeDeg * Math.PI) / 180),
});

describe.each(Object.entries(SKY_MODELS))("%s", (_, model) => {
  test("gives a flat plane all the diffuse light while the sun is above 5 degrees", () => {
    fc.assert(
      fc.property(anyMoment, ({ sun, light }) => {
        fc.pre(sun.up > Math.sin((5 * Math.PI) / 180));
        const { circumsolar, dome } = model({ ...light, sinAltitude: sun.up }, blank());
        expect(circumsolar * sun.up + dome).toBeCloseTo(light.diffuse, 8);
      }),
    );
  });

  test("writes into the split it is given and returns it", () => {
    const split = blank();
    expect(model(momentOf(30, 500, 100), split)).toBe(split);
  });

  test("lets NaN through", () => {
    const { dome, circumsolar } = model(momentOf(30, Number.NaN, Number.NaN), blank());
    expect(dome + circumsolar).toBeNaN();
  });

  test("has nothing to spread where there is no diffuse light", () => {
    for (const beamNormal of [0, 500]) {
      expect(model(momentOf(30, beamNormal, 0), { circumsolar: 7, dome: 7, horizon: 7 })).toEqual(blank());
    }
  });
});

describe("isotropic", () => {
  test("puts all diffuse light in the dome", () => {
    expect(isotropic(momentOf(30, 500, 100), blank())).toEqual({ circumsolar: 0, dome: 100, horizon: 0 });
  });
});

describe("hayDavies", () => {
  test("gathers beam over extraterrestrial of the diffuse light at the sun", () => {
    const { circumsolar, dome, horizon } = hayDavies(momentOf(30, 680.5, 100), blank());
    expect(circumsolar).toBeCloseTo(50 / 0.5, 10);
    expect(dome).toBeCloseTo(50, 10);
    expect(horizon).toBe(0);
  });

  test("is the even sky without beam", () => {
    expect(hayDavies(momentOf(30, 0, 100), blank())).toEqual(isotropic(momentOf(30, 0, 100), blank()));
  });
});

describe("the Perez sky", () => {
  const edges = [1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2];
  // F11 and F21 of table 6 (Perez et al. 1990), to the paper's three digits but for the sixth F11 (see perez.ts).
  const f11 = [-0.008, 0.13, 0.33, 0.568, 0.873, 1.133, 1.06, 0.678];
  const f21 = [-0.06, -0.019, 0.055, 0.109, 0.226, 0.288, 0.264, 0.156];

  test("takes the coefficients of the bin that holds the clearness; an edge opens its bin", () => {
    const clearnesses = [1, ...edges];
    clearnesses.forEach((clearness, bin) => {
      expect(circumsolarShare(clearness, 0, 0)).toBeCloseTo(Math.max(0, f11[bin] ?? Number.NaN), 3);
      expect(horizonShare(clearness, 0, 0)).toBeCloseTo(f21[bin] ?? Number.NaN, 3);
    });
    edges.forEach((edge, bin) => {
      expect(horizonShare(edge - 1e-9, 0, 0)).toBeCloseTo(f21[bin] ?? Number.NaN, 3);
    });
  });

  // Beam, diffuse, zenith; clearness, brightness, F1, F2: the published formulas evaluated by an independent program, one
  // sky in each of five bins (Perez et al. 1990, coefficients to seven digits).
  test.each([
    [800, 100, 30, 7.95995, 0.08442, 0.519, 0.17115],
    [600, 150, 50, 3.36432, 0.17045, 0.5624, 0.19624],
    [300, 200, 60, 1.68323, 0.29178, 0.31384, 0.0499],
    [0, 120, 70, 1, 0.25485, 0.06564, -0.06812],
    [850, 60, 65, 6.62185, 0.10341, 0.3598, 0.29811],
  ])("beam %d, diffuse %d, zenith %d", (beamNormal, diffuse, zenithDeg, epsilon, delta, f1, f2) => {
    const zenith = (zenithDeg * Math.PI) / 180;
    const sinAltitude = Math.cos(zenith);
    const airMass = airMassOfSine(sinAltitude);
    const clearness = skyClearness(beamNormal, diffuse, zenith);
    const brightness = skyBrightness(diffuse, airMass, 1367);
    expect(clearness).toBeCloseTo(epsilon, 4);
    expect(brightness).toBeCloseTo(delta, 4);
    expect(circumsolarShare(clearness, brightness, zenith)).toBeCloseTo(f1, 4);
    expect(horizonShare(clearness, brightness, zenith)).toBeCloseTo(f2, 4);
    const split = perez({ beamNormal, diffuse, sinAltitude, extraterrestrial: 1367, airMass }, blank());
    expect(split.dome).toBeCloseTo(diffuse * (1 - f1), 1);
    expect(split.horizon).toBeCloseTo(diffuse * f2, 1);
    expect(split.circumsolar).toBeCloseTo((diffuse * f1) / sinAltitude, 1);
  });

  test("calls an overcast sky 1, whatever the sun's height", () => {
    for (const zenith of [0, 0.5, 1, 1.5]) expect(skyClearness(0, 200, zenith)).toBe(1);
  });

  test("grows clearer with more beam", () => {
    expect(skyClearness(600, 100, 0.7)).toBeGreaterThan(skyClearness(300, 100, 0.7));
  });

  test("knows brightness as diffuse times air mass over extraterrestrial", () => {
    expect(skyBrightness(136.1, 2, 1361)).toBeCloseTo(0.2, 12);
  });

  test("never has less than nothing round the sun", () => {
    expect(circumsolarShare(1, 0, 1.5)).toBe(0);
  });

  test("divides by no less than the sine of 5 degrees", () => {
    const at = (altitudeDeg: number) => {
      const moment = momentOf(altitudeDeg, 300, 50);
      const split = perez({ ...moment, airMass: 10 }, blank());
      return split.circumsolar / (50 - split.dome);
    };
    expect(at(2)).toBeCloseTo(1 / Math.sin((5 * Math.PI) / 180), 9);
    expect(at(10)).toBeCloseTo(1 / Math.sin((10 * Math.PI) / 180), 9);
  });
});
