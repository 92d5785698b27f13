import type { Cutting } from "../plan/cutting.ts";
import type { Problem } from "../units/problem.ts";
import type { StandGeometry } from "./geometry.ts";
import { type LegSetting, legOfTilt } from "./leg.ts";

/** A piece to saw, and where its pivot hole goes. mm. */
export interface Piece {
  readonly pieceMm: number;
  /** From the upper end of the piece to the centre of the pivot hole. */
  readonly holeFromEndMm: number;
}

/**
 * The piece to cut for a leg: from pivot hole to foot, less a rubber foot if there is one, plus the margin beyond
 * the hole.
 *
 * @example pieceOfLeg(500, { holeMarginMm: 20, footMm: 10 }) // { pieceMm: 510, holeFromEndMm: 20 }
 */
export const pieceOfLeg = (
  legMm: number,
  { holeMarginMm, footMm }: Pick<Cutting, "holeMarginMm" | "footMm">,
): Piece => ({
  pieceMm: legMm - footMm + holeMarginMm,
  holeFromEndMm: holeMarginMm,
});

/** What to do with a leg that was cut and tried. */
export type Trim =
  | { readonly kind: "cut"; readonly cutMm: number; readonly now: LegSetting; readonly then: LegSetting }
  /** Nearer than a saw can mend. */
  | { readonly kind: "leave"; readonly now: LegSetting; readonly then: LegSetting }
  | { readonly kind: "too short"; readonly byMm: number; readonly now: LegSetting; readonly then: LegSetting }
  | { readonly kind: "impossible"; readonly problem: Problem };

/** Less than this can't be sawn off cleanly. */
const LEAST_CUT_MM = 0.5;

/**
 * How much to cut off a leg's foot, from the tilt measured with it and the tilt wanted (degrees up from horizontal).
 * A leg that already gives too low a tilt is refused: nothing sawn off makes it longer.
 */
export const trimOf = (stand: StandGeometry, measuredTiltDeg: number, wantedTiltDeg: number): Trim => {
  const now = legOfTilt(stand, measuredTiltDeg);
  const then = legOfTilt(stand, wantedTiltDeg);
  if (now.kind === "impossible")
    return { kind: "impossible", problem: { ...now.problem, path: "measured tilt" } };
  if (then.kind === "impossible")
    return { kind: "impossible", problem: { ...then.problem, path: "wanted tilt" } };
  const cutMm = now.legMm - then.legMm;
  if (Math.abs(cutMm) < LEAST_CUT_MM) return { kind: "leave", now, then };
  return cutMm > 0 ? { kind: "cut", cutMm, now, then } : { kind: "too short", byMm: -cutMm, now, then };
};
