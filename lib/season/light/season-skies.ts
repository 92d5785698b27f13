import type { Plan } from "../../plan/plan.ts";
import { heightM } from "../../plan/site.ts";
import { clearSkyColumns } from "../../sky/clear-sky-columns.ts";
import type { SkyColumns } from "../../sky/columns.ts";
import { albedoOf } from "../../sky/ground.ts";
import type { Monthly } from "../../sky/monthly.ts";
import { clearAirOf } from "../../sky/turbidity.ts";
import type { SunColumns } from "../../sun/columns.ts";
import { sunColumns } from "../../sun/sun-columns.ts";

/** The sun through a plan's season. */
export const seasonSun = ({ site, season }: Pick<Plan, "site" | "season">): SunColumns =>
  sunColumns(site, season, season.stepMinutes);

/**
 * The clear sky over a plan's site through its season.
 *
 * @param waterCm water in the column of air where the plan states none, cm [that of the plan's air]
 */
export const seasonClearSky = (
  { site, air }: Pick<Plan, "site" | "air">,
  sun: SunColumns,
  waterCm?: Monthly,
): SkyColumns =>
  clearSkyColumns(sun, clearAirOf(air, heightM(site)), albedoOf(site.ground), {
    airC: air.temperatureC,
    windMs: air.windMs,
    waterCm,
  });
