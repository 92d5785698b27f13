import type { PlaneColumns } from "../plane/columns.ts";
import type { SkyColumns } from "../sky/columns.ts";
import { fillLinearPower, type LinearPanel } from "./linear-module.ts";

/** A panel ready for the loop over a season, made once by a factory from what is known of it. */
export type PanelModel = LinearPanel;

/**
 * Power of a panel through a season, at its maximum-power point.
 *
 * @param model The panel.
 * @param plane Light on it, before and after the glass.
 * @param sky Air temperature and wind of the same rows.
 * @param out Column to write into; made afresh when left out.
 * @returns `out`: W for each row, 0 or more; a row with NaN in it stays NaN.
 * @throws RangeError when the lengths differ.
 */
export const panelPower = (
  model: PanelModel,
  plane: PlaneColumns,
  sky: SkyColumns,
  out: Float64Array = new Float64Array(plane.length),
): Float64Array => {
  if (sky.length !== plane.length || out.length !== plane.length) {
    throw new RangeError(
      `panelPower: expected sky and output of ${plane.length} rows, received ${sky.length} and ${out.length}`,
    );
  }
  return fillLinearPower(model, plane, sky, out);
};
