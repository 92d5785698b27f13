import type { PlaneColumns } from "../plane/columns.ts";
import type { SkyColumns } from "../sky/columns.ts";
import { tabledCurrentAt } from "./current-table.ts";
import { fillLinearPower, type LinearPanel } from "./linear-module.ts";
import type { DiodePanel } from "./panel-model.ts";
import { readSurface } from "./power-surface.ts";

/** A panel ready for the loop over a season, made once by a factory from what is known of it. */
export type PanelModel = LinearPanel | DiodePanel;

/** Fills `out` with the maximum power of a panel known by its curve, W for each row. Allocates nothing. */
const fillDiodePower = (
  panel: DiodePanel,
  { plane, absorbed }: PlaneColumns,
  { airC, windMs }: SkyColumns,
  out: Float64Array,
): Float64Array => {
  const { u0, u1 } = panel.heatLoss;
  const { wattsPerLight } = panel.surface;
  const { shareLeft } = panel;
  for (let row = 0; row < out.length; row += 1) {
    const light = absorbed[row];
    const cellC = airC[row] + plane[row] / (u0 + u1 * windMs[row]);
    out[row] = shareLeft * light * readSurface(wattsPerLight, light, cellC);
  }
  return out;
};

/**
 * Power of a panel through a season, at its maximum-power point, after its constant losses.
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
  return model.kind === "linear"
    ? fillLinearPower(model, plane, sky, out)
    : fillDiodePower(model, plane, sky, out);
};

/**
 * Current of a panel held at a voltage, A, after its constant losses: what a controller without power tracking draws.
 *
 * @param panel A panel known by its curve.
 * @param volts At the panel's terminals.
 * @param absorbedWm2 Light that passes the glass, W/m2.
 * @param cellC Cell temperature, degC.
 * @returns A; negative above the open-circuit voltage, 0 in the dark; NaN in, NaN out.
 */
export const panelCurrentA = (panel: DiodePanel, volts: number, absorbedWm2: number, cellC: number): number =>
  panel.shareLeft * tabledCurrentAt(panel.currents, volts, absorbedWm2, cellC);

/** Maximum power of a panel at one moment, W, after its constant losses, and the voltage it stands at, V. */
export const panelMaxPower = (
  panel: DiodePanel,
  absorbedWm2: number,
  cellC: number,
): { readonly watts: number; readonly volts: number } => ({
  watts: panel.shareLeft * absorbedWm2 * readSurface(panel.surface.wattsPerLight, absorbedWm2, cellC),
  volts: readSurface(panel.surface.volts, absorbedWm2, cellC),
});

/**
 * Cell temperature through a season, degC for each row (Faiman).
 *
 * @param out Column to write into; made afresh when left out.
 */
export const cellTemperature = (
  model: PanelModel,
  { plane }: PlaneColumns,
  { airC, windMs }: SkyColumns,
  out: Float64Array = new Float64Array(plane.length),
): Float64Array => {
  const { u0, u1 } = model.heatLoss;
  for (let row = 0; row < out.length; row += 1) {
    out[row] = airC[row] + plane[row] / (u0 + u1 * windMs[row]);
  }
  return out;
};
