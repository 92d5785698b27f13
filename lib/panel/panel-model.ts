import { HEAT_LOSS, type HeatLoss, heatLossOfNoct, type Mount } from "./cell-temperature.ts";
import type { LinearPanel } from "./linear-module.ts";
import { type ConstantLosses, NO_LOSSES, shareLeft } from "./losses.ts";

/** Temperature coefficient of the power of a crystalline silicon panel, 1/K (common practice, no source). */
export const CUSTOMARY_POWER_PER_K = -0.004;

/** What the factories need beside the module itself. */
export interface PanelOptions {
  /** How the panel is mounted [open-rack]. */
  readonly mount?: Mount;
  /** Nominal operating cell temperature of the nameplate, degC; on an open rack it replaces the mean heat loss. */
  readonly noctC?: number;
  /** Constant losses [none]. */
  readonly losses?: ConstantLosses;
}

/** The heat loss of a panel: its mount's, or on an open rack the one its own NOCT asks for. */
export const heatLossOf = ({ mount = "open-rack", noctC }: PanelOptions): HeatLoss =>
  mount === "open-rack" && noctC !== undefined ? heatLossOfNoct(noctC) : HEAT_LOSS[mount];

/**
 * A panel from its rated power and temperature coefficient.
 *
 * @param ratedW Rated power at standard test conditions, W, above 0.
 * @param powerPerK Temperature coefficient of the power, 1/K, -0.02 to 0 [-0.004].
 * @throws RangeError outside those ranges.
 * @example linearPanel(60, -0.004, { mount: "flat-on-roof" })
 */
export const linearPanel = (
  ratedW: number,
  powerPerK: number = CUSTOMARY_POWER_PER_K,
  options: PanelOptions = {},
): LinearPanel => {
  if (!(ratedW > 0 && Number.isFinite(ratedW))) {
    throw new RangeError(`linearPanel: expected rated power above 0 W, received ${ratedW}`);
  }
  if (!(powerPerK >= -0.02 && powerPerK <= 0)) {
    throw new RangeError(
      `linearPanel: expected a temperature coefficient of -0.02 to 0 per K, received ${powerPerK}`,
    );
  }
  return {
    kind: "linear",
    ratedW,
    powerPerK,
    heatLoss: heatLossOf(options),
    shareLeft: shareLeft(options.losses ?? NO_LOSSES),
  };
};
