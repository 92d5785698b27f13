export type { SeasonDay, SunColumns } from "./columns.ts";
export { directionAtHourAngle, geometricDayHours, sunsetHourAngleDeg } from "./hour-angle.ts";
export { compassBearing, type MagneticDeclination, magneticDeclination, trueBearing } from "./magnetic.ts";
export {
  cooperDeclinationDeg,
  dayAngle,
  equationOfTimeMinutes,
  SOLAR_CONSTANT,
  spencerDeclinationDeg,
  sunDistanceFactor,
} from "./orbit.ts";
export { sunVector } from "./position.ts";
export { type DateSpan, type SolarDay, type SunPlace, solarDays } from "./solar-day.ts";
export { DEFAULT_STEP_MINUTES, sunColumns } from "./sun-columns.ts";
