import { ANALOGY_KINDS, type SunshineRelation } from "../../../plan/climate.ts";
import { nearestName } from "../../../plan/nearest-name.ts";
import { PlanError } from "../../../units/problem.ts";
import { type ClimateSite, distanceKm, type Spot } from "../spot.ts";
import type { ClimateStation } from "../station.ts";
import type { ClimateTable } from "../table/climate-table.ts";
import { climateOfShares } from "./choose-place.ts";
import type { ChosenClimate } from "./chosen-climate.ts";

/**
 * Places of a table by name.
 */

/** Letters and digits only, without accents, in small letters: `Sao Paulo` finds `São-Paulo`. */
const plain = (text: string): string =>
  text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

/** How well a place answers a search, lower is better; `null` when it does not. */
const rankOf = (station: ClimateStation, search: string): number | null => {
  if (station.id.toLowerCase() === search.trim().toLowerCase()) return 0;
  const wanted = plain(search);
  if (wanted === "") return null;
  const name = plain(station.place);
  const full = plain(`${station.place} ${station.country}`);
  if (name === wanted || full === wanted) return 0;
  if (name.startsWith(`${wanted} `)) return 1;
  if (full.startsWith(wanted)) return 2;
  const parts = full.split(" ");
  if (wanted.split(" ").every((word) => parts.some((part) => part.startsWith(word)))) return 3;
  return full.includes(wanted) ? 4 : null;
};

interface Ranked {
  readonly station: ClimateStation;
  readonly rank: number;
}

const ranked = (table: ClimateTable, search: string): readonly Ranked[] =>
  table.stations
    .flatMap((station): readonly Ranked[] => {
      const rank = rankOf(station, search);
      return rank === null ? [] : [{ station, rank }];
    })
    .sort((a, b) => a.rank - b.rank || a.station.place.localeCompare(b.station.place, "en"));

/**
 * Places whose name answers a search, best first: the whole name, its beginning, every word's beginning, a part.
 * Accents, case and punctuation do not count; the country may be part of the search, and an `id` finds its row.
 *
 * @param most how many at most [10]
 */
export const findPlaces = (table: ClimateTable, search: string, most = 10): readonly ClimateStation[] =>
  ranked(table, search)
    .slice(0, most)
    .map(({ station }) => station);

/**
 * The place of a table that a name means: of equally good matches the one nearest to the site.
 *
 * @throws PlanError when no place has such a name, with the nearest name there is
 */
export const namedPlace = (table: ClimateTable, name: string, site: Spot): ClimateStation => {
  const found = ranked(table, name);
  const [nearest] = found
    .filter(({ rank }) => rank === found[0]?.rank)
    .map(({ station }) => station)
    .sort((a, b) => distanceKm(a, site) - distanceKm(b, site));
  if (nearest === undefined) {
    // A kind of climate may be meant where a place is asked for, as on the command line.
    const near = nearestName(name, [...table.stations.map((station) => station.place), ...ANALOGY_KINDS]);
    throw new PlanError([
      {
        path: "sky.from.name",
        value: name,
        allowed: "must be a place of the climate tables",
        hint:
          near === null
            ? "try a larger town nearby, or leave it out to take the nearest places"
            : `did you mean "${near}"?`,
      },
    ]);
  }
  return nearest;
};

/**
 * The climate of a named place, for a site that may lie elsewhere.
 *
 * @throws PlanError as `namedPlace`
 */
export const climateOfPlace = (
  table: ClimateTable,
  name: string,
  site: ClimateSite,
  relation: SunshineRelation = "fitted",
): ChosenClimate => {
  const nearest = namedPlace(table, name, site);
  const share = {
    station: nearest,
    distanceKm: distanceKm(nearest, site),
    heightDifferenceM: nearest.elevationM === null ? null : site.elevationM - nearest.elevationM,
    weight: 1,
  };
  return climateOfShares("named place", [share], site, relation);
};
