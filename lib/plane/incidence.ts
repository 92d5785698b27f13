/** How a plane meets the light: incidence of the sun, and how much sky and ground it looks at. */
import { type Aim, clampedAcos, type Direction, normalOf, toDegrees, toRadians } from "../units/angle.ts";

/**
 * Cosine of the angle between the sun and the plane's normal; negative when the sun is behind the plane.
 *
 * The dot product of the two unit vectors, which is Duffie & Beckman, Solar Engineering of Thermal Processes,
 * equation 1.6.2, without its special cases.
 *
 * @param sun Unit vector to the sun.
 * @param normal Unit normal of the plane.
 * @returns -1 to 1; NaN in, NaN out.
 */
export const cosIncidence = (sun: Direction, normal: Direction): number =>
  sun.east * normal.east + sun.north * normal.north + sun.up * normal.up;

/**
 * The angle at which the sun meets a plane: 0 square on, 90 grazing, above 90 from behind.
 *
 * @param sun Unit vector to the sun.
 * @param aim Tilt in degrees up from horizontal, bearing in degrees clockwise from true north.
 * @returns Degrees, 0 to 180; NaN in, NaN out.
 * @example incidenceDeg(directionOf(60, 180), { tiltDeg: 30, bearingDeg: 180 }) // 0
 */
export const incidenceDeg = (sun: Direction, aim: Aim): number =>
  toDegrees(clampedAcos(cosIncidence(sun, normalOf(aim))));

/**
 * The share of the sky dome that a plane sees over a level horizon, weighted by incidence: (1 + cos tilt) / 2.
 *
 * Liu & Jordan 1963, Solar Energy 7, 53.
 *
 * @param tiltDeg Degrees up from horizontal, 0 to 180.
 * @returns 1 flat, 0.5 upright.
 * @example skyView(60) // 0.75
 */
export const skyView = (tiltDeg: number): number => (1 + Math.cos(toRadians(tiltDeg))) / 2;

/**
 * The share of a plane's view that is level ground: (1 - cos tilt) / 2, the rest of {@link skyView}.
 *
 * @param tiltDeg Degrees up from horizontal, 0 to 180.
 * @returns 0 flat, 0.5 upright.
 * @example groundView(60) // 0.25
 */
export const groundView = (tiltDeg: number): number => (1 - Math.cos(toRadians(tiltDeg))) / 2;

/** Throws a RangeError unless the aim is a tilt of 0 to 90 degrees with a finite bearing. */
export const checkAim = (caller: string, { tiltDeg, bearingDeg }: Aim): void => {
  if (!(tiltDeg >= 0 && tiltDeg <= 90)) {
    throw new RangeError(`${caller}: expected tilt 0 to 90 degrees, received ${tiltDeg}`);
  }
  if (!Number.isFinite(bearingDeg)) {
    throw new RangeError(`${caller}: expected a finite bearing in degrees, received ${bearingDeg}`);
  }
};
