/** The sky: what light arrives, from above the air down to the ground. */
export { airMassOfSine, relativeAirMass, standardPressureHPa } from "./air-mass.ts";
export { birdClearLight, broadbandAod, type ClearAir, type ClearLight } from "./bird.ts";
export { clearSkyColumns, type MonthlyAlbedo, type MonthlyWeather } from "./clear-sky-columns.ts";
export { climateByAnalogy } from "./climate/analogy.ts";
export type { ClimateSite, PlaceShare } from "./climate/blend.ts";
export { climateNear, distanceKm, nearestPlaces } from "./climate/choose-place.ts";
export { type ChoiceKind, type ChosenClimate, doubtLine, placeLine } from "./climate/chosen-climate.ts";
export { type ClearYear, clearYear } from "./climate/clear-year.ts";
export { type AirRange, type Climate, type ClimateDoubt, NO_DOUBT } from "./climate/climate.ts";
export { fillClimateAir } from "./climate/climate-air.ts";
export { type ClimateTable, joinTables, parseClimateTable } from "./climate/climate-table.ts";
export { type CloudSeason, cloudSeason } from "./climate/cloud-season.ts";
export { type ClimateSky, climateSkies, skyAtRatio } from "./climate/cloud-skies.ts";
export {
  type ClearnessDay,
  dayMemory,
  type MeasuredMemory,
  measuredDayMemory,
  PUBLISHED_DAY_MEMORY,
} from "./climate/day-memory.ts";
export type { DayMean } from "./climate/day-spread.ts";
export { dailyRangeK, warmthAt } from "./climate/day-temperature.ts";
export { climateOfPlace, findPlaces } from "./climate/find-place.ts";
export { type MonthSun, monthSuns } from "./climate/month-sun.ts";
export { type PlaceHeight, placeHeight } from "./climate/place-height.ts";
export { chosenClimate, climateNotes, isRough } from "./climate/plan-climate.ts";
export { type SequenceOptions, type SkySequences, skySequences } from "./climate/sequences.ts";
export {
  type ClimateStation,
  type MonthlyAir,
  type MonthlyLight,
  type MonthlyWind,
  monthlyClearness,
  monthlyGlobal,
  type StationSource,
  type Twelve,
} from "./climate/station.ts";
export { clearnessOfSunshine, globalOfSunshine } from "./climate/sunshine.ts";
export { windShareAtHeight } from "./climate/wind-height.ts";
export { emptySkyColumns, type SkyColumns } from "./columns.ts";
export { engererShare } from "./diffuse-share/engerer.ts";
export { erbsDaily, erbsHourly, erbsMonthly } from "./diffuse-share/erbs.ts";
export { reindlShare } from "./diffuse-share/reindl.ts";
export { ridleyShare } from "./diffuse-share/ridley.ts";
export { esraClearLight, linkeTurbidityOf } from "./esra.ts";
export {
  dailyExtraterrestrial,
  extraterrestrialBetween,
  extraterrestrialNormal,
} from "./extraterrestrial.ts";
export { albedoOf, reflectanceOf } from "./ground.ts";
export type { Monthly } from "./monthly.ts";
export {
  type AirClass,
  type AirStated,
  aerosolDepth,
  airClassOf,
  angstromBetaOfVisibility,
  clearAirOf,
  type Haze,
} from "./turbidity.ts";
export { type AirOptions, type AirSeries, parseAir, withAir } from "./weather/air-file.ts";
export type { StampPlace } from "./weather/grid.ts";
export type { Quantity } from "./weather/headers.ts";
export type { WeatherPlace } from "./weather/interval-sun.ts";
export type { ColumnNames } from "./weather/layout.ts";
export { parseWeather, type WeatherOptions } from "./weather/parse-weather.ts";
export type { DailySeries, IntervalSeries, Mending, WeatherSeries } from "./weather/series.ts";
export { type WeatherColumnsOptions, weatherSkyColumns, weatherYears } from "./weather/weather-columns.ts";
