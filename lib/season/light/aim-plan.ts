import type { BranchLight } from "../../circuit/branches.ts";
import type { HeatLoss } from "../../panel/cell-temperature.ts";
import { CLEAN_GLASS_ANGULAR_LOSS, martinRuizGlass } from "../../plane/glass.ts";
import { emptyPlaneColumns, planeColumns } from "../../plane/plane-columns.ts";
import type { SunColumns } from "../../sun/columns.ts";
import type { Aim } from "../../units/angle.ts";
import type { ReadySky } from "./skies.ts";

/** Where a panel points through a season: one aim for good, or one of several at each row. */
export interface AimPlan {
  readonly aims: readonly Aim[];
  /** Index of the aim in use at each row; `null` when there is only one. */
  readonly ofRow: Uint8Array | null;
}

/** One aim for the whole season. */
export const heldAim = (aim: Aim): AimPlan => ({ aims: [aim], ofRow: null });

/** One of several aims for each whole day. */
export const aimByDay = (sun: SunColumns, aims: readonly Aim[], ofDay: Uint8Array): AimPlan => ({
  aims,
  ofRow: Uint8Array.from(sun.day, (day) => ofDay[day]),
});

/** Room for the light on a panel, as a circuit takes it. */
export const emptyBranchLight = (rows: number): BranchLight => ({
  absorbed: new Float64Array(rows),
  cellC: new Float64Array(rows),
});

/** Fills the light on a panel, and how warm its cells are, under a sky. */
export type FillLight = (sky: ReadySky, plan: AimPlan, heatLoss: HeatLoss, out: BranchLight) => void;

/**
 * Makes the function that lays light on panels that may be moved. It keeps its own work columns; give each concurrent
 * user one of its own.
 */
export const lightOver = (sun: SunColumns): FillLight => {
  const glass = martinRuizGlass(CLEAN_GLASS_ANGULAR_LOSS);
  const light = emptyPlaneColumns(sun.length);
  return ({ sky, dome }, { aims, ofRow }, { u0, u1 }, { absorbed, cellC }) => {
    const { airC, windMs } = sky;
    aims.forEach((aim, index) => {
      planeColumns(sun, dome, aim, glass, light);
      for (let row = 0; row < sun.length; row += 1) {
        if (ofRow !== null && ofRow[row] !== index) continue;
        absorbed[row] = light.absorbed[row];
        cellC[row] = airC[row] + light.plane[row] / (u0 + u1 * windMs[row]);
      }
    });
  };
};
