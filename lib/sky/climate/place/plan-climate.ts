import type { ClimateFrom, StatedMonths, SunshineRelation } from "../../../plan/climate.ts";
import { PlanError } from "../../../units/problem.ts";
import type { ClimateSite } from "../spot.ts";
import { MJ_PER_KWH, type MonthlyLight } from "../station.ts";
import type { ClimateTable } from "../table/climate-table.ts";
import { type GlobalUnit, lightProblems } from "../table/light-checks.ts";
import { climateByAnalogy } from "./analogy.ts";
import { blendClimate } from "./blend.ts";
import { climateNear } from "./choose-place.ts";
import { type ChosenClimate, uncertaintyLine } from "./chosen-climate.ts";
import { climateOfPlace } from "./find-place.ts";

/**
 * The climate that a plan asks for.
 */

/** The light as stated, with the field it was stated in. */
const lightOf = (stated: StatedMonths): { readonly light: MonthlyLight; readonly field: string } => {
  if (stated.globalMJM2 !== undefined) {
    const kWhM2Day = stated.globalMJM2.map((value) => value / MJ_PER_KWH);
    return { light: { kind: "global", kWhM2Day }, field: "globalMJM2" };
  }
  if (stated.clearness !== undefined) {
    return { light: { kind: "clearness", index: stated.clearness }, field: "clearness" };
  }
  if (stated.sunshineHours !== undefined) {
    return { light: { kind: "sunshine", hours: stated.sunshineHours }, field: "sunshineHours" };
  }
  return { light: { kind: "global", kWhM2Day: stated.globalKWhM2 ?? [] }, field: "globalKWhM2" };
};

const statedClimate = (
  stated: StatedMonths,
  site: ClimateSite,
  relation: SunshineRelation,
): ChosenClimate => {
  const { light, field } = lightOf(stated);
  const unit: GlobalUnit = field === "globalMJM2" ? "MJ/m2" : "kWh/m2";
  const problems = lightProblems(light, site.latitudeDeg, (month) => `sky.from.${field}[${month}]`, unit);
  if (problems.length > 0) throw new PlanError(problems);
  const { airLowC, airHighC, windMs, windHeightM, dayMemory, dayMemoryYears } = stated;
  const station = {
    id: "stated",
    place: "the site",
    country: "",
    ...site,
    source: "own table" as const,
    light,
    air:
      airLowC === undefined || airHighC === undefined
        ? null
        : { kind: "range" as const, lowC: airLowC, highC: airHighC },
    wind: windMs === undefined ? null : { ms: windMs, heightM: windHeightM },
    dayMemory:
      dayMemory === undefined || dayMemoryYears === undefined
        ? null
        : { correlation: dayMemory, years: dayMemoryYears },
  };
  const share = { station, distanceKm: 0, heightDifferenceM: 0, weight: 1 };
  return {
    kind: "own table",
    climate: blendClimate([share], site, relation),
    shares: [],
    says: "twelve months as stated in the plan",
    warnings: light.kind === "sunshine" ? ["The light is estimated from hours of sunshine."] : [],
  };
};

/**
 * The climate that a plan's `sky.from` asks for.
 *
 * @param table the shipped places, or the plan's own table where it names one; not looked at for stated months
 * @throws PlanError when the months cannot be true, no place is near enough, or none has the name
 */
export const chosenClimate = (
  from: ClimateFrom,
  table: ClimateTable,
  site: ClimateSite,
  relation: SunshineRelation = "fitted",
): ChosenClimate => {
  switch (from.kind) {
    case "months":
      return statedClimate(from, site, relation);
    case "analogy":
      return climateByAnalogy(table, from.like, site, relation);
    case "place":
      return climateOfPlace(table, from.name, site, relation);
    case "table":
    case "nearest":
      return climateNear(table, site, relation);
  }
};

/** A year's light less certain than this (one standard deviation) makes every figure rough. */
const ROUGH_YEAR = 0.09;

/** Whether figures made from a climate must be called rough: by analogy, or from places too far to trust. */
export const isRough = ({ kind, climate }: ChosenClimate): boolean =>
  kind === "analogy" || climate.uncertainty.year > ROUGH_YEAR;

/** What a reader of the figures must know about their climate: from where, how sure, what to beware of. */
export const climateNotes = (chosen: ChosenClimate): readonly string[] => {
  const uncertainty = uncertaintyLine(chosen.climate);
  const figures = isRough(chosen) ? "Every expected figure here is rough" : "Expected figures";
  return [
    `Cloud from the climate of ${chosen.says}.`,
    ...(uncertainty === null ? [] : [`${figures}: ${uncertainty}; the bands hold it.`]),
    ...chosen.warnings,
  ];
};
