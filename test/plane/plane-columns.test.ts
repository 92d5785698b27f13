import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { SKY_TO_PLANE } from "../../lib/plan/sky.ts";
import {
  domeColumns,
  emptyPlaneColumns,
  lightOnPlane,
  martinRuizGlass,
  planeColumns,
} from "../../lib/plane/index.ts";
import { emptySkyColumns } from "../../lib/sky/columns.ts";
import { directionOf } from "../../lib/units/angle.ts";
import { anyAim, anyMoment, momentsToColumns } from "./any-light.ts";

const glass = martinRuizGlass();
const someMoments = fc.array(anyMoment, { minLength: 1, maxLength: 40 });

describe("planeColumns", () => {
  test("agrees with the plain form, row by row, for every model", () => {
    fc.assert(
      fc.property(someMoments, anyAim, fc.constantFrom(...SKY_TO_PLANE), (moments, aim, model) => {
        const { sun, sky } = momentsToColumns(moments);
        const { plane, absorbed } = planeColumns(sun, domeColumns(sun, sky, model), aim, glass);
        moments.forEach(({ sun: towards, light }, row) => {
          const plain = lightOnPlane(towards, light, aim, glass, model);
          expect(plane[row]).toBeCloseTo(plain.plane, 9);
          // The glass is read from a table that is good to 5e-6.
          expect(Math.abs(absorbed[row] - plain.absorbed)).toBeLessThanOrEqual(5e-6 * plain.plane + 1e-9);
        });
      }),
    );
  });

  test("tilt 0 gives global horizontal before the glass, while the sun is above 5 degrees", () => {
    fc.assert(
      fc.property(someMoments, fc.constantFrom(...SKY_TO_PLANE), (moments, model) => {
        const high = moments.filter(({ sun }) => sun.up > Math.sin((5 * Math.PI) / 180));
        const { sun, sky } = momentsToColumns(high);
        const { plane } = planeColumns(
          sun,
          domeColumns(sun, sky, model),
          { tiltDeg: 0, bearingDeg: 0 },
          glass,
        );
        high.forEach(({ light }, row) => {
          expect(plane[row]).toBeCloseTo(light.global, 8);
        });
      }),
    );
  });

  test("what passes the glass is never below 0, under grazing light that no sky model was fitted to", () => {
    // A grey hour of a weather file from another latitude, laid onto a sun half a degree up.
    const toward = directionOf(0.53, 60.4);
    const light = {
      beamNormal: 0,
      diffuse: 83.6,
      global: 83.6,
      extraterrestrial: 1322,
      airMass: 31,
      albedo: 0.23,
    };
    const { sun, sky } = momentsToColumns([{ sun: toward, light }]);
    for (const model of SKY_TO_PLANE) {
      for (let tiltDeg = 0; tiltDeg <= 90; tiltDeg += 5) {
        const aim = { tiltDeg, bearingDeg: 180 };
        const { absorbed } = planeColumns(sun, domeColumns(sun, sky, model), aim, martinRuizGlass());
        expect(absorbed[0]).toBeGreaterThanOrEqual(0);
        expect(lightOnPlane(toward, light, aim, martinRuizGlass(), model).absorbed).toBeGreaterThanOrEqual(0);
      }
    }
  });

  test("tilt 0 makes the bearing irrelevant", () => {
    fc.assert(
      fc.property(someMoments, fc.double({ min: -360, max: 360, noNaN: true }), (moments, bearingDeg) => {
        const { sun, sky } = momentsToColumns(moments);
        const dome = domeColumns(sun, sky);
        const north = planeColumns(sun, dome, { tiltDeg: 0, bearingDeg: 0 }, glass);
        const turned = planeColumns(sun, dome, { tiltDeg: 0, bearingDeg }, glass);
        turned.plane.forEach((each, row) => {
          expect(each).toBeCloseTo(north.plane[row], 9);
        });
      }),
    );
  });

  test("is never negative, and the glass never adds", () => {
    fc.assert(
      fc.property(someMoments, anyAim, (moments, aim) => {
        const { sun, sky } = momentsToColumns(moments);
        const { plane, absorbed } = planeColumns(sun, domeColumns(sun, sky), aim, glass);
        plane.forEach((each, row) => {
          expect(each).toBeGreaterThanOrEqual(0);
          expect(absorbed[row]).toBeGreaterThanOrEqual(-1e-9);
          // A dark horizon (negative) passes the sky's modifier while the sun's side passes the beam's.
          expect(absorbed[row]).toBeLessThanOrEqual(each * 1.05 + 1e-9);
        });
      }),
    );
  });

  test("doubles with the light", () => {
    fc.assert(
      fc.property(anyMoment, anyAim, ({ sun, light }, aim) => {
        const twice = {
          ...light,
          beamNormal: 2 * light.beamNormal,
          diffuse: 2 * light.diffuse,
          global: 2 * light.global,
          extraterrestrial: 2 * light.extraterrestrial,
        };
        const once = lightOnPlane(sun, light, aim, glass);
        expect(lightOnPlane(sun, twice, aim, glass).plane).toBeCloseTo(2 * once.plane, 8);
      }),
    );
  });

  test("holds the sky's share at 0 where a sky unlike any measured would send it below", () => {
    // Clear by its clearness yet far too bright: the horizon of the eighth bin turns strongly negative.
    const light = {
      beamNormal: 1300,
      diffuse: 200,
      global: 1500,
      extraterrestrial: 1361,
      airMass: 10,
      albedo: 0,
    };
    const sun = { east: 0, north: -Math.cos(1.4), up: Math.sin(1.4) };
    const away = { tiltDeg: 90, bearingDeg: 0 };
    const plain = lightOnPlane(sun, light, away, glass);
    expect(plain).toMatchObject({ circumsolar: 0, dome: 0, horizon: 0, plane: 0, absorbed: 0 });
    const columns = momentsToColumns([{ sun, light }]);
    expect(planeColumns(columns.sun, domeColumns(columns.sun, columns.sky), away, glass).plane[0]).toBe(0);
  });

  test("keeps NaN in its row and out of the others", () => {
    const moment = {
      sun: { east: 0, north: -Math.SQRT1_2, up: Math.SQRT1_2 },
      light: {
        beamNormal: 600,
        diffuse: 100,
        global: 524,
        extraterrestrial: 1361,
        airMass: 1.41,
        albedo: 0.2,
      },
    };
    const gap = { ...moment, light: { ...moment.light, diffuse: Number.NaN } };
    const { sun, sky } = momentsToColumns([moment, gap, moment]);
    const { plane } = planeColumns(sun, domeColumns(sun, sky), { tiltDeg: 40, bearingDeg: 180 }, glass);
    expect(plane[1]).toBeNaN();
    expect(plane[0]).toBe(plane[2]);
    expect(plane[0]).toBeGreaterThan(0);
  });

  test("writes into the columns it is given", () => {
    const { sun, sky } = momentsToColumns([]);
    const out = emptyPlaneColumns(0);
    expect(planeColumns(sun, domeColumns(sun, sky), { tiltDeg: 30, bearingDeg: 0 }, glass, out)).toBe(out);
  });

  test("refuses columns of other lengths and tilts out of range", () => {
    const { sun, sky } = momentsToColumns([]);
    const dome = domeColumns(sun, sky);
    const aim = { tiltDeg: 30, bearingDeg: 0 };
    expect(() => planeColumns(sun, dome, aim, glass, emptyPlaneColumns(3))).toThrow(
      new RangeError("planeColumns: expected dome and output of 0 rows, received 0 and 3"),
    );
    expect(() => planeColumns({ ...sun, length: 2 }, dome, aim, glass)).toThrow("received 0 and 2");
    expect(() => domeColumns(sun, emptySkyColumns(2))).toThrow(
      new RangeError("domeColumns: expected sky columns of 0 rows, received 2"),
    );
    expect(() => planeColumns(sun, dome, { ...aim, tiltDeg: 91 }, glass)).toThrow(
      new RangeError("planeColumns: expected tilt 0 to 90 degrees, received 91"),
    );
  });
});

describe("lightOnPlane", () => {
  test("names its parts, which sum to the plane's light", () => {
    fc.assert(
      fc.property(anyMoment, anyAim, ({ sun, light }, aim) => {
        const { beam, circumsolar, dome, horizon, ground, plane } = lightOnPlane(sun, light, aim, glass);
        expect(beam + circumsolar + dome + horizon + ground).toBeCloseTo(plane, 9);
      }),
    );
  });

  test("sees ground light in proportion to the ground's reflectance and none when flat", () => {
    const sun = { east: 0, north: -0.6, up: 0.8 };
    const light = {
      beamNormal: 700,
      diffuse: 100,
      global: 660,
      extraterrestrial: 1361,
      airMass: 1.25,
      albedo: 0.2,
    };
    const snow = { ...light, albedo: 0.8 };
    const aim = { tiltDeg: 60, bearingDeg: 180 };
    expect(lightOnPlane(sun, light, aim, glass).ground).toBeCloseTo(0.2 * 660 * 0.25, 10);
    expect(lightOnPlane(sun, snow, aim, glass).ground).toBeCloseTo(0.8 * 660 * 0.25, 10);
    expect(lightOnPlane(sun, snow, { ...aim, tiltDeg: 0 }, glass).ground).toBe(0);
    expect(() => lightOnPlane(sun, light, { ...aim, tiltDeg: 100 }, glass)).toThrow(RangeError);
  });
});
