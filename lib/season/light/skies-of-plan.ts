import type { Plan } from "../../plan/plan.ts";
import { climateNotes } from "../../sky/climate/place/plan-climate.ts";
import type { ClimateTable } from "../../sky/climate/table/climate-table.ts";
import type { SkyColumns } from "../../sky/columns.ts";
import { weatherSkyColumns, weatherStepAir, weatherYears } from "../../sky/weather/lay/weather-columns.ts";
import { parseAir, withAir } from "../../sky/weather/read/air-file.ts";
import { parseWeather } from "../../sky/weather/read/parse-weather.ts";
import type { SunColumns } from "../../sun/columns.ts";
import { climateWater, placedPlan, planClimate, type SeasonCloud, seasonCloud } from "./season-cloud.ts";
import { seasonClearSky, seasonSun } from "./season-skies.ts";
import { readySkies, type SeasonSkies, type WeightedSky } from "./skies.ts";

/** The skies of a plan's season, and what a reader of the figures must know about them. */
export interface PlanSkies {
  readonly skies: SeasonSkies;
  readonly notes: readonly string[];
  /** Where the skies come from a climate: what is known of its days, for the bands of whole seasons; else `null`. */
  readonly cloud: SeasonCloud | null;
}

/** One sky for each year of the file that holds the season, each as likely as the next. */
const weatherSkies = (
  plan: Plan & { readonly sky: { readonly source: "weather" } },
  sun: SunColumns,
  clear: SkyColumns,
  weatherCsv: string,
  airCsv: string | null,
): { readonly expected: readonly WeightedSky[]; readonly notes: readonly string[] } => {
  const { site, sky } = plan;
  const { file, airFile, stamps, columns: names, checkClock } = sky;
  const light = parseWeather(weatherCsv, { place: site, file, stamps, columns: names, checkClock });
  if (airFile !== undefined && airCsv === null)
    throw new RangeError(`skiesOfPlan: expected the text of ${airFile}, received null`);
  const series =
    airFile === undefined || airCsv === null ? light : withAir(light, parseAir(airCsv, { file: airFile }));
  const years = weatherYears(series, sun);
  const { diffuseSplit: split, windHeightM } = sky;
  const options = { latitudeDeg: site.latitudeDeg, split, windHeightM };
  const seasons: readonly { readonly fileYear?: number }[] =
    years.length === 0 ? [{}] : years.map((fileYear) => ({ fileYear }));
  return {
    expected: seasons.map((season): WeightedSky => {
      const stepAirC = weatherStepAir(sun, series, season.fileYear);
      return {
        weight: 1 / seasons.length,
        sky: weatherSkyColumns(sun, series, clear, { ...options, ...season }),
        ...(stepAirC === null ? {} : { stepAirC }),
      };
    }),
    notes: series.mending.remarks,
  };
};

/** A table without a place. */
const NO_CLIMATES: ClimateTable = { stations: [] };

/**
 * Makes the skies that a plan asks for: the clear one, and those of its weather file or its climate.
 *
 * @param weatherCsv the text of the file that `plan.sky.file` names; `null` when the plan names none
 * @param climates the places that `plan.sky.from` chooses among: the shipped tables, or the plan's own [none]
 * @param airCsv the text of the file that `plan.sky.airFile` names [none]
 * @throws PlanError with everything found wrong in the weather file or the climate
 * @throws RangeError when the plan names a weather file and its text is not given
 */
export const skiesOfPlan = (
  plan: Plan,
  weatherCsv: string | null,
  climates: ClimateTable = NO_CLIMATES,
  airCsv: string | null = null,
): PlanSkies => {
  const { site, sky } = plan;
  const sun = seasonSun(plan);
  const ready = (clear: SkyColumns, expected: readonly WeightedSky[]): SeasonSkies =>
    readySkies(sun, clear, expected, sky.toPlane, site.horizon);
  switch (sky.source) {
    case "clear":
      return { skies: ready(seasonClearSky(plan, sun), []), notes: [], cloud: null };
    case "climate": {
      const placed = placedPlan({ ...plan, sky }, climates);
      const chosen = planClimate(placed.plan, climates);
      const clear = seasonClearSky(placed.plan, sun, climateWater(placed.plan.air, chosen));
      const cloud = seasonCloud(placed.plan, sun, clear, chosen);
      const notes = [...climateNotes(cloud.chosen), ...placed.notes, ...cloud.warnings];
      return { skies: ready(clear, cloud.skies), notes, cloud };
    }
    case "weather": {
      if (weatherCsv === null)
        throw new RangeError(`skiesOfPlan: expected the text of ${sky.file}, received null`);
      const clear = seasonClearSky(plan, sun);
      const { expected, notes } = weatherSkies({ ...plan, sky }, sun, clear, weatherCsv, airCsv);
      return { skies: ready(clear, expected), notes, cloud: null };
    }
  }
};
