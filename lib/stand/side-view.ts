import { toRadians } from "../units/angle.ts";
import { pivotArm, type StandGeometry } from "./geometry.ts";

/** A point of the side view: mm level distance behind the heel, and mm above it. */
export interface SidePoint {
  readonly backMm: number;
  readonly upMm: number;
}

/** The outline of the panel in side view. */
export interface FrameSide {
  /** Length of the frame along the aim, lower edge to upper edge. */
  readonly lengthMm: number;
  /** Thickness of the frame, back face to glass. */
  readonly depthMm: number;
}

/** Everything a side view is drawn from. */
export interface SideView {
  readonly heel: SidePoint;
  readonly pivot: SidePoint;
  readonly foot: SidePoint;
  /** Corners of the frame: lower back, upper back, upper front, lower front. */
  readonly frame: readonly [SidePoint, SidePoint, SidePoint, SidePoint];
}

/**
 * The leg's foot: how far behind the heel along the ground, mm. `p / cos g` for a square leg, `r cos(g + slope + e) /
 * cos(slope)` for a plumb one, the strap's length for one held by a strap (letters as in `legMmOfTilt`).
 */
export const footDistanceMm = (stand: StandGeometry, tiltDeg: number): number => {
  const { hold, groundSlopeDeg } = stand;
  if (hold.kind === "strap") return hold.strapMm;
  if (hold.kind === "square") return stand.pivotMm / Math.cos(toRadians(tiltDeg - groundSlopeDeg));
  const { reachMm, liftDeg } = pivotArm(stand);
  return (reachMm * Math.cos(toRadians(tiltDeg + liftDeg))) / Math.cos(toRadians(groundSlopeDeg));
};

/** The points of the side view of a stand at a tilt that it can reach. */
export const sideView = (stand: StandGeometry, frame: FrameSide, tiltDeg: number): SideView => {
  const tilt = toRadians(tiltDeg);
  const ground = toRadians(stand.groundSlopeDeg);
  // From the heel: along the frame, and square to it from the foot of the heel spacer towards the glass.
  const point = (alongMm: number, outMm: number): SidePoint => ({
    backMm: alongMm * Math.cos(tilt) - outMm * Math.sin(tilt),
    upMm: alongMm * Math.sin(tilt) + outMm * Math.cos(tilt),
  });
  const { lengthMm, depthMm } = frame;
  const back = stand.heelSpacerMm;
  const footMm = footDistanceMm(stand, tiltDeg);
  return {
    heel: { backMm: 0, upMm: 0 },
    pivot: point(stand.pivotMm, back + stand.pivotInsetMm),
    foot: { backMm: footMm * Math.cos(ground), upMm: footMm * Math.sin(ground) },
    frame: [point(0, back), point(lengthMm, back), point(lengthMm, back + depthMm), point(0, back + depthMm)],
  };
};
