/** report: tables, charts and words made from a season's answers. */
export type { ChartFrame } from "./chart-base.ts";
export { clockText, type DayQuantity, dayChart } from "./day-chart.ts";
export { type DayRow, dayTable } from "./day-table.ts";
export { type Headline, seasonHeadline } from "./headline.ts";
export { modelWords } from "./model-words.ts";
export { seasonChart } from "./season-chart.ts";
export { type SeasonRow, seasonCsv, seasonRows, seasonTable } from "./season-table.ts";
export { type SettingStyle, settingStyles } from "./setting-styles.ts";
export { standaloneSvg, svgFile } from "./svg-file.ts";
export { type Cell, type Column, csvText, type Table } from "./table.ts";
export { type Provenance, tableMetadata } from "./table-metadata.ts";
export { textSummary } from "./text-summary.ts";
export { CHART_FONT, colour, SCHEMES, type SchemeChoice, settingColour, themeCss } from "./theme.ts";
export { compassPoint, dateWords, energyWords, gainWords, listWords, tiltShort } from "./words.ts";
