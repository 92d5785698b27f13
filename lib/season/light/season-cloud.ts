import type { Plan } from "../../plan/plan.ts";
import { heightM } from "../../plan/site.ts";
import type { Climate } from "../../sky/climate/climate.ts";
import { clearYear } from "../../sky/climate/days/clear-year.ts";
import { fillClimateAir } from "../../sky/climate/days/climate-air.ts";
import { type CloudSeason, cloudSeason, monthRatios } from "../../sky/climate/days/cloud-season.ts";
import { type ClimateSky, climateSkies } from "../../sky/climate/days/cloud-skies.ts";
import { type DayAir, dayAir } from "../../sky/climate/days/day-air.ts";
import type { ChosenClimate } from "../../sky/climate/place/chosen-climate.ts";
import { heightNote, placeHeight } from "../../sky/climate/place/place-height.ts";
import { chosenClimate } from "../../sky/climate/place/plan-climate.ts";
import type { ClimateSite } from "../../sky/climate/spot.ts";
import type { ClimateTable } from "../../sky/climate/table/climate-table.ts";
import type { SkyColumns } from "../../sky/columns.ts";
import { albedoOf } from "../../sky/ground.ts";
import { clearAirOf } from "../../sky/turbidity.ts";
import type { SunColumns } from "../../sun/columns.ts";
import { calendarMonth } from "../../units/dates.ts";

/** The cloud of a plan's season where it comes from a climate. */
export interface SeasonCloud {
  readonly chosen: ChosenClimate;
  /** What does not fit between the climate and the site, each a sentence. */
  readonly warnings: readonly string[];
  /** Each day's mean and what it scatters by. */
  readonly days: CloudSeason;
  /** Usual low and high of each day's air and their spread; `null` where the climate has none. */
  readonly air: DayAir | null;
  /** Equally likely skies, darkest first. */
  readonly skies: readonly ClimateSky[];
  /** Seasons to draw, and the seed to draw them with. */
  readonly seasons: number;
  readonly seed: number;
}

/** A month may outshine the clear sky by this much before it is told: haze differs from year to year. */
const TOLD_ABOVE_CLEAR = 1.03;
/** Months with less clear-sky light (kWh/m2 a day) are twilight, which the clear-sky model underrates. */
const TWILIGHT_KWH_M2 = 0.5;

/** Months whose table is brighter than the clear sky over the site, which points at its height or its air. */
const tooBright = (climate: Climate, ratios: readonly number[]): readonly string[] => {
  const months = ratios.flatMap((ratio, month) =>
    ratio > TOLD_ABOVE_CLEAR && (climate.globalKWhM2[month] ?? 0) > TWILIGHT_KWH_M2 ? [month] : [],
  );
  if (months.length === 0) return [];
  const names = months.map((month) => calendarMonth(month + 1));
  const most = Math.round(100 * (Math.max(...months.map((month) => ratios[month] ?? 0)) - 1));
  return [
    `The climate's ${names.join(", ")} ${months.length === 1 ? "is" : "are"} up to ${most} % brighter than a clear sky over this site: is site.elevationM right, is air.turbidity too hazy?`,
  ];
};

/**
 * Months whose mean noon sun is lower: there the same monthly light came with anything from 0.13 to 0.41 of the clear
 * sky's beam (Barrow, 71 N), and a steep plane's month was off by 17 % to 78 %; above, by 14 % at most (71 N) and 8 % elsewhere.
 */
const LOW_NOON_DEG = 12;

const nameList = new Intl.ListFormat("en-GB", { type: "conjunction" });

/** Months of the season whose sun is so low that their light cannot be told apart from twelve means. */
const lowSun = (sun: SunColumns): readonly string[] => {
  const noons = new Map<number, number[]>();
  for (const { month, noonAltitudeDeg, first, end } of sun.days) {
    if (end > first) noons.set(month, [...(noons.get(month) ?? []), noonAltitudeDeg]);
  }
  const low = [...noons].filter(
    ([, noon]) => noon.reduce((sum, altitude) => sum + altitude, 0) / noon.length < LOW_NOON_DEG,
  );
  if (low.length === 0) return [];
  const names = low.map(([month]) => calendarMonth(month));
  return [
    `In ${nameList.format(names)} the noon sun stays under ${LOW_NOON_DEG} degrees: twelve means hardly tell beam from bright cloud there, and what a steep panel is said to bring may be off by half.`,
  ];
};

/** A plan whose sky is a climate. */
export type ClimatePlan = Plan & { readonly sky: { readonly source: "climate" } };

/** The same with its height above the sea settled. */
export type PlacedPlan = ClimatePlan & { readonly site: ClimateSite };

/**
 * Settles a site's height: as the plan states it, else that of a place near (`placeHeight`), else sea level; with what must be
 * said of it.
 *
 * @param table shipped places, or the plan's own table
 * @throws PlanError when no place has the name that the plan gives
 */
export const placedPlan = (
  plan: ClimatePlan,
  table: ClimateTable,
): { readonly plan: PlacedPlan; readonly notes: readonly string[] } => {
  const { elevationM } = plan.site;
  if (elevationM !== undefined) return { plan: { ...plan, site: { ...plan.site, elevationM } }, notes: [] };
  const height = placeHeight(plan.sky.from, table, plan.site);
  const site = {
    ...plan.site,
    elevationM: height?.elevationM ?? heightM(plan.site),
    heightBorrowed: true,
  } as const;
  return { plan: { ...plan, site }, notes: [heightNote(height)] };
};

/** The climate that a placed plan asks for. */
export const planClimate = ({ site, sky }: PlacedPlan, table: ClimateTable): ChosenClimate =>
  chosenClimate(sky.from, table, site, sky.sunshine);

/** Water in the air by the climate, where the plan states none. */
export const climateWater = (
  { waterCm }: Plan["air"],
  { climate }: ChosenClimate,
): readonly number[] | undefined => (waterCm === undefined ? climate.waterCm : undefined);

/**
 * Lays a climate over a plan's season.
 *
 * @param clear clear-sky columns of the season; the climate's warmth and wind are put into them
 * @param chosen the plan's climate (`planClimate`)
 */
export const seasonCloud = (
  { site, air, sky }: PlacedPlan,
  sun: SunColumns,
  clear: SkyColumns,
  chosen: ChosenClimate,
): SeasonCloud => {
  fillClimateAir(sun, chosen.climate, clear);
  const year = clearYear(
    site,
    clearAirOf(air, site.elevationM),
    albedoOf(site.ground),
    climateWater(air, chosen),
  );
  const days = cloudSeason(sun, clear, year, chosen.climate, site.latitudeDeg);
  return {
    chosen,
    warnings: [...tooBright(chosen.climate, monthRatios(chosen.climate, year)), ...lowSun(sun)],
    days,
    air: chosen.climate.air && dayAir(sun.days, chosen.climate.air),
    skies: climateSkies(sun, clear, days),
    seasons: sky.seasons,
    seed: sky.seed,
  };
};
