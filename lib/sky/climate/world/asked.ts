/**
 * Everything that is asked about a site, laid out for searching once a table.
 */
import { MEAN_SHARE } from "../day-temperature.ts";
import type { ClimateStation, Twelve } from "../station.ts";
import { windShareAtHeight } from "../wind-height.ts";
import type { AirPlace, World } from "../world.ts";
import { type Places, placesOf } from "./optimal.ts";

/** A place whose air is known: of the world, or a station with light. */
export type AirSource = AirPlace | ClimateStation;

/** The places of a table and of the world. */
export interface Asked {
  readonly world: World;
  readonly sunshine: Places<ClimateStation>;
  readonly radiation: Places<ClimateStation>;
  /** Places of known height whose mean air is known; those whose days' low and high are; those with vapour; with wind. */
  readonly mean: Places<AirSource>;
  readonly span: Places<AirSource>;
  readonly moist: Places<AirPlace>;
  readonly wind: Places<ClimateStation>;
}

/** Height of the grid's wind, m. */
const GRID_WIND_M = 10;

const isStation = (source: AirSource): source is ClimateStation => "light" in source;

/** Whether a source is a station that must not be asked. */
export const isWithout =
  (without: (station: ClimateStation) => boolean) =>
  (source: AirSource): boolean =>
    isStation(source) && without(source);

const rangeOf = (source: AirSource): AirPlace["range"] => {
  if (!isStation(source)) return source.range;
  return source.air?.kind === "range" ? source.air : null;
};

const nothing: Twelve = new Array<number>(12).fill(Number.NaN);

/** Means of twelve months' air, degC: where the days' low and high are known, the mean of the usual course between them. */
export const meanOf = (source: AirSource): Twelve => {
  const range = rangeOf(source);
  if (range !== null) {
    return range.lowC.map((low, month) => low + MEAN_SHARE * ((range.highC[month] ?? Number.NaN) - low));
  }
  if (!isStation(source)) return source.meanC ?? nothing;
  return source.air?.kind === "mean" ? source.air.meanC : nothing;
};

/** From the days' low to their high, K. */
export const spanOf = (source: AirSource): Twelve => {
  const range = rangeOf(source);
  return range === null ? nothing : range.lowC.map((low, month) => (range.highC[month] ?? Number.NaN) - low);
};

/** Wind of twelve months at the height of the grid's, m/s. */
export const windOf = ({ wind }: ClimateStation): Twelve => {
  if (wind === null) return nothing;
  const share = windShareAtHeight(wind.heightM, GRID_WIND_M);
  return wind.ms.map((value) => value * share);
};

/** Lays out a table's stations and the world's places. Air of unknown height cannot be brought to another and is not asked. */
export const askedOf = (stations: readonly ClimateStation[], world: World): Asked => {
  const airy = stations.filter(({ elevationM, air }) => elevationM !== null && air !== null);
  return {
    world,
    sunshine: placesOf(stations.filter(({ light }) => light.kind === "sunshine")),
    radiation: placesOf(stations.filter(({ light }) => light.kind !== "sunshine")),
    mean: placesOf<AirSource>([...world.airPlaces, ...airy]),
    span: placesOf<AirSource>([
      ...world.airPlaces.filter(({ range }) => range !== null),
      ...airy.filter(({ air }) => air?.kind === "range"),
    ]),
    moist: placesOf(world.airPlaces.filter(({ dewC }) => dewC !== null)),
    wind: placesOf(stations.filter(({ wind }) => wind !== null)),
  };
};
