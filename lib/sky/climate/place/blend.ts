import type { SunshineRelation } from "../../../plan/climate.ts";
import type { Climate, ClimateUncertainty } from "../climate.ts";
import { dayMemory } from "../day-memory.ts";
import { dailyRangeK, MEAN_SHARE } from "../day-temperature.ts";
import { LEAST_EXTRATERRESTRIAL_KWH_M2, monthSuns } from "../month-sun.ts";
import type { ClimateSite } from "../spot.ts";
import {
  type ClimateStation,
  type MonthlyAir,
  type MonthlyWind,
  monthlyClearness,
  type StationSource,
  type Twelve,
} from "../station.ts";
import { SUNSHINE_YEAR_SPREAD, sunshineMonthSpread } from "../sunshine.ts";
import { windShareAtHeight } from "../wind-height.ts";
/**
 * One climate out of several places: their clearness, warmth and wind, each weighed.
 */

/** A place that has a part in a climate. */
export interface PlaceShare {
  readonly station: ClimateStation;
  /** Great-circle distance to the site. */
  readonly distanceKm: number;
  /** Site minus station; `null` where the station's height is not known. */
  readonly heightDifferenceM: number | null;
  /** Part in the climate, 0..1; the parts sum to 1. */
  readonly weight: number;
}

const MONTHS = Array.from({ length: 12 }, (_, month) => month);

/** ISO 2533 standard atmosphere: the air cools by 6.5 K for each kilometre up. */
const LAPSE_K_PER_M = 0.0065;
/** Height to which winds are brought before they are averaged, m. */
const COMMON_WIND_HEIGHT_M = 10;

/**
 * Uncertainty about a month and a year by kind of source, shares of the light (one standard deviation).
 *
 * Typical years: two of them 15 km apart or less differ by 11 % (month) and 5 % (year) in our table, which is 0.08 and 0.035
 * each; a typical month is one month out of many years. A measured year adds the scatter between years (no source).
 */
const sourceUncertainty = (
  source: StationSource,
  light: "global" | "clearness" | "sunshine",
  latitudeDeg: number,
): ClimateUncertainty => {
  if (light === "sunshine") {
    return {
      month: MONTHS.map((month) => sunshineMonthSpread(latitudeDeg, month)),
      year: SUNSHINE_YEAR_SPREAD,
    };
  }
  const [month, year] =
    source === "own table" ? [0, 0] : source === "typical year" ? [0.08, 0.035] : [0.1, 0.05];
  return { month: MONTHS.map(() => month), year };
};

/** A month's value of the same season on the other half of the Earth. */
const seasonShifted = (values: Twelve, shift: number): Twelve =>
  shift === 0 ? values : MONTHS.map((month) => values[(month + shift) % 12] ?? Number.NaN);

/** Weighted mean by month over what is known; NaN where nothing is. */
const weighedMean = (columns: readonly { readonly values: Twelve; readonly weight: number }[]): Twelve =>
  MONTHS.map((month) => {
    let [sum, weights] = [0, 0];
    for (const { values, weight } of columns) {
      const value = values[month] ?? Number.NaN;
      if (!Number.isFinite(value)) continue;
      sum += weight * value;
      weights += weight;
    }
    return sum / weights;
  });

/** A low and a high for every month: those of the table, or about its mean by how clear the month is. */
const airRange = (air: MonthlyAir, clearness: Twelve): { readonly lowC: Twelve; readonly highC: Twelve } => {
  if (air.kind === "range") return air;
  const spans = MONTHS.map((month) =>
    dailyRangeK(Number.isFinite(clearness[month]) ? (clearness[month] ?? 0) : 0),
  );
  return {
    lowC: MONTHS.map((month) => (air.meanC[month] ?? Number.NaN) - MEAN_SHARE * (spans[month] ?? 0)),
    highC: MONTHS.map((month) => (air.meanC[month] ?? Number.NaN) + (1 - MEAN_SHARE) * (spans[month] ?? 0)),
  };
};

const windAtCommonHeight = ({ ms, heightM }: MonthlyWind): Twelve => {
  const share = windShareAtHeight(heightM, COMMON_WIND_HEIGHT_M);
  return ms.map((value) => value * share);
};

/** What a share says when its months are read in the site's half of the year. */
const readShare = (
  { station, weight, heightDifferenceM }: PlaceShare,
  site: ClimateSite,
  relation: SunshineRelation,
) => {
  const shift = station.latitudeDeg * site.latitudeDeg < 0 ? 6 : 0;
  const clearness = monthlyClearness(station.light, station.latitudeDeg, relation);
  const cooler = LAPSE_K_PER_M * (heightDifferenceM ?? 0);
  const range = station.air === null ? null : airRange(station.air, clearness);
  const toSite = (values: Twelve): Twelve =>
    seasonShifted(
      values.map((value) => value - cooler),
      shift,
    );
  return {
    weight,
    heightKnown: station.elevationM !== null,
    clearness: seasonShifted(clearness, shift),
    lowC: range === null ? null : toSite(range.lowC),
    highC: range === null ? null : toSite(range.highC),
    windMs: station.wind === null ? null : seasonShifted(windAtCommonHeight(station.wind), shift),
    uncertainty: sourceUncertainty(station.source, station.light.kind, station.latitudeDeg),
    dayMemory: dayMemory(station.dayMemory),
    shift,
  };
};

/**
 * Places whose air counts: those of known height. Air of the rest cannot be brought to the site's height, and is taken only
 * where there is no other.
 */
const withAir = <Share extends { readonly heightKnown: boolean; readonly lowC: Twelve | null }>(
  read: readonly Share[],
): readonly Share[] => {
  const sure = read.filter(({ heightKnown, lowC }) => heightKnown && lowC !== null);
  return sure.length === 0 ? read : sure;
};

const known = (
  columns: readonly { readonly values: Twelve | null; readonly weight: number }[],
): readonly { readonly values: Twelve; readonly weight: number }[] =>
  columns.flatMap(({ values, weight }) => (values === null ? [] : [{ values, weight }]));

/**
 * The climate of a site from places that share in it.
 *
 * Clearness is averaged and turned into light at the site's own latitude; air is brought to its height by
 * the standard atmosphere; places of the other hemisphere count with the same season. Wind is stated at 10 m.
 * The uncertainty is the weighted one of the sources: their errors (recorders, relation) do not cancel. So is the memory from
 * day to day, with the published one for places that have none of their own.
 *
 * @param shares at least one; weights sum to 1
 */
export const blendClimate = (
  shares: readonly PlaceShare[],
  site: ClimateSite,
  relation: SunshineRelation = "fitted",
): Climate => {
  const read = shares.map((share) => readShare(share, site, relation));
  const clearness = weighedMean(read.map(({ clearness: values, weight }) => ({ values, weight })));
  const suns = monthSuns(site.latitudeDeg);
  // A month that is dark at every place of the blend and not at the site takes the mean of the others.
  const lit = clearness.filter(Number.isFinite);
  const usual = lit.reduce((sum, value) => sum + value, 0) / lit.length;
  const globalKWhM2 = suns.map(({ extraterrestrialKWhM2 }, month) => {
    if (extraterrestrialKWhM2 < LEAST_EXTRATERRESTRIAL_KWH_M2) return 0;
    const index = clearness[month] ?? Number.NaN;
    return extraterrestrialKWhM2 * (Number.isFinite(index) ? index : usual);
  });
  const airy = withAir(read);
  const lows = known(airy.map(({ lowC, weight }) => ({ values: lowC, weight })));
  const highs = known(airy.map(({ highC, weight }) => ({ values: highC, weight })));
  const winds = known(read.map(({ windMs, weight }) => ({ values: windMs, weight })));
  return {
    globalKWhM2,
    air: lows.length === 0 ? null : { lowC: weighedMean(lows), highC: weighedMean(highs) },
    wind: winds.length === 0 ? null : { ms: weighedMean(winds), heightM: COMMON_WIND_HEIGHT_M },
    uncertainty: {
      month: weighedMean(
        read.map(({ uncertainty, weight, shift }) => ({
          values: seasonShifted(uncertainty.month, shift),
          weight,
        })),
      ),
      year: read.reduce((sum, { uncertainty, weight }) => sum + uncertainty.year * weight, 0),
    },
    dayMemory: read.reduce((sum, { dayMemory: memory, weight }) => sum + memory * weight, 0),
  };
};
