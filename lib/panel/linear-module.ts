import type { PlaneColumns } from "../plane/columns.ts";
import type { SkyColumns } from "../sky/columns.ts";
import type { HeatLoss } from "./cell-temperature.ts";

/** Light and cell temperature at which a nameplate is stated: IEC 60904-3 standard test conditions. */
export const STC = { irradiance: 1000, cellC: 25 } as const;

/** A panel known by its rated power and temperature coefficient alone. */
export interface LinearPanel {
  readonly kind: "linear";
  /** Rated power at standard test conditions, W. */
  readonly ratedW: number;
  /** Temperature coefficient of the power, 1/K: negative (-0.004 is -0.4 %/K). */
  readonly powerPerK: number;
  readonly heatLoss: HeatLoss;
  /** Share of the power left after constant losses, 0 to 1. */
  readonly shareLeft: number;
}

/**
 * Power of a panel that follows the light straight and the cell temperature straight, not below 0.
 *
 * rated x light / 1000 x (1 + coefficient x (cell - 25)): the usual linear form (Duffie & Beckman, section 23.5). Reads
 * about 6 % high in weak light, where a real panel loses efficiency; the current-voltage model knows that.
 *
 * @param panel The panel, before constant losses.
 * @param absorbedWm2 Light that passes the glass, W/m2.
 * @param cellC Cell temperature, degC.
 * @returns W; NaN in, NaN out.
 * @example linearPowerW({ ratedW: 60, powerPerK: -0.004 }, 1000, 45) // 55.2
 */
export const linearPowerW = (
  { ratedW, powerPerK }: Pick<LinearPanel, "ratedW" | "powerPerK">,
  absorbedWm2: number,
  cellC: number,
): number => Math.max(0, ratedW * (absorbedWm2 / STC.irradiance) * (1 + powerPerK * (cellC - STC.cellC)));

/** Fills `out` with the power of a linear panel, W for each row. Allocates nothing. */
export const fillLinearPower = (
  panel: LinearPanel,
  { plane, absorbed }: PlaneColumns,
  { airC, windMs }: SkyColumns,
  out: Float64Array,
): Float64Array => {
  const { u0, u1 } = panel.heatLoss;
  const { powerPerK } = panel;
  const wattsPerLight = (panel.ratedW * panel.shareLeft) / STC.irradiance;
  for (let row = 0; row < out.length; row += 1) {
    const aboveStc = airC[row] + plane[row] / (u0 + u1 * windMs[row]) - STC.cellC;
    out[row] = Math.max(0, wattsPerLight * absorbed[row] * (1 + powerPerK * aboveStc));
  }
  return out;
};
