/** The light on one tilted plane: incidence, sky to plane, ground, glass. Tilt up from horizontal, bearing from true north. */
export type { PlaneColumns } from "./columns.ts";
export { type DomeColumns, domeColumns, SKY_MODELS } from "./dome-columns.ts";
export { CLEAN_GLASS_ANGULAR_LOSS, type Glass, martinRuizGlass } from "./glass.ts";
export { hayDavies } from "./hay-davies.ts";
export {
  behindSkyline,
  type HorizonPoint,
  type Shading,
  type Skyline,
  skylineOf,
  sunClear,
} from "./horizon.ts";
export { cosIncidence, groundView, incidenceDeg, skyView } from "./incidence.ts";
export { isotropic } from "./isotropic.ts";
export { type LightOfMoment, lightOnPlane, type PlaneLight } from "./light-on-plane.ts";
export {
  hourOfDayDiffuse,
  hourOfDayGlobal,
  type MeanDay,
  meanBeamRatio,
  meanDayOnPlane,
} from "./mean-day.ts";
export { circumsolarShare, horizonShare, perez, skyBrightness, skyClearness } from "./perez.ts";
export { emptyPlaneColumns, planeColumns } from "./plane-columns.ts";
export type { SkyModel, SkyMoment, SkySplit } from "./sky-model.ts";
