/**
 * Angles. Degrees at every public door, radians only inside a loop.
 * Tilt: degrees up from horizontal. Bearing: degrees clockwise from true north.
 */

export const RADIANS_PER_DEGREE = Math.PI / 180;

/** Degrees to radians. */
export const toRadians = (degrees: number): number => degrees * RADIANS_PER_DEGREE;

/** Radians to degrees. */
export const toDegrees = (radians: number): number => radians / RADIANS_PER_DEGREE;

/** Arc cosine in radians; rounding that carries the argument past -1 or 1 is clamped. NaN stays NaN. */
export const clampedAcos = (cosine: number): number => Math.acos(Math.min(1, Math.max(-1, cosine)));

/** Arc sine in radians; rounding that carries the argument past -1 or 1 is clamped. NaN stays NaN. */
export const clampedAsin = (sine: number): number => Math.asin(Math.min(1, Math.max(-1, sine)));

/**
 * A bearing brought into [0, 360) degrees.
 *
 * @example wrapBearing(-90) // 270
 */
export const wrapBearing = (degrees: number): number => {
  const turned = degrees % 360;
  // + 0 turns -0 into 0; a tiny negative rounds up to 360, which is 0 again.
  const positive = turned < 0 ? turned + 360 : turned + 0;
  return positive === 360 ? 0 : positive;
};

/** The shortest turn from one bearing to another, degrees in (-180, 180]; positive is clockwise (to the right). */
export const turnBetween = (fromDeg: number, toDeg: number): number => {
  const turn = wrapBearing(toDeg - fromDeg);
  return turn > 180 ? turn - 360 : turn;
};

/** The bearing towards the equator: true south north of it and on it, true north south of it. */
export const equatorwards = (latitudeDeg: number): number => (latitudeDeg >= 0 ? 180 : 0);

/** A direction in the local frame: a unit vector, components along east, north and up. */
export interface Direction {
  readonly east: number;
  readonly north: number;
  readonly up: number;
}

/** The direction at an altitude (degrees above the horizon) and a bearing (degrees from true north). */
export const directionOf = (altitudeDeg: number, bearingDeg: number): Direction => {
  const altitude = toRadians(altitudeDeg);
  const bearing = toRadians(bearingDeg);
  const level = Math.cos(altitude);
  return { east: level * Math.sin(bearing), north: level * Math.cos(bearing), up: Math.sin(altitude) };
};

/** Which way a plane points: its tilt (0 flat, 90 upright) and the bearing its face looks along. */
export interface Aim {
  readonly tiltDeg: number;
  readonly bearingDeg: number;
}

/** The unit normal of a plane with that aim. */
export const normalOf = (aim: Aim): Direction => directionOf(90 - aim.tiltDeg, aim.bearingDeg);

/** A tilt read from a post (degrees from the vertical), from one read from the ground, and the other way round. */
export const otherReading = (degrees: number): number => 90 - degrees;
