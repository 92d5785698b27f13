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
  | {
      readonly kind: "cut";
      readonly cutMm: number;
      /** What to saw off before measuring again: short of the whole by what half a degree of reading error may be. */
      readonly firstCutMm: number;
      /** What half a degree in reading a tilt is in leg length there, mm. */
      readonly halfDegreeMm: number;
      readonly now: LegSetting;
      readonly then: LegSetting;
    }
  /** Wanted so low that no leg can be made for it. */
  | { readonly kind: "lay flat"; readonly now: LegSetting; readonly then: LegSetting }
  /** Nearer than a saw can mend. */
  | { readonly kind: "leave"; readonly now: LegSetting; readonly then: LegSetting }
  | { readonly kind: "too short"; readonly byMm: number; readonly now: LegSetting; readonly then: LegSetting }
  | { readonly kind: "impossible"; readonly problem: Problem };

/** A shorter leg has no room for a hole, its margin and a foot (our own choice). */
const LEAST_LEG_MM = 30;

const READING_ERROR_DEG = 0.5;

/** What half a degree in reading a tilt is in leg length, mm: halfway between a little steeper and a little flatter. */
const halfDegreeOf = (stand: StandGeometry, { legMm, tiltDeg }: LegSetting): number => {
  const steeper = legOfTilt(stand, tiltDeg + READING_ERROR_DEG);
  const flatter = legOfTilt(stand, tiltDeg - READING_ERROR_DEG);
  const up = steeper.kind === "stands" ? steeper.legMm - legMm : Number.NaN;
  const down = flatter.kind === "stands" ? legMm - flatter.legMm : Number.NaN;
  if (Number.isNaN(up)) return Number.isNaN(down) ? 0 : down;
  return Number.isNaN(down) ? up : (up + down) / 2;
};

/** A first cut is told to 5 mm, a longer one to 10: the rest comes off after measuring again. */
const firstCut = (cutMm: number, halfDegreeMm: number): number => {
  const safeMm = cutMm - halfDegreeMm;
  const stepMm = safeMm < 30 ? 5 : 10;
  return safeMm < stepMm ? cutMm : Math.min(cutMm, Math.round(safeMm / stepMm) * stepMm);
};

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
  if (cutMm > 0 && then.legMm < LEAST_LEG_MM) return { kind: "lay flat", now, then };
  const halfDegreeMm = halfDegreeOf(stand, then);
  return cutMm > 0
    ? { kind: "cut", cutMm, firstCutMm: firstCut(cutMm, halfDegreeMm), halfDegreeMm, now, then }
    : { kind: "too short", byMm: -cutMm, now, then };
};
