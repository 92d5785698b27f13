import fc from "fast-check";
import type { LightOfMoment } from "../../lib/plane/index.ts";
import { airMassOfSine } from "../../lib/sky/air-mass.ts";
import { emptySkyColumns, type SkyColumns } from "../../lib/sky/columns.ts";
import type { SunColumns } from "../../lib/sun/columns.ts";
import { type Aim, type Direction, directionOf } from "../../lib/units/angle.ts";

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any aim a panel can have. */
export const anyAim: fc.Arbitrary<Aim> = fc.record({ tiltDeg: within(0, 90), bearingDeg: within(0, 360) });

/** A sun in sight. */
export const anySun = fc
  .record({ altitudeDeg: within(0.01, 89.99), bearingDeg: within(0, 360) })
  .map(({ altitudeDeg, bearingDeg }) => directionOf(altitudeDeg, bearingDeg));

/** A moment: where the sun is, and light that such a sun can give. */
export const anyMoment: fc.Arbitrary<Moment> = fc
  .record({
    sun: anySun,
    /** Beam as a share of the extraterrestrial, diffuse as a share of what is left on the level. */
    beamShare: within(0, 0.9),
    diffuseShare: within(0.01, 1),
    albedo: within(0, 1),
    extraterrestrial: within(1300, 1420),
  })
  .map(({ sun, beamShare, diffuseShare, albedo, extraterrestrial }) => {
    const beamNormal = beamShare * extraterrestrial;
    const diffuse = diffuseShare * (1 - beamShare) * extraterrestrial * sun.up;
    const light: LightOfMoment = {
      beamNormal,
      diffuse,
      global: beamNormal * sun.up + diffuse,
      extraterrestrial,
      airMass: airMassOfSine(sun.up),
      albedo,
    };
    return { sun, light };
  });

/** The sun and the light of one moment. */
export interface Moment {
  readonly sun: Direction;
  readonly light: LightOfMoment;
}

/** Moments as columns, in no order of time. */
export const momentsToColumns = (
  moments: readonly Moment[],
): { readonly sun: SunColumns; readonly sky: SkyColumns } => {
  const { length } = moments;
  const sky = emptySkyColumns(length);
  moments.forEach(({ light }, row) => {
    sky.beamNormal[row] = light.beamNormal;
    sky.diffuse[row] = light.diffuse;
    sky.global[row] = light.global;
    sky.extraterrestrial[row] = light.extraterrestrial;
    sky.airMass[row] = light.airMass;
    sky.albedo[row] = light.albedo;
  });
  return {
    sun: {
      stepMinutes: 10,
      days: [],
      length,
      timeMs: new Float64Array(length),
      hours: new Float64Array(length).fill(1 / 6),
      east: Float64Array.from(moments, ({ sun }) => sun.east),
      north: Float64Array.from(moments, ({ sun }) => sun.north),
      up: Float64Array.from(moments, ({ sun }) => sun.up),
      day: new Uint16Array(length),
    },
    sky,
  };
};
