import type { Steadying } from "../plan/steadying.ts";
import { toRadians } from "../units/angle.ts";
import { type Curve, readCurve } from "../units/interpolation.ts";
import { type BeaufortForce, beaufortOf } from "./beaufort.ts";
import type { StandGeometry } from "./geometry.ts";
import { dynamicPressure, windOfForce, windProfile } from "./gust.ts";
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

/** Ways in which wind moves a stand: pushed along, lifted at the back about its bottom edge, or pushed over its leg. */
export type WindMove = "slides forward" | "slides back" | "lifts at the back" | "tips over its leg";

/** An estimate of the wind that moves a stand which is only set down: see `WIND_CAUTION`. */
export interface Steadiness {
  /** Gust at the panel that just moves it, m/s, for each way; Infinity where no wind does, 0 where it falls by itself. */
  readonly gustMs: Readonly<Record<WindMove, number>>;
  /** The way that comes first. */
  readonly first: WindMove;
  /** Mean wind at 10 m, as a forecast states it, that the stand holds with the safety factors; m/s. */
  readonly forecastMs: number;
  readonly beaufort: BeaufortForce;
  /** Ballast that would hold `steadying.holdWindMs`, kg, half on the heel and half on the leg's foot; `null` where none does. */
  readonly ballastKg: number | null;
}

export const WIND_CAUTION =
  "Estimated for a stand that is only set down, from textbook coefficients with a safety factor of 1.5; corners, soft ground and a weak leg are not in it. " +
  "Stake the stand or weigh it down, bring the panel in above the wind named, and do not leave it out unwatched near that wind.";

/** What holds a stand against one way of moving, and what the wind's force on the panel counts against it. */
interface Hold {
  /** Without ballast, and what each kg of ballast adds: N for sliding, N mm for turning over. */
  readonly bare: number;
  readonly perKg: number;
  /** What a force of 1 N square to the panel uses up; 0 or less where it can't move the stand that way. */
  readonly lever: number;
}

const MOVES: readonly WindMove[] = [
  "slides forward",
  "slides back",
  "lifts at the back",
  "tips over its leg",
];

const holdsOf = (
  stand: StandGeometry,
  panel: StandPanel,
  friction: number,
  tiltDeg: number,
): Readonly<Record<WindMove, Hold>> => {
  const { foot, frame } = sideView(stand, panel, tiltDeg);
  const tilt = toRadians(tiltDeg);
  const ground = toRadians(stand.groundSlopeDeg);
  const opening = tilt - ground;
  const panelN = panel.massKg * GRAVITY;
  const centreBackMm = frame.reduce((sum, corner) => sum + corner.backMm, 0) / frame.length;
  const slide = (downhill: number, lever: number): Hold => {
    const grip = friction * Math.cos(ground) + downhill;
    return { bare: panelN * grip, perKg: GRAVITY * grip, lever };
  };
  // Of the ballast one half lies on the heel or the foot that the stand turns about, and holds nothing there.
  const perKg = (GRAVITY / 2) * foot.backMm;
  return {
    "slides forward": slide(-Math.sin(ground), Math.sin(opening) + friction * Math.cos(opening)),
    "slides back": slide(Math.sin(ground), Math.sin(opening) - friction * Math.cos(opening)),
    // Wind from behind: its centre of pressure lies a quarter of the length from the windward, upper edge
    // (EN 1991-1-4 figure 7.16). It turns the stand about its heel.
    "lifts at the back": { bare: panelN * centreBackMm, perKg, lever: 0.75 * panel.lengthMm },
    // Wind from the front turns it about the leg's foot; taken at the middle, which is further from the foot than the quarter.
    "tips over its leg": {
      bare: panelN * (foot.backMm - centreBackMm),
      perKg,
      lever: 0.5 * panel.lengthMm - foot.backMm * Math.cos(tilt) - foot.upMm * Math.sin(tilt),
    },
  };
};

/** Force at which what holds is used up; wind that can't work against it never does. */
const movingForce = ({ bare, perKg, lever }: Hold, ballastKg: number): number => {
  const holding = bare + perKg * ballastKg;
  if (holding <= 0) return 0;
  return lever <= 0 ? Number.POSITIVE_INFINITY : holding / lever;
};

/** The least ballast that holds a force, kg; `null` where no ballast does. */
const ballastAgainst = ({ bare, perKg, lever }: Hold, forceN: number): number | null => {
  const missing = Math.max(0, lever) * forceN - bare;
  if (missing <= 0) return 0;
  return perKg > 0 ? missing / perKg : null;
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
  { ballastKg, friction, terrain, holdWindMs }: Steadying,
  tiltDeg: number,
): Steadiness => {
  const holds = holdsOf(stand, panel, friction, tiltDeg);
  const { fromBehind, fromFront } = forceCoefficients(tiltDeg);
  const coefficients: Readonly<Record<WindMove, number>> = {
    "slides forward": fromBehind,
    "slides back": fromFront,
    "lifts at the back": fromBehind,
    "tips over its leg": fromFront,
  };
  const areaM2 = (panel.lengthMm * panel.widthMm) / 1e6;
  const gust = (move: WindMove): number =>
    windOfForce(movingForce(holds[move], ballastKg), areaM2, coefficients[move]);
  const gustMs = {
    "slides forward": gust("slides forward"),
    "slides back": gust("slides back"),
    "lifts at the back": gust("lifts at the back"),
    "tips over its leg": gust("tips over its leg"),
  };
  const first = MOVES.reduce((least, move) => (gustMs[move] < gustMs[least] ? move : least));
  const topM = (panel.lengthMm * Math.sin(toRadians(tiltDeg))) / 1000;
  const { gustFactor } = windProfile(terrain, topM);
  const safety = WIND_SAFETY_FACTOR / WEIGHT_SAFETY_FACTOR;
  const forecastMs = gustMs[first] / Math.sqrt(safety) / gustFactor;
  const pressure = safety * dynamicPressure(holdWindMs * gustFactor) * areaM2;
  const ballasts = MOVES.map((move) => ballastAgainst(holds[move], coefficients[move] * pressure));
  return {
    gustMs,
    first,
    forecastMs,
    beaufort: beaufortOf(forecastMs),
    ballastKg: ballasts.reduce((most, one) => (most === null || one === null ? null : Math.max(most, one))),
  };
};
