import { ANALOGY_KINDS, type SunshineRelation } from "../../../plan/climate.ts";
import { PlanError } from "../../../units/problem.ts";
import type { Climate } from "../climate.ts";
import { dayMemory, PUBLISHED_DAY_MEMORY } from "../day-memory.ts";
import type { ClimateSite } from "../spot.ts";
import { distanceKm } from "../spot.ts";
import type { ClimateStation, StationSource } from "../station.ts";
import type { ClimateTable } from "../table/climate-table.ts";
import { climateAnywhere } from "../world/climate-anywhere.ts";
import type { Influence } from "../world/light-anywhere.ts";
import type { World } from "../world.ts";
import { blendClimate, type PlaceShare } from "./blend.ts";
import { type ChosenClimate, placeLine } from "./chosen-climate.ts";

/**
 * Which places speak for a site: the nearest, weighed by distance, height and kind of source.
 */

/*
 * The numbers below were chosen by leaving out each radiation station in turn (`npm run validate:climate` prints the
 * table): four places beat one (12 % against 14 % a month), more add little, and neither the height's weight nor the
 * power of the distance matters much.
 */
const PLACES = 4;
const LEAST_SHARE = 0.1;
/** A hundred metres of height count like ten kilometres of way. */
const KM_PER_KM_OF_HEIGHT = 100;
/** Where a station's height is not known, it may well differ by as much as this. */
const UNKNOWN_HEIGHT_KM = 0.2;
/** Nearer than this is all alike. */
const NEAR_KM = 50;
const TRUST: Readonly<Record<StationSource, number>> = {
  normal: 1,
  "typical year": 1,
  "own table": 1,
  "measured year": 0.5,
  sunshine: 0.5,
};

/** Beyond these the answer carries a warning, and beyond the last there is none. */
const FAR_KM = 150;
const FAR_HEIGHT_M = 300;
const TOO_FAR_KM = 700;

/** Uncertainty that distance adds to a month and a year, for each 100 km; measured as above. */
const MONTH_UNCERTAINTY_PER_100_KM = 0.015;
const YEAR_UNCERTAINTY_PER_100_KM = 0.006;

interface Neighbour {
  readonly station: ClimateStation;
  readonly distanceKm: number;
  readonly heightDifferenceM: number | null;
  /** Distance with the height in it. */
  readonly effectiveKm: number;
}

const neighbourOf = (station: ClimateStation, site: ClimateSite): Neighbour => {
  const away = distanceKm(station, site);
  const heightDifferenceM = station.elevationM === null ? null : site.elevationM - station.elevationM;
  // A height that was borrowed from one of the places would choose that place again.
  const heightKm =
    heightDifferenceM === null || site.heightBorrowed === true ? UNKNOWN_HEIGHT_KM : heightDifferenceM / 1000;
  return {
    station,
    distanceKm: away,
    heightDifferenceM,
    effectiveKm: Math.hypot(away, heightKm * KM_PER_KM_OF_HEIGHT),
  };
};

const pullOf = ({ station, effectiveKm }: Neighbour): number =>
  TRUST[station.source] / Math.max(NEAR_KM, effectiveKm) ** 2;

/**
 * The places of a table that pull on a site, most important first: at most four, with their shares.
 * A place without a share of a tenth or more is left out: it would hardly move the answer and only lengthen its words.
 */
export const nearestPlaces = (
  table: ClimateTable,
  site: ClimateSite,
  howMany = PLACES,
): readonly PlaceShare[] => {
  const nearest = table.stations
    .map((station) => neighbourOf(station, site))
    .sort((a, b) => pullOf(b) - pullOf(a))
    .slice(0, howMany);
  const all = nearest.reduce((sum, neighbour) => sum + pullOf(neighbour), 0);
  const kept = nearest.filter((neighbour) => pullOf(neighbour) >= LEAST_SHARE * all);
  const sum = kept.reduce((total, neighbour) => total + pullOf(neighbour), 0);
  return kept.map((neighbour) => ({
    station: neighbour.station,
    distanceKm: neighbour.distanceKm,
    heightDifferenceM: neighbour.heightDifferenceM,
    weight: pullOf(neighbour) / sum,
  }));
};

const withDistance = (climate: Climate, effectiveKm: number): Climate => {
  const hundreds = Math.max(0, effectiveKm - NEAR_KM) / 100;
  return {
    ...climate,
    uncertainty: {
      month: climate.uncertainty.month.map((uncertainty) =>
        Math.hypot(uncertainty, MONTH_UNCERTAINTY_PER_100_KM * hundreds),
      ),
      year: Math.hypot(climate.uncertainty.year, YEAR_UNCERTAINTY_PER_100_KM * hundreds),
    },
  };
};

const sourceWarnings = (shares: readonly PlaceShare[], latitudeDeg: number): readonly string[] => {
  const fromSunshine = shares.reduce(
    (sum, { station, weight }) => sum + (station.light.kind === "sunshine" ? weight : 0),
    0,
  );
  if (fromSunshine < 0.2) return [];
  const part = fromSunshine > 0.8 ? "The light is" : "Part of the light is";
  return [
    `${part} estimated from hours of sunshine.`,
    ...(latitudeDeg < 25 ? ["Such estimates are hardly tested in the tropics and the south."] : []),
  ];
};

const distanceWarnings = (
  shares: readonly PlaceShare[],
  { heightBorrowed }: ClimateSite,
): readonly string[] => {
  const near = Math.min(...shares.map((share) => share.distanceKm));
  const height = shares.reduce(
    (sum, { heightDifferenceM, weight }) => sum + weight * Math.abs(heightDifferenceM ?? 0),
    0,
  );
  return [
    ...(near > FAR_KM
      ? [`The nearest place is ${Math.round(near)} km away: too far to trust near mountains and coasts.`]
      : []),
    ...(heightBorrowed !== true && height > FAR_HEIGHT_M
      ? [`The site is ${Math.round(height)} m above or below the places: cloud may differ much.`]
      : []),
    ...(shares.every(({ station: { air, elevationM } }) => air !== null && elevationM === null)
      ? [
          "The height of the places is not known: the air is theirs, 6.5 degC too warm for each 1000 m they lie lower.",
        ]
      : []),
  ];
};

/** The climate that given places make, with its warnings and the uncertainty that distance adds. */
export const climateOfShares = (
  kind: "nearest places" | "named place",
  shares: readonly PlaceShare[],
  site: ClimateSite,
  relation: SunshineRelation,
): ChosenClimate => {
  const effectiveKm = shares.reduce(
    (sum, { station, weight }) => sum + weight * neighbourOf(station, site).effectiveKm,
    0,
  );
  return {
    kind,
    climate: withDistance(blendClimate(shares, site, relation), effectiveKm),
    shares,
    says: shares.map(placeLine).join("; "),
    warnings: [...distanceWarnings(shares, site), ...sourceWarnings(shares, site.latitudeDeg)],
  };
};

/** Places named at most, and the least part of what all say that is worth a name. */
const NAMED = { most: PLACES, share: LEAST_SHARE } as const;

/** Places that spoke most for a site, nearest first; their parts are of what the named ones say. */
const namedShares = (influences: readonly Influence[], site: ClimateSite): readonly PlaceShare[] => {
  const spoke = influences.filter(({ weight, distanceKm: away }) => weight > 0 && away <= TOO_FAR_KM);
  const all = spoke.reduce((sum, { weight }) => sum + weight, 0);
  const named = spoke.slice(0, NAMED.most).filter(({ weight }) => weight >= NAMED.share * all);
  const sum = named.reduce((total, { weight }) => total + weight, 0);
  // For people the nearest comes first, whoever weighs most.
  return named
    .toSorted((a, b) => a.distanceKm - b.distanceKm)
    .map(({ station, distanceKm: away, weight }) => ({
      station,
      distanceKm: away,
      heightDifferenceM: station.elevationM === null ? null : site.elevationM - station.elevationM,
      weight: weight / sum,
    }));
};

/** The climate of a site from all that is known: field, places near, world. */
const climateFromWorld = (table: ClimateTable, world: World, site: ClimateSite): ChosenClimate => {
  const { climate, influences } = climateAnywhere(table, world, site);
  const shares = namedShares(influences, site);
  const places = shares.map(placeLine).join("; ");
  return {
    kind: "nearest places",
    climate: {
      ...climate,
      dayMemory:
        shares.length === 0
          ? PUBLISHED_DAY_MEMORY
          : shares.reduce((sum, { station, weight }) => sum + weight * dayMemory(station.dayMemory), 0),
    },
    shares,
    says: shares.length === 0 ? "a world grid, some 300 km fine" : `${places}; and a world grid`,
    warnings:
      shares.length === 0
        ? [`No place is within ${TOO_FAR_KM} km: coasts, islands and mountains have a climate of their own.`]
        : [...distanceWarnings(shares, site), ...sourceWarnings(shares, site.latitudeDeg)],
  };
};

/**
 * The climate of a site from the places of a table: with what is known of the world where the table has it, else from the
 * nearest alone.
 *
 * @param relation how sunshine is read [fitted]; with the published constants the nearest places speak alone
 * @throws PlanError when the table knows nothing of the world and no place is within 700 km, naming the climates by analogy
 */
export const climateNear = (
  table: ClimateTable,
  site: ClimateSite,
  relation: SunshineRelation = "fitted",
): ChosenClimate => {
  if (table.world !== undefined && relation === "fitted") return climateFromWorld(table, table.world, site);
  const shares = nearestPlaces(table, site);
  const nearest = Math.min(...shares.map((share) => share.distanceKm));
  if (!(nearest <= TOO_FAR_KM)) {
    throw new PlanError([
      {
        path: "sky",
        value: `nearest place ${Number.isFinite(nearest) ? `${Math.round(nearest)} km away` : "none"}`,
        allowed: `must have a place with a climate within ${TOO_FAR_KM} km of the site`,
        hint: `name a climate by analogy: ${ANALOGY_KINDS.join(", ")}; or give twelve numbers of your own`,
      },
    ]);
  }
  return climateOfShares("nearest places", shares, site, relation);
};
