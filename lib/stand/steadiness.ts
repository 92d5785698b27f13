import type { Steadying } from "../plan/steadying.ts";
import { toRadians } from "../units/angle.ts";
import { type Curve, readCurve } from "../units/interpolation.ts";
import { type BeaufortForce, beaufortOf } from "./beaufort.ts";
import type { StandGeometry } from "./geometry.ts";
import { windOfForce, windProfile } from "./gust.ts";
import { type FrameSide, sideView } from "./side-view.ts";

/** Standard gravity, m/s2 (3rd CGPM 1901). */
const GRAVITY = 9.80665;

/**
 * Partial factors for losing balance: wind counts 1.5 times, the weight that holds 0.9 times
 * (EN 1990 table A1.2(A), from memory).
 */
export const WIND_SAFETY_FACTOR = 1.5;
export const WEIGHT_SAFETY_FACTOR = 0.9;

/**
 * Net force coefficients of a plate by its tilt, degrees: EN 1991-1-4 table 7.6 (monopitch canopies; the greater of
 * blocked and free for uplift), from memory, and clause 7.4.3 (signboards, 1.8) from where uplift reaches it. No clause
 * covers a plate between 30 degrees and upright: a straight line to the signboard.
 */
const FROM_BEHIND: Curve = [
  [0, 1.3],
  [5, 1.4],
  [20, 1.4],
  [25, 1.6],
  [30, 1.8],
  [90, 1.8],
];
const FROM_FRONT: Curve = [
  [0, 0.2],
  [5, 0.4],
  [10, 0.5],
  [15, 0.7],
  [20, 0.8],
  [25, 1.0],
  [30, 1.2],
  [90, 1.8],
];

/** Net force coefficients at a tilt (degrees, 0 to 90): wind from behind lifts, wind from the front presses. */
export const forceCoefficients = (
  tiltDeg: number,
): { readonly fromBehind: number; readonly fromFront: number } => ({
  fromBehind: readCurve(FROM_BEHIND, tiltDeg),
  fromFront: readCurve(FROM_FRONT, tiltDeg),
});

/** A panel (or several side by side) as the wind meets it. */
export interface StandPanel extends FrameSide {
  readonly widthMm: number;
  readonly massKg: number;
}

/** Ways in which wind moves a stand. */
export type WindMove = "slides forward" | "slides back" | "tips onto its face" | "tips over its leg";

/** An estimate of the wind that moves a stand. It is no permit: see `WIND_CAUTION`. */
export interface Steadiness {
  /** Gust at the panel that just moves it, m/s, for each way; Infinity where no wind does, 0 where it falls by itself. */
  readonly gustMs: Readonly<Record<WindMove, number>>;
  /** The way that comes first. */
  readonly first: WindMove;
  /** Mean wind at 10 m, as a forecast states it, that the stand holds with the safety factors; m/s. */
  readonly forecastMs: number;
  readonly beaufort: BeaufortForce;
}

export const WIND_CAUTION =
  "An estimate from textbook coefficients, no permit: stake the stand, and bring the panel in before a gale.";

/** Forces that just move a stand with weight and ballast, N. */
const movingForces = (
  stand: StandGeometry,
  panel: StandPanel,
  steadying: Steadying,
  tiltDeg: number,
): Readonly<Record<WindMove, number>> => {
  const { foot, frame } = sideView(stand, panel, tiltDeg);
  const tilt = toRadians(tiltDeg);
  const ground = toRadians(stand.groundSlopeDeg);
  const opening = tilt - ground;
  const panelN = panel.massKg * GRAVITY;
  const halfBallastN = (steadying.ballastKg * GRAVITY) / 2;
  const weightN = panelN + 2 * halfBallastN;
  const centreBackMm = frame.reduce((sum, corner) => sum + corner.backMm, 0) / frame.length;

  // Wind from behind: its centre of pressure lies a quarter of the length from the windward, upper edge
  // (EN 1991-1-4 figure 7.16). It turns the stand about its heel.
  const heldAtHeel = panelN * centreBackMm + halfBallastN * foot.backMm;
  const behindArmMm = 0.75 * panel.lengthMm;
  // Wind from the front turns it about the leg's foot; taken at the middle, which is further from the foot than the quarter.
  const heldAtFoot = panelN * (foot.backMm - centreBackMm) + halfBallastN * foot.backMm;
  const frontArmMm = 0.5 * panel.lengthMm - foot.backMm * Math.cos(tilt) - foot.upMm * Math.sin(tilt);

  const { friction } = steadying;
  const forwardGrip = weightN * (friction * Math.cos(ground) - Math.sin(ground));
  const backGrip = weightN * (friction * Math.cos(ground) + Math.sin(ground));
  return {
    "slides forward": balance(forwardGrip, Math.sin(opening) + friction * Math.cos(opening)),
    "slides back": balance(backGrip, Math.sin(opening) - friction * Math.cos(opening)),
    "tips onto its face": balance(heldAtHeel, behindArmMm),
    "tips over its leg": balance(heldAtFoot, frontArmMm),
  };
};

/** Force at which what holds is used up; wind that can't work against it never does. */
const balance = (holding: number, lever: number): number => {
  if (holding <= 0) return 0;
  return lever <= 0 ? Number.POSITIVE_INFINITY : holding / lever;
};

/**
 * Sliding and tipping of a stand in the wind, from statics of a rigid body: weight and friction against the net
 * force square to the panel, wind from straight behind and straight ahead. Not looked at: wind from the side,
 * flutter, soft ground, a leg that folds or breaks.
 *
 * @param tiltDeg degrees up from horizontal, within the stand's reach
 */
export const steadiness = (
  stand: StandGeometry,
  panel: StandPanel,
  steadying: Steadying,
  tiltDeg: number,
): Steadiness => {
  const forces = movingForces(stand, panel, steadying, tiltDeg);
  const { fromBehind, fromFront } = forceCoefficients(tiltDeg);
  const areaM2 = (panel.lengthMm * panel.widthMm) / 1e6;
  const gust = (move: WindMove, coefficient: number): number =>
    windOfForce(forces[move], areaM2, coefficient);
  const gustMs = {
    "slides forward": gust("slides forward", fromBehind),
    "slides back": gust("slides back", fromFront),
    "tips onto its face": gust("tips onto its face", fromBehind),
    "tips over its leg": gust("tips over its leg", fromFront),
  };
  const first = MOVES.reduce((least, move) => (gustMs[move] < gustMs[least] ? move : least));
  const topM = (panel.lengthMm * Math.sin(toRadians(tiltDeg))) / 1000;
  const heldGust = gustMs[first] * Math.sqrt(WEIGHT_SAFETY_FACTOR / WIND_SAFETY_FACTOR);
  const forecastMs = heldGust / windProfile(steadying.terrain, topM).gustFactor;
  return { gustMs, first, forecastMs, beaufort: beaufortOf(forecastMs) };
};

const MOVES: readonly WindMove[] = [
  "slides forward",
  "slides back",
  "tips onto its face",
  "tips over its leg",
];
