/** The sky: what light arrives, from above the air down to the ground. */
export { airMassOfSine, relativeAirMass, standardPressureHPa } from "./air-mass.ts";
export { birdClearLight, broadbandAod, type ClearAir, type ClearLight } from "./bird.ts";
export { clearSkyColumns, type MonthlyAlbedo, type MonthlyWeather } from "./clear-sky-columns.ts";
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
export { aerosolDepth, airClassOf, angstromBetaOfVisibility, clearAirOf } from "./turbidity.ts";
export { type AirOptions, type AirSeries, parseAir, withAir } from "./weather/air-file.ts";
export type { StampPlace } from "./weather/grid.ts";
export type { WeatherPlace } from "./weather/interval-sun.ts";
export { parseWeather, type WeatherOptions } from "./weather/parse-weather.ts";
export type { DailySeries, IntervalSeries, Mending, WeatherSeries } from "./weather/series.ts";
export { type WeatherColumnsOptions, weatherSkyColumns, weatherYears } from "./weather/weather-columns.ts";
