/** report: tables, charts and words made from a season's answers. */

export { aimGainChart } from "./chart/aim-gain-chart.ts";
export { chargeChart } from "./chart/charge-chart.ts";
export type { ChartFrame } from "./chart/chart-base.ts";
export { controllerGainChart } from "./chart/controller-gain-chart.ts";
export { curveChart } from "./chart/curve-chart.ts";
export { type DayQuantity, dayChart } from "./chart/day-chart.ts";
export { dropChart } from "./chart/drop-chart.ts";
export { seasonChart } from "./chart/season-chart.ts";
export { type SettingStyle, settingStyles } from "./chart/setting-styles.ts";
export { sunPathChart } from "./chart/sun-path-chart.ts";
export { standaloneSvg, svgFile } from "./chart/svg-file.ts";
export { CHART_FONT, colour, SCHEMES, type SchemeChoice, settingColour, themeCss } from "./chart/theme.ts";
export { tiltMapChart, tiltsInUse } from "./chart/tilt-map-chart.ts";
export { worthChart } from "./chart/worth-chart.ts";
export { cuttingSheetPage } from "./paper/cutting-sheet-page.ts";
export { dialBearings } from "./paper/dial-bearings.ts";
export { type DrawnSetting, sideViewDrawing } from "./paper/side-view-drawing.ts";
export { sunCompass, type WantedBearing } from "./paper/sun-compass.ts";
export {
  type ClockLine,
  type DateRing,
  type DialPoint,
  type SunCompassDial,
  sunCompassDial,
} from "./paper/sun-compass-dial.ts";
export { type GaugeMark, tiltGauge } from "./paper/tilt-gauge.ts";
export { type AimRow, aimsCsv, aimsTable } from "./table/aims-table.ts";
export { type BatteryRow, batteryTable } from "./table/battery-table.ts";
export {
  type ControllerGain,
  controllerGains,
  controllerGainTable,
} from "./table/controller-gain-table.ts";
export { type CurveRow, curveTable } from "./table/curve-table.ts";
export { type DayRow, dayTable } from "./table/day-table.ts";
export { type LegSetRow, legSetsTable } from "./table/leg-sets-table.ts";
export { type LegRow, legsTable } from "./table/legs-table.ts";
export { loadsTable } from "./table/loads-table.ts";
export { piecesTable } from "./table/pieces-table.ts";
export { rulesTable } from "./table/rules-table.ts";
export { type SeasonRow, seasonCsv, seasonRows, seasonTable } from "./table/season-table.ts";
export { swapsTable } from "./table/swaps-table.ts";
export { type Cell, type Column, csvText, type Table } from "./table/table.ts";
export { type Provenance, tableMetadata } from "./table/table-metadata.ts";
export { type TiltMapRow, tiltMapTable } from "./table/tilt-map-table.ts";
export { bandsTable, type ToleranceRow, toleranceTable } from "./table/tolerance-table.ts";
export { type WiringRow, wiringTable } from "./table/wiring-table.ts";
export { type WorthTableRow, worthTable } from "./table/worth-table.ts";
export {
  type AimCardLine,
  aimCard,
  type CardPlace,
  cardPlace,
  routineOf,
  walkWords,
} from "./words/aim-card.ts";
export { aimsHeadline } from "./words/aims-headline.ts";
export { aimsSummary } from "./words/aims-summary.ts";
export {
  batterySummary,
  ruleWords,
  standUseWords,
  uncertaintyWords,
  wiringSummary,
} from "./words/battery-words.ts";
export { circuitCautions, dangerWords, secondPanelCautions } from "./words/circuit-cautions.ts";
export { controllerHeadline, wiringHeadline, worthHeadline } from "./words/circuit-headlines.ts";
export { circuitModelWords } from "./words/circuit-models.ts";
export { coldWords } from "./words/cold-words.ts";
export { copingWords } from "./words/coping-words.ts";
export type { CurveToShow } from "./words/curve-to-show.ts";
export { clockText } from "./words/day-clock.ts";
export { type Headline, seasonHeadline } from "./words/headline.ts";
export { legWords } from "./words/leg-words.ts";
export { legsHeadline } from "./words/legs-headline.ts";
export { CUTTING_CAUTION, legsSummary, setSentences } from "./words/legs-summary.ts";
export { modelWords } from "./words/model-words.ts";
export { compassWords, noonShadowWords, type SunStand, sunwardWords } from "./words/plain-directions.ts";
export { shortDaysWords } from "./words/short-days-words.ts";
export { steadySentences } from "./words/steady-words.ts";
export { type NoonSun, stickWords } from "./words/stick-words.ts";
export { swapsSummary } from "./words/swaps-summary.ts";
export { countedWords, textSummary } from "./words/text-summary.ts";
export { trimWords } from "./words/trim-words.ts";
export {
  bearingShort,
  compassPoint,
  energyWords,
  gainWords,
  lengthWords,
  listWords,
  periodWords,
  tiltShort,
} from "./words/words.ts";
export { cheapestEnough, worthSummary, worthVerdict } from "./words/worth-words.ts";
