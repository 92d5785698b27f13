import { otherReading } from "../units/angle.ts";

/** What a tilt was read from: the level ground (0 flat, 90 upright), or an upright post (90 flat, 0 upright). */
export type ReadFrom = "ground" | "post";

/** A tilt as a person reads it, with what it was read from. */
export interface TiltReading {
  readonly deg: number;
  readonly from: ReadFrom;
}

/**
 * Tilt up from horizontal, from a reading. Degrees.
 *
 * @example tiltOfReading({ deg: 55, from: "post" }) // 35
 */
export const tiltOfReading = ({ deg, from }: TiltReading): number =>
  from === "ground" ? deg : otherReading(deg);

/** A tilt as it reads from the ground or from a post. Degrees. */
export const readingOfTilt = (tiltDeg: number, from: ReadFrom): TiltReading => ({
  deg: from === "ground" ? tiltDeg : otherReading(tiltDeg),
  from,
});

/**
 * A tilt in words, both readings, each labelled.
 *
 * @example tiltWords(35.2, 1) // "35.2° from the ground (54.8° from a post)"
 */
export const tiltWords = (tiltDeg: number, decimals = 0): string => {
  const ground = tiltDeg.toFixed(decimals);
  // From the rounded reading, so that the two printed numbers sum to 90.
  const post = otherReading(Number(ground)).toFixed(decimals);
  return `${ground}° from the ground (${post}° from a post)`;
};
