import type { Plan } from "../plan/plan.ts";
import type { ChosenClimate } from "../sky/climate/chosen-climate.ts";
import { clearYear } from "../sky/climate/clear-year.ts";
import { fillClimateAir } from "../sky/climate/climate-air.ts";
import type { ClimateTable } from "../sky/climate/climate-table.ts";
import { type CloudSeason, cloudSeason } from "../sky/climate/cloud-season.ts";
import { type ClimateSky, climateSkies } from "../sky/climate/cloud-skies.ts";
import { chosenClimate } from "../sky/climate/plan-climate.ts";
import type { SkyColumns } from "../sky/columns.ts";
import { albedoOf } from "../sky/ground.ts";
import { clearAirOf } from "../sky/turbidity.ts";
import type { SunColumns } from "../sun/index.ts";

/** The cloud of a plan's season where it comes from a climate. */
export interface SeasonCloud {
  readonly chosen: ChosenClimate;
  /** Each day's mean and what it scatters by. */
  readonly days: CloudSeason;
  /** Equally likely skies, darkest first. */
  readonly skies: readonly ClimateSky[];
  /** Seasons to draw, and the seed to draw them with. */
  readonly seasons: number;
  readonly seed: number;
}

/** A plan whose sky is a climate. */
export type ClimatePlan = Plan & { readonly sky: { readonly source: "climate" } };

/**
 * Lays the climate that a plan asks for over its season.
 *
 * @param clear clear-sky columns of the season; the climate's warmth and wind are put into them
 * @param table shipped places, or the plan's own table
 * @throws PlanError when there is no climate to be had, or the stated one cannot be true
 */
export const seasonCloud = (
  { site, air, sky }: ClimatePlan,
  sun: SunColumns,
  clear: SkyColumns,
  table: ClimateTable,
): SeasonCloud => {
  const chosen = chosenClimate(sky.from, table, site, sky.sunshine);
  fillClimateAir(sun, chosen.climate, clear);
  const year = clearYear(site, clearAirOf(air, site.elevationM), albedoOf(site.ground));
  const days = cloudSeason(sun, clear, year, chosen.climate, site.latitudeDeg);
  return { chosen, days, skies: climateSkies(sun, clear, days), seasons: sky.seasons, seed: sky.seed };
};
