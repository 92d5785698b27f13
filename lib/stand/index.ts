export {
  latitudeTilt,
  lorenzoRelativeLight,
  lorenzoTilt,
  noonTilt,
  summerTilt,
  winterTilt,
} from "./angle-rules.ts";
export type { BeaufortForce } from "./beaufort.ts";
export { BEAUFORT, beaufortOf } from "./beaufort.ts";
export type { Piece, Trim } from "./cut.ts";
export { pieceOfLeg, trimOf } from "./cut.ts";
export { type CuttingSheet, cuttingSheet, type SheetLeg } from "./cutting-sheet.ts";
export type { LegHold, StandGeometry } from "./geometry.ts";
export { legMmOfTilt, tiltDegOfLeg } from "./geometry.ts";
export type { WindProfile } from "./gust.ts";
export { dynamicPressure, windOfForce, windProfile } from "./gust.ts";
export type { LegFit, LegReach, LegSetting } from "./leg.ts";
export { degPerMm, legOfTilt, legReach, tiltOfLeg } from "./leg.ts";
export type { ReadFrom, TiltReading } from "./reading.ts";
export { readingOfTilt, tiltOfReading, tiltWords } from "./reading.ts";
export { sawableLegs } from "./sawable.ts";
export type { NamedLeg } from "./settings.ts";
export { flatTiltDeg, namedLegs, standGeometry } from "./settings.ts";
export type { FrameSide, SidePoint, SideView } from "./side-view.ts";
export { footDistanceMm, sideView } from "./side-view.ts";
export { type StandPanels, standPanels } from "./stand-panel.ts";
export type { StandPanel, Steadiness, WindMove } from "./steadiness.ts";
export { forceCoefficients, steadiness, WIND_CAUTION } from "./steadiness.ts";
export type { CutBar, CuttingPlan, PieceDemand } from "./stock.ts";
export { cutStock } from "./stock.ts";
export type { Stowing } from "./stow.ts";
export { stowing, stowProblem } from "./stow.ts";
