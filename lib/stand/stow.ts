import type { Stand } from "../plan/stand.ts";
import type { Problem } from "../units/problem.ts";

/** What the frame has room for. Leg lengths run from pivot hole to foot, mm. */
export interface Stowing {
  /** The longest leg that folds into the frame while it hangs on its pivot. */
  readonly foldedMm: number;
  /** The longest leg that lies loose inside the frame, taken off its pivot. */
  readonly looseMm: number;
  /** The limit in force: the plan's own `stowMm`, else the folded one. */
  readonly limitMm: number;
  /** Legs that stack one on another in the depth behind the glass, at each side of the frame. */
  readonly layers: number;
}

/**
 * What stows inside the frame of a panel of that length (along the aim, mm). A leg folds towards whichever end of
 * the frame is further from its pivot; each pair of legs takes one layer of the depth at each side.
 */
export const stowing = (stand: Stand, panelLengthMm: number): Stowing => {
  const { frame, cutting, pivotMm } = stand;
  const foldedMm = Math.max(0, Math.max(pivotMm, panelLengthMm - pivotMm) - frame.wallMm);
  const looseMm = Math.max(0, panelLengthMm - 2 * frame.wallMm - cutting.holeMarginMm);
  const depthMm = frame.depthMm - frame.laminateMm;
  return {
    foldedMm,
    looseMm,
    limitMm: stand.stowMm ?? foldedMm,
    // A hair over, so that 24 mm of depth holds three layers of 8 mm in spite of rounding.
    layers: Math.floor(depthMm / cutting.legThicknessMm + 1e-9),
  };
};

/** Why a leg does not stow, and what would; `null` when it does. */
export const stowProblem = (path: string, legMm: number, { limitMm, looseMm }: Stowing): Problem | null =>
  legMm <= limitMm
    ? null
    : {
        path,
        value: `${legMm.toFixed(1)} mm`,
        allowed: `must be at most ${limitMm.toFixed(0)} mm to stow inside the frame`,
        hint:
          legMm <= looseMm
            ? `taken off its pivot it lies inside up to ${looseMm.toFixed(0)} mm`
            : "it would stick out of the frame; a pivot nearer to the middle needs shorter legs for the same tilt",
      };
