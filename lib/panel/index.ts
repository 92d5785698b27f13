/** Watts out of the light on a panel: cell temperature, current-voltage curve, losses, power. */
export {
  faimanCellC,
  HEAT_LOSS,
  type HeatLoss,
  heatLossOfNoct,
  type PanelMount,
  rossCellC,
  rossCoefficient,
} from "./cell-temperature.ts";
export { type CurrentTable, currentTable, tabledCurrentAt } from "./current-table.ts";
export { curvePointsOf } from "./curve-points.ts";
export { type CurvePoints, type DiodeFit, fitDiode } from "./desoto-fit.ts";
export { curveAt, type DiodeReference } from "./diode-conditions.ts";
export { lambertW0 } from "./lambert-w.ts";
export { type LinearPanel, linearPowerW, STC } from "./linear-module.ts";
export { type ConstantLosses, NO_LOSSES, shareLeft } from "./losses.ts";
export {
  type DiodePanel,
  diodePanel,
  linearPanel,
  type PanelOptions,
} from "./panel-model.ts";
export {
  cellTemperature,
  type PanelModel,
  panelCurrentA,
  panelMaxPower,
  panelPower,
} from "./panel-power.ts";
export { type PowerSurface, powerSurface, readSurface } from "./power-surface.ts";
export {
  currentAt,
  type DiodeCurve,
  maxPowerPoint,
  type OperatingPoint,
  openCircuitV,
  shortCircuitA,
} from "./single-diode.ts";
export {
  BYPASS_DROP_V,
  type CellGroup,
  highestPeak,
  type LitCells,
  powerPeaks,
  stuckPeak,
  type UnevenPanel,
  unevenCurrentAt,
  unevenOpenCircuitV,
  unevenVoltageAt,
} from "./uneven-light.ts";
