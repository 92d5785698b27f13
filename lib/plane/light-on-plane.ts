import type { SkyToPlane } from "../plan/sky.ts";
import { type Aim, type Direction, normalOf, toRadians } from "../units/angle.ts";
import { SKY_MODELS } from "./dome-columns.ts";
import type { Glass } from "./glass.ts";
import { checkAim, cosIncidence, groundView, skyView } from "./incidence.ts";

/** The light of one moment, as it stands in a row of the sky columns. W/m2 unless said otherwise. */
export interface LightOfMoment {
  readonly beamNormal: number;
  readonly diffuse: number;
  readonly global: number;
  readonly extraterrestrial: number;
  /** Relative air mass, not corrected for pressure. */
  readonly airMass: number;
  /** Ground reflectance, 0 to 1. */
  readonly albedo: number;
}

/** The light on a plane at one moment, in its parts, their sum, and what passes the glass. W/m2. */
export interface PlaneLight {
  readonly beam: number;
  readonly circumsolar: number;
  readonly dome: number;
  /** May be negative: a horizon darker than the dome. */
  readonly horizon: number;
  readonly ground: number;
  readonly plane: number;
  readonly absorbed: number;
}

/**
 * The light on a plane at one moment over a level horizon, in its parts.
 *
 * The same formulas as {@link planeColumns}, without its table for the glass: for a single look, and the referee of
 * the fast loop.
 *
 * @param sun Unit vector to the apparent sun, which must be up.
 * @param light What arrives at that moment.
 * @param aim Tilt 0 to 90 degrees up from horizontal, bearing in degrees clockwise from true north.
 * @param model How diffuse light is spread over the sky.
 * @returns W/m2; NaN in, NaN out.
 * @throws RangeError when the tilt is out of range.
 */
export const lightOnPlane = (
  sun: Direction,
  light: LightOfMoment,
  aim: Aim,
  glass: Glass,
  model: SkyToPlane = "perez",
): PlaneLight => {
  checkAim("lightOnPlane", aim);
  const cosine = Math.max(0, cosIncidence(sun, normalOf(aim)));
  const split = SKY_MODELS[model]({ ...light, sinAltitude: sun.up }, { circumsolar: 0, dome: 0, horizon: 0 });
  const sky = {
    circumsolar: split.circumsolar * cosine,
    dome: split.dome * skyView(aim.tiltDeg),
    horizon: split.horizon * Math.sin(toRadians(aim.tiltDeg)),
  };
  const skyParts =
    sky.circumsolar + sky.dome + sky.horizon < 0 ? { circumsolar: 0, dome: 0, horizon: 0 } : sky;
  const { circumsolar, dome, horizon } = skyParts;
  const beam = light.beamNormal * cosine;
  const ground = light.albedo * light.global * groundView(aim.tiltDeg);
  return {
    beam,
    ...skyParts,
    ground,
    plane: beam + circumsolar + dome + horizon + ground,
    // Grazing circumsolar light hardly passes the glass, so a sky part below 0 beside it could outweigh it there.
    absorbed: Math.max(
      0,
      (beam + circumsolar) * glass.beam(cosine) +
        (dome + horizon) * glass.sky(aim.tiltDeg) +
        ground * glass.ground(aim.tiltDeg),
    ),
  };
};
