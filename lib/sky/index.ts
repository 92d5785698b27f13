/** The sky: what light arrives, from above the air down to the ground. */
export { airMassOfSine, relativeAirMass, standardPressureHPa } from "./air-mass.ts";
export { birdClearLight, broadbandAod, type ClearAir, type ClearLight } from "./bird.ts";
export { clearSkyColumns, type MonthlyAlbedo, type MonthlyWeather } from "./clear-sky-columns.ts";
export { type AirRange, type Climate, type ClimateUncertainty, NO_UNCERTAINTY } from "./climate/climate.ts";
export {
  type ClearnessDay,
  dayMemory,
  type MeasuredMemory,
  measuredDayMemory,
  PUBLISHED_DAY_MEMORY,
} from "./climate/day-memory.ts";
export { dailyRangeK, warmthAt } from "./climate/day-temperature.ts";
export { type ClearYear, clearYear } from "./climate/days/clear-year.ts";
export { fillClimateAir } from "./climate/days/climate-air.ts";
export { type CloudSeason, cloudSeason } from "./climate/days/cloud-season.ts";
export { type ClimateSky, climateSkies, skyAtRatio } from "./climate/days/cloud-skies.ts";
export type { DayMean } from "./climate/days/day-spread.ts";
export { type SequenceOptions, type SkySequences, skySequences } from "./climate/days/sequences.ts";
export { type MonthSun, monthSuns } from "./climate/month-sun.ts";
export { climateByAnalogy } from "./climate/place/analogy.ts";
export type { PlaceShare } from "./climate/place/blend.ts";
export { climateNear, nearestPlaces } from "./climate/place/choose-place.ts";
export {
  type ChoiceKind,
  type ChosenClimate,
  placeLine,
  uncertaintyLine,
} from "./climate/place/chosen-climate.ts";
export { climateOfPlace, findPlaces } from "./climate/place/find-place.ts";
export { type PlaceHeight, placeHeight } from "./climate/place/place-height.ts";
export { chosenClimate, climateNotes, isRough } from "./climate/place/plan-climate.ts";
export { type ClimateSite, distanceKm, type HighSpot, type Spot } from "./climate/spot.ts";
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
export { type ClimateTable, joinTables, parseClimateTable } from "./climate/table/climate-table.ts";
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
export {
  type WeatherColumnsOptions,
  weatherSkyColumns,
  weatherYears,
} from "./weather/lay/weather-columns.ts";
export { type AirOptions, type AirSeries, parseAir, withAir } from "./weather/read/air-file.ts";
export type { StampPlace } from "./weather/read/grid.ts";
export type { Quantity } from "./weather/read/headers.ts";
export type { WeatherPlace } from "./weather/read/interval-sun.ts";
export type { ColumnNames } from "./weather/read/layout.ts";
export { parseWeather, type WeatherOptions } from "./weather/read/parse-weather.ts";
export type { DailySeries, IntervalSeries, Mending, WeatherSeries } from "./weather/read/series.ts";
