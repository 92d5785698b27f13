/** season: days x settings: yields under clear and expected skies, and what is made of them. */

export { type AimPlan, aimByDay, heldAim } from "./aim-plan.ts";
export type { DayBand } from "./bands.ts";
export {
  type BatteryAnswer,
  batteryOfPlan,
  type SkyDoubt,
  smallestPanelsOfPlan,
  type WorthOfPlan,
  worthOfPlan,
} from "./battery-answer.ts";
export { type SeasonOutcome, SHORT_DAY_WH } from "./battery-outcome.ts";
export {
  type BatteryOptions,
  type BatterySeason,
  batterySeasons,
  meanOutcome,
  type OutcomeNumber,
  quantileOutcome,
  type StateBand,
} from "./battery-season.ts";
export { type BestSet, bestSet, type DayGroups } from "./best-set.ts";
export { candidateAims } from "./candidate-aims.ts";
export { chosenLegs, legsAsSettings } from "./chosen-legs.ts";
export { type DayCurve, type DayCurves, dayCurves } from "./day-curves.ts";
export { type DayEnergies, dayEnergiesOver } from "./day-energy.ts";
export { type DayStretch, totalWh } from "./day-sums.ts";
export {
  bestLegSets,
  ENERGY_OBJECTIVES,
  type EnergyObjective,
  LEG_OBJECTIVES,
  type LegDays,
  type LegObjective,
  type LegSetAnswer,
  MOST_LEGS,
} from "./leg-set.ts";
export {
  bestLegsOfPlan,
  type LegsAnswer,
  type LegsQuestion,
  legsAnswer,
  type SettingFacts,
  settingFacts,
} from "./legs-answer.ts";
export { type PanelUnit, panelUnits } from "./panel-unit.ts";
export { type Period, periodsOf } from "./periods.ts";
export { type AimedPart, type DayRoutine, type Reaim, type ReaimPeriod, reaim } from "./reaim.ts";
export { type RuleOfThumb, rulesOfThumb } from "./rules-of-thumb.ts";
export {
  type ClimatePlan,
  type PlacedPlan,
  placedPlan,
  type SeasonCloud,
  seasonCloud,
} from "./season-cloud.ts";
export { seasonClearSky, seasonSun } from "./season-skies.ts";
export {
  bestEachDayWh,
  bestSingle,
  judgedWh,
  type SeasonYield,
  type SettingYield,
  seasonYield,
} from "./season-yield.ts";
export {
  drawSeasons,
  seasonBands,
  seasonTotals,
  sequenceDays,
  type TotalBand,
  totalBand,
} from "./sequences.ts";
export { branchesOf, type PlacedPanels, type SetUp } from "./set-up.ts";
export { type Choices, choicesOf, type Remedy } from "./set-ups.ts";
export { facingOf, type Setting, settingsOf } from "./settings.ts";
export { fewestShortDaySets, MOST_SHORT_DAY_LEGS } from "./short-day-sets.ts";
export { type SizingRule, sizingRule } from "./sizing-rule.ts";
export { type ReadySky, readySkies, type SeasonSkies, type WeightedSky } from "./skies.ts";
export { type PlanSkies, skiesOfPlan } from "./skies-of-plan.ts";
export { type CloudRung, type SkySource, seasonsOf, skySource } from "./sky-source.ts";
export { type SmallestPanel, smallestSecondPanel } from "./smallest-panel.ts";
export { type StandSeason, standSeason } from "./stand-season.ts";
export {
  bestCalendars,
  type Calendar,
  type Stay,
  type Swap,
  type SwapAnswer,
  swapCalendar,
} from "./swap-calendar.ts";
export { type SwapsAnswer, type SwapsQuestion, swapsAnswer } from "./swaps-answer.ts";
export {
  type AimEnergy,
  aimEnergyOver,
  bestTilts,
  finerLadder,
  type TiltLadder,
  tiltLadder,
  tiltsEvery,
} from "./tilt-ladder.ts";
export {
  BEARING_ERRORS_DEG,
  type TiltBand,
  type ToleranceCost,
  tiltBands,
  toleranceOf,
} from "./tolerance.ts";
export { type ClockStretch, clockStretches, noonClocks } from "./walk-clock.ts";
export { type CableChoice, type RunAnswer, type WiringAnswer, wiringOf } from "./wiring.ts";
export { type BreakEven, type Living, type WorthAnswer, type WorthRow, worthOf } from "./worth.ts";
