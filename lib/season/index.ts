/** season: days x settings: yields under clear and expected skies, and what is made of them. */
export type { DayBand } from "./bands.ts";
export { candidateAims } from "./candidate-aims.ts";
export { type DayCurve, type DayCurves, dayCurves } from "./day-curves.ts";
export { type DayEnergies, dayEnergiesOver } from "./day-energy.ts";
export { type PanelUnit, panelUnits } from "./panel-unit.ts";
export { type AimedPart, type DayRoutine, type Reaim, type ReaimPeriod, reaim } from "./reaim.ts";
export { seasonClearSky, seasonSun } from "./season-skies.ts";
export {
  bestEachDayWh,
  bestSingle,
  judgedWh,
  type SeasonYield,
  type SettingYield,
  seasonYield,
  totalWh,
} from "./season-yield.ts";
export { equatorwards, facingOf, type Setting, settingsOf } from "./settings.ts";
export { type ReadySky, readySkies, type SeasonSkies, type WeightedSky } from "./skies.ts";
export { type PlanSkies, skiesOfPlan } from "./skies-of-plan.ts";
export { type ClockStretch, clockStretches, noonClocks } from "./walk-clock.ts";
