export type { LegHold, StandGeometry } from "./geometry.ts";
export { legMmOfTilt, tiltDegOfLeg } from "./geometry.ts";
export type { LegFit, LegReach, LegSetting } from "./leg.ts";
export { degPerMm, legOfTilt, legReach, tiltOfLeg } from "./leg.ts";
export type { ReadFrom, TiltReading } from "./reading.ts";
export { readingOfTilt, tiltOfReading, tiltWords } from "./reading.ts";
export type { FrameSide, SidePoint, SideView } from "./side-view.ts";
export { footDistanceMm, sideView } from "./side-view.ts";
