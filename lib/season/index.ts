/** season: days x settings: yields under clear and expected skies, and what is made of them. */

export { candidateAims } from "./aiming/candidate-aims.ts";
export { type AimedPart, type DayRoutine, type Reaim, type ReaimPeriod, reaim } from "./aiming/reaim.ts";
export { type ClockStretch, clockStretches, noonClocks } from "./aiming/walk-clock.ts";
export {
  type BatteryAnswer,
  batteryOfPlan,
  type SkyUncertainty,
  smallestPanelsOfPlan,
  type WorthOfPlan,
  worthOfPlan,
} from "./battery/battery-answer.ts";
export { type SeasonOutcome, SHORT_DAY_WH } from "./battery/battery-outcome.ts";
export {
  type BatteryOptions,
  type BatterySeason,
  batterySeasons,
  meanOutcome,
  type OutcomeNumber,
  quantileOutcome,
  type StateBand,
} from "./battery/battery-season.ts";
export { branchesOf, type PlacedPanels, type SetUp } from "./battery/set-up.ts";
export { type Choices, choicesOf, type Remedy } from "./battery/set-ups.ts";
export { fewestShortDaySets, MOST_SHORT_DAY_LEGS } from "./battery/short-day-sets.ts";
export { type SizingRule, sizingRule } from "./battery/sizing-rule.ts";
export { type SmallestPanel, smallestSecondPanel } from "./battery/smallest-panel.ts";
export { type CableChoice, type RunAnswer, type WiringAnswer, wiringOf } from "./battery/wiring.ts";
export { type Living, type WorthAnswer, type WorthRow, worthOf } from "./battery/worth.ts";
export { type BestSet, bestSet, type DayGroups } from "./legs/best-set.ts";
export { chosenLegs, legsAsSettings } from "./legs/chosen-legs.ts";
export {
  bestLegSets,
  ENERGY_OBJECTIVES,
  type EnergyObjective,
  LEG_OBJECTIVES,
  type LegDays,
  type LegObjective,
  type LegSetAnswer,
  MOST_LEGS,
} from "./legs/leg-set.ts";
export {
  bestLegsOfPlan,
  type LegsAnswer,
  type LegsQuestion,
  legsAnswer,
  type SettingFacts,
  settingFacts,
} from "./legs/legs-answer.ts";
export { type RuleOfThumb, rulesOfThumb } from "./legs/rules-of-thumb.ts";
export { type StandSeason, standSeason } from "./legs/stand-season.ts";
export {
  bestCalendars,
  type Calendar,
  type Stay,
  type Swap,
  type SwapAnswer,
  swapCalendar,
} from "./legs/swap-calendar.ts";
export { type SwapRow, swapRows } from "./legs/swap-rows.ts";
export { type SwapsAnswer, type SwapsQuestion, swapsAnswer } from "./legs/swaps-answer.ts";
export {
  type AimEnergy,
  aimEnergyOver,
  bestTilts,
  finerLadder,
  type TiltLadder,
  tiltLadder,
  tiltsEvery,
} from "./legs/tilt-ladder.ts";
export {
  BEARING_ERRORS_DEG,
  type TiltBand,
  type ToleranceCost,
  tiltBands,
  toleranceOf,
} from "./legs/tolerance.ts";
export { type AimPlan, aimByDay, heldAim } from "./light/aim-plan.ts";
export type { DayBand } from "./light/bands.ts";
export { type DayCurve, type DayCurves, dayCurves } from "./light/day-curves.ts";
export { type DayEnergies, dayEnergiesOver } from "./light/day-energy.ts";
export { type DayStretch, totalWh } from "./light/day-sums.ts";
export { type PanelUnit, panelUnits } from "./light/panel-unit.ts";
export { type Period, periodsOf } from "./light/periods.ts";
export {
  type ClimatePlan,
  type PlacedPlan,
  placedPlan,
  type SeasonCloud,
  seasonCloud,
} from "./light/season-cloud.ts";
export { seasonClearSky, seasonSun } from "./light/season-skies.ts";
export {
  bestEachDayWh,
  bestSingle,
  judgedWh,
  type SeasonYield,
  type SettingYield,
  seasonYield,
} from "./light/season-yield.ts";
export {
  drawSeasons,
  seasonBands,
  seasonTotals,
  sequenceDays,
  type TotalBand,
  totalBand,
} from "./light/sequences.ts";
export { facingOf, facingsOf, legSettings, type Setting, settingsOf } from "./light/settings.ts";
export { type ReadySky, readySkies, type SeasonSkies, type WeightedSky } from "./light/skies.ts";
export { type PlanSkies, skiesOfPlan } from "./light/skies-of-plan.ts";
export { type CloudRung, type SkySource, seasonsOf, skySource } from "./light/sky-source.ts";
export { type FieldSheet, fieldSheet, type Turning } from "./sheet/field-sheet.ts";
export type { MonthExpectation } from "./sheet/month-expectations.ts";
