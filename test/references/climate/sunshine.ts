/** Radiation read out of sunshine, against the radiation stations of the shipped tables. */

import { readFileSync } from "node:fs";
import { group } from "d3";
import type { SunshineRelation } from "../../../lib/plan/climate.ts";
import { monthSuns } from "../../../lib/sky/climate/month-sun.ts";
import { nearestPlaces } from "../../../lib/sky/climate/place/choose-place.ts";
import { distanceKm } from "../../../lib/sky/climate/spot.ts";
import { type ClimateStation, monthlyClearness, monthlyGlobal } from "../../../lib/sky/climate/station.ts";
import {
  type ClimateTable,
  joinTables,
  parseClimateTable,
} from "../../../lib/sky/climate/table/climate-table.ts";

const shipped = (name: string): ClimateTable =>
  parseClimateTable(
    readFileSync(new URL(`../../../data/climates/${name}.csv`, import.meta.url), "utf8"),
    `${name}.csv`,
  );

export const RADIATION = shipped("radiation-stations");
export const SUNSHINE = shipped("sunshine-stations");
export const SHARE_ALIKE = shipped("sunshine-stations-share-alike");

/** Radiation rows that are a year typical of many. */
export const TYPICAL = RADIATION.stations.filter(({ source }) => source === "typical year");

/** One month of an estimate beside the station's own. */
export interface MonthPair {
  readonly station: ClimateStation;
  readonly month: number;
  readonly days: number;
  /** Mean daily global light, kWh/m2. */
  readonly estimate: number;
  readonly truth: number;
}

/** Months too dark to be judged by their relative error: below 0.1 kWh/m2 a day. */
export const LEAST_LIGHT = 0.1;

const pairsOf = (station: ClimateStation, clearness: ArrayLike<number>): readonly MonthPair[] => {
  const suns = monthSuns(station.latitudeDeg);
  return monthlyGlobal(station.light, station.latitudeDeg).flatMap((truth, month) =>
    truth < LEAST_LIGHT || !Number.isFinite(clearness[month])
      ? []
      : [
          {
            station,
            month,
            days: suns[month].days,
            estimate: clearness[month] * suns[month].extraterrestrialKWhM2,
            truth,
          },
        ],
  );
};

const NEAR_KM = 60;
const NEAR_M = 400;

/** Each radiation station beside the sunshine station nearest to it, within 60 km and 400 m of height. */
export const nearPairs = (table: ClimateTable, relation: SunshineRelation): readonly MonthPair[] =>
  TYPICAL.flatMap((station) => {
    const [nearest] = table.stations
      .filter(
        (other) =>
          distanceKm(station, other) <= NEAR_KM &&
          Math.abs((other.elevationM ?? station.elevationM ?? 0) - (station.elevationM ?? 0)) <= NEAR_M,
      )
      .sort((a, b) => distanceKm(station, a) - distanceKm(station, b));
    return nearest === undefined
      ? []
      : pairsOf(station, monthlyClearness(nearest.light, nearest.latitudeDeg, relation));
  });

/** What a newcomer at each radiation station would be told, had it not been in the tables. */
export const leftOutPairs = (
  table: ClimateTable,
  relation: SunshineRelation,
  places = 4,
): readonly MonthPair[] =>
  TYPICAL.flatMap((station) => {
    const others = { stations: table.stations.filter(({ id }) => id !== station.id) };
    const site = { ...station, elevationM: station.elevationM ?? 0 };
    const shares = nearestPlaces(others, site, places);
    const columns = shares.map(({ station: other, weight }) => ({
      weight,
      clearness: monthlyClearness(other.light, other.latitudeDeg, relation),
    }));
    const blended = Array.from({ length: 12 }, (_, month) => {
      const lit = columns.filter(({ clearness }) => Number.isFinite(clearness[month]));
      const weights = lit.reduce((sum, { weight }) => sum + weight, 0);
      return lit.reduce((sum, { weight, clearness }) => sum + weight * clearness[month], 0) / weights;
    });
    return pairsOf(station, blended);
  });

/** How far estimates are off, per cent. */
export interface EstimateError {
  readonly places: number;
  readonly months: number;
  /** Sum of errors over the sum. */
  readonly biasPct: number;
  /** Root-mean-square error over the mean. */
  readonly rmsPct: number;
  /** Root-mean-square of each month's relative error, and what 95 in 100 stay below. */
  readonly monthPct: number;
  readonly p95Pct: number;
  /** Root-mean-square error of a place's year. */
  readonly yearPct: number;
}

export const estimateError = (pairs: readonly MonthPair[]): EstimateError => {
  const years = group(pairs, ({ station }) => station.id);
  const truth = pairs.reduce((sum, pair) => sum + pair.truth, 0);
  const root = (squares: readonly number[]): number =>
    Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
  const relative = pairs.map(({ estimate, truth: own }) => estimate / own - 1);
  const sizes = relative.map(Math.abs).sort((a, b) => a - b);
  const yearly = Array.from(years.values(), (own) => {
    const sum = (of: (pair: MonthPair) => number): number =>
      own.reduce((total, pair) => total + of(pair) * pair.days, 0);
    return (sum(({ estimate }) => estimate) / sum(({ truth: own }) => own) - 1) ** 2;
  });
  return {
    places: years.size,
    months: pairs.length,
    biasPct: 100 * (pairs.reduce((sum, { estimate }) => sum + estimate, 0) / truth - 1),
    rmsPct:
      (100 * root(pairs.map(({ estimate, truth: own }) => (estimate - own) ** 2)) * pairs.length) / truth,
    monthPct: 100 * root(relative.map((error) => error ** 2)),
    p95Pct: 100 * (sizes[Math.floor(0.95 * sizes.length)] ?? Number.NaN),
    yearPct: 100 * root(yearly),
  };
};

/** The tables a newcomer's estimate may come from. */
export const TABLES = {
  "sunshine stations": SUNSHINE,
  "sunshine, share-alike too": joinTables([SUNSHINE, SHARE_ALIKE]),
  "radiation stations": RADIATION,
  "all shipped": joinTables([RADIATION, SUNSHINE, SHARE_ALIKE]),
} as const;
