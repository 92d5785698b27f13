import { toDegrees, toRadians } from "../units/angle.ts";

/**
 * The stand in side view, in the upright plane along the aim. The panel rests on its heel (lower back edge)
 * and leans on a leg. The frame's own axes: "along" runs up the back face from the lower edge, "inset" runs
 * square to it, from the back face towards the glass. Millimetres and degrees.
 */
export interface StandGeometry {
  readonly hold: LegHold;
  /** From the frame's lower edge to the centre of the pivot hole, along the frame. Above 0. */
  readonly pivotMm: number;
  /** From the frame's back face to the pivot hole, towards the glass. Negative: the pivot stands behind, on a spacer. */
  readonly pivotInsetMm: number;
  /** Thickness of a spacer under the lower edge: what lifts the heel off the ground. 0 or more. */
  readonly heelSpacerMm: number;
  /** Slope of the ground along the aim. Positive: it falls away towards where the panel faces, and adds to the tilt. */
  readonly groundSlopeDeg: number;
}

/** How the leg is kept at its angle. */
export type LegHold =
  /** Folds out until it stands square to the panel's back. */
  | { readonly kind: "square" }
  /** Swings free and stands plumb. */
  | { readonly kind: "plumb" }
  /** A strap on the ground keeps its foot at this distance from the heel. */
  | { readonly kind: "strap"; readonly strapMm: number };

/** The pivot as seen from the heel: how far, and how many degrees above the line of the frame. */
export interface PivotArm {
  readonly reachMm: number;
  readonly liftDeg: number;
}

/** Distance from heel to pivot hole, and the angle between that line and the frame's back (positive towards the glass). */
export const pivotArm = (stand: StandGeometry): PivotArm => {
  const standOff = stand.pivotInsetMm + stand.heelSpacerMm;
  return {
    reachMm: Math.hypot(stand.pivotMm, standOff),
    liftDeg: toDegrees(Math.atan2(standOff, stand.pivotMm)),
  };
};

/**
 * Leg length (pivot-hole centre to foot, mm) that gives a tilt (degrees up from horizontal). No check: a tilt
 * out of reach gives a length without meaning, NaN gives NaN. {@link legOfTilt} checks.
 *
 * With g the angle between frame and ground (tilt - slope), r and e the pivot's reach and lift:
 * square `r (cos e tan g + sin e)`; plumb `r sin(g + e) / cos(slope)`;
 * strap s, by the law of cosines, `sqrt(r^2 + s^2 - 2 r s cos(g + e))`.
 *
 * @example legMmOfTilt({ hold: { kind: "square" }, pivotMm: 700, pivotInsetMm: 0, heelSpacerMm: 0, groundSlopeDeg: 0 }, 45) // 700
 */
export const legMmOfTilt = (stand: StandGeometry, tiltDeg: number): number => {
  const { hold, groundSlopeDeg } = stand;
  const opening = toRadians(tiltDeg - groundSlopeDeg);
  if (hold.kind === "square") {
    return stand.pivotMm * Math.tan(opening) + stand.pivotInsetMm + stand.heelSpacerMm;
  }
  const { reachMm, liftDeg } = pivotArm(stand);
  const corner = opening + toRadians(liftDeg);
  if (hold.kind === "plumb") return (reachMm * Math.sin(corner)) / Math.cos(toRadians(groundSlopeDeg));
  // (r - s)^2 + 4 r s sin^2(corner / 2) is the law of cosines without its cancellation at small angles.
  const { strapMm } = hold;
  return Math.hypot(reachMm - strapMm, 2 * Math.sqrt(reachMm * strapMm) * Math.sin(corner / 2));
};

/**
 * Tilt (degrees up from horizontal) that a leg length (mm) gives: the inverse of {@link legMmOfTilt}.
 * NaN when no triangle closes; {@link tiltOfLeg} says why.
 */
export const tiltDegOfLeg = (stand: StandGeometry, legMm: number): number => {
  const { hold, groundSlopeDeg } = stand;
  if (hold.kind === "square") {
    const rise = legMm - stand.pivotInsetMm - stand.heelSpacerMm;
    return groundSlopeDeg + toDegrees(Math.atan2(rise, stand.pivotMm));
  }
  const { reachMm, liftDeg } = pivotArm(stand);
  if (hold.kind === "plumb") {
    const sine = (legMm * Math.cos(toRadians(groundSlopeDeg))) / reachMm;
    return groundSlopeDeg - liftDeg + toDegrees(Math.asin(atMostOne(sine)));
  }
  const { strapMm } = hold;
  const squaredHalfSine = (legMm ** 2 - (reachMm - strapMm) ** 2) / (4 * reachMm * strapMm);
  return groundSlopeDeg - liftDeg + toDegrees(2 * Math.asin(Math.sqrt(atMostOne(squaredHalfSine))));
};

/** Rounding may carry a closed triangle's sine a hair past 1; a triangle that is truly open stays NaN. */
const atMostOne = (value: number): number => (value > 1 && value < 1 + 1e-12 ? 1 : value);
