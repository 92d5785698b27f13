/** What coordinates alone are told of their light, with each radiation station of the shipped tables left out in turn. */
import { readFileSync } from "node:fs";
import { monthSuns } from "../../../lib/sky/climate/month-sun.ts";
import { type ClimateSite, distanceKm } from "../../../lib/sky/climate/spot.ts";
import { type ClimateStation, monthlyGlobal } from "../../../lib/sky/climate/station.ts";
import { climateAnywhere } from "../../../lib/sky/climate/world/climate-anywhere.ts";
import { shippedTable } from "../../../lib/sky/climate/world/shipped-climates.ts";
import { LEAST_LIGHT, type MonthPair } from "./sunshine.ts";

/** The shipped climates with the world. */
export const SHIPPED = await shippedTable(async (name) =>
  readFileSync(new URL(`../../../data/climates/${name}.csv`, import.meta.url), "utf8"),
);

/** A month of an estimate beside the station's own, with what the estimate says of its own error. */
export interface ToldMonth extends MonthPair {
  /** One standard deviation, as a share of the light. */
  readonly uncertainty: number;
  /** Days' mean lowest and highest, degC. */
  readonly lowC: number;
  readonly highC: number;
}

/** Radiation stations, whatever the years behind them. */
export const RADIATION_STATIONS = SHIPPED.stations.filter(({ light }) => light.kind !== "sunshine");

/** Stations nearer than this are the same place under another name. */
const SAME_PLACE_KM = 3;

/**
 * Each radiation station's months as told to a newcomer there.
 *
 * @param aloneKm no radiation station within this distance is asked either: so most of the world is [3]
 */
export const toldMonths = (aloneKm = SAME_PLACE_KM): readonly ToldMonth[] => {
  const before = told.get(aloneKm);
  if (before !== undefined) return before;
  const months = leftOut(aloneKm);
  told.set(aloneKm, months);
  return months;
};

const told = new Map<number, readonly ToldMonth[]>();

const leftOut = (aloneKm: number): readonly ToldMonth[] => {
  const { world } = SHIPPED;
  if (world === undefined) throw new RangeError("toldMonths: expected the world in the shipped table");
  return RADIATION_STATIONS.flatMap((station): readonly ToldMonth[] => {
    const site = { ...station, elevationM: station.elevationM ?? 0 };
    const unasked = (other: ClimateStation): boolean =>
      other.id === station.id || (other.light.kind !== "sunshine" && distanceKm(other, station) < aloneKm);
    const { climate } = climateAnywhere(SHIPPED, world, site, unasked);
    const suns = monthSuns(station.latitudeDeg);
    return monthlyGlobal(station.light, station.latitudeDeg).flatMap((truth, month): readonly ToldMonth[] =>
      truth < LEAST_LIGHT
        ? []
        : [
            {
              station,
              month,
              days: suns[month].days,
              estimate: climate.globalKWhM2[month],
              truth,
              uncertainty: climate.uncertainty.month[month],
              lowC: climate.air?.lowC[month] ?? Number.NaN,
              highC: climate.air?.highC[month] ?? Number.NaN,
            },
          ],
    );
  });
};

/** Continents with twenty places or more among the left-out stations. */
export const CONTINENTS = {
  "North America": ({ longitudeDeg, latitudeDeg }: ClimateStation): boolean =>
    longitudeDeg < -50 && latitudeDeg > 23.44,
  Europe: ({ longitudeDeg, latitudeDeg }: ClimateStation): boolean =>
    longitudeDeg > -30 && longitudeDeg < 45 && latitudeDeg > 35,
} as const;

export const QUARTERS = ["Dec-Feb", "Mar-May", "Jun-Aug", "Sep-Nov"] as const;

/** How many months of a hundred lie within so many of their own standard deviations. */
export const withinPct = (months: readonly ToldMonth[], deviations: number): number =>
  (100 *
    months.filter(
      ({ estimate, truth, uncertainty }) => Math.abs(Math.log(estimate / truth)) < deviations * uncertainty,
    ).length) /
  months.length;

/** Months of a quarter of the year, 0 from December on, on a continent. */
export const ofQuarter = (
  months: readonly ToldMonth[],
  quarter: number,
  on: (station: ClimateStation) => boolean,
): readonly ToldMonth[] =>
  months.filter(({ month, station }) => Math.floor(((month + 1) % 12) / 3) === quarter && on(station));

/** Root-mean-square and mean error of the left-out stations' lowest and highest air, K. */
export const airErrors = (months: readonly ToldMonth[]) => {
  const errors = months.flatMap(({ station: { air }, month, lowC, highC }) =>
    air?.kind === "range" ? [{ low: lowC - air.lowC[month], high: highC - air.highC[month] }] : [],
  );
  const mean = (of: (error: (typeof errors)[number]) => number): number =>
    errors.reduce((sum, error) => sum + of(error), 0) / errors.length;
  return {
    lowK: Math.sqrt(mean(({ low }) => low ** 2)),
    highK: Math.sqrt(mean(({ high }) => high ** 2)),
    lowBiasK: mean(({ low }) => low),
    highBiasK: mean(({ high }) => high),
  };
};

/** Water in the column of air of twelve months at a place, cm, as the library has it there. */
export const waterAt = (site: ClimateSite): readonly number[] | undefined => {
  const { world } = SHIPPED;
  return world === undefined ? undefined : climateAnywhere(SHIPPED, world, site).climate.waterCm;
};
