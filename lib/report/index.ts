/** report: tables, charts and words made from a season's answers. */
export {
  type AimCardLine,
  aimCard,
  type CardPlace,
  cardPlace,
  dialBearings,
  routineOf,
  walkWords,
} from "./aim-card.ts";
export { aimGainChart } from "./aim-gain-chart.ts";
export { aimsHeadline } from "./aims-headline.ts";
export { aimsSummary } from "./aims-summary.ts";
export { type AimRow, aimsCsv, aimsTable } from "./aims-table.ts";
export { allowanceChart } from "./allowance-chart.ts";
export { type BatteryRow, batteryTable } from "./battery-table.ts";
export { batterySummary, doubtWords, ruleWords, standUseWords, wiringSummary } from "./battery-words.ts";
export { casesChart } from "./cases-chart.ts";
export { chargeChart } from "./charge-chart.ts";
export type { ChartFrame } from "./chart-base.ts";
export {
  type CheckedCase,
  type CheckedQuantity,
  type CheckedRoom,
  type Checks,
  checksHeadline,
  type MeasuredPlane,
  type MeasuredStation,
  type ModelError,
  shareUsed,
} from "./checks.ts";
export { casesTable, comparisonsTable, measuredTable } from "./checks-tables.ts";
export { circuitCautions, secondPanelCautions } from "./circuit-cautions.ts";
export { controllerHeadline, wiringHeadline, worthHeadline } from "./circuit-headlines.ts";
export { circuitModelWords } from "./circuit-models.ts";
export {
  type ControllerGain,
  controllerGainChart,
  controllerGains,
  controllerGainTable,
} from "./controller-gain.ts";
export { type CurveToShow, curveChart } from "./curve-chart.ts";
export { type CurveRow, curveTable } from "./curve-table.ts";
export { cuttingSheetPage } from "./cutting-sheet-page.ts";
export { clockText, type DayQuantity, dayChart } from "./day-chart.ts";
export { type DayRow, dayTable } from "./day-table.ts";
export { dropChart } from "./drop-chart.ts";
export { type Headline, seasonHeadline } from "./headline.ts";
export { type LegSetRow, legSetsTable } from "./leg-sets-table.ts";
export { legsHeadline } from "./legs-headline.ts";
export { CUTTING_CAUTION, legsSummary, legWords, setSentences } from "./legs-summary.ts";
export { type LegRow, legsTable } from "./legs-table.ts";
export { loadsTable } from "./loads-table.ts";
export { measuredDaysChart } from "./measured-days-chart.ts";
export { modelErrorsChart } from "./model-errors-chart.ts";
export { modelWords } from "./model-words.ts";
export { piecesTable } from "./pieces-table.ts";
export { compassWords, noonShadowWords, type SunStand, sunwardWords } from "./plain-directions.ts";
export { rulesTable } from "./rules-table.ts";
export { seasonChart } from "./season-chart.ts";
export { type SeasonRow, seasonCsv, seasonRows, seasonTable } from "./season-table.ts";
export { type SettingStyle, settingStyles } from "./setting-styles.ts";
export { type DrawnSetting, sideViewDrawing } from "./side-view-drawing.ts";
export { steadyWords } from "./steady-words.ts";
export { sunCompass, type WantedBearing } from "./sun-compass.ts";
export {
  type ClockLine,
  type DateRing,
  type DialPoint,
  type SunCompassDial,
  sunCompassDial,
} from "./sun-compass-dial.ts";
export { sunPathChart } from "./sun-path-chart.ts";
export { standaloneSvg, svgFile } from "./svg-file.ts";
export { swapsSummary } from "./swaps-summary.ts";
export { type SwapRow, swapRows, swapsTable } from "./swaps-table.ts";
export { type Cell, type Column, csvText, type Table } from "./table.ts";
export { type Provenance, tableMetadata } from "./table-metadata.ts";
export { countedWords, textSummary } from "./text-summary.ts";
export { CHART_FONT, colour, SCHEMES, type SchemeChoice, settingColour, themeCss } from "./theme.ts";
export { type GaugeMark, tiltGauge } from "./tilt-gauge.ts";
export { tiltMapChart, tiltsInUse } from "./tilt-map-chart.ts";
export { type TiltMapRow, tiltMapTable } from "./tilt-map-table.ts";
export { bandsTable, type ToleranceRow, toleranceTable } from "./tolerance-table.ts";
export { trimWords } from "./trim-words.ts";
export { type WiringRow, wiringTable } from "./wiring-table.ts";
export {
  bearingShort,
  compassPoint,
  dateWords,
  energyWords,
  gainWords,
  lengthWords,
  listWords,
  periodWords,
  tiltShort,
} from "./words.ts";
export { worthChart } from "./worth-chart.ts";
export { type WorthTableRow, worthTable } from "./worth-table.ts";
export { cheapestEnough, shortDaysWords, worthSummary, worthVerdict } from "./worth-words.ts";
