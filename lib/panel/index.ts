/** Watts out of the light on a panel: cell temperature, losses, power. */
export {
  faimanCellC,
  HEAT_LOSS,
  type HeatLoss,
  heatLossOfNoct,
  type Mount,
  rossCellC,
  rossCoefficient,
} from "./cell-temperature.ts";
export { type LinearPanel, linearPowerW, STC } from "./linear-module.ts";
export { type ConstantLosses, CUSTOMARY_LOSSES, NO_LOSSES, shareLeft } from "./losses.ts";
export { CUSTOMARY_POWER_PER_K, linearPanel, type PanelOptions } from "./panel-model.ts";
export { type PanelModel, panelPower } from "./panel-power.ts";
