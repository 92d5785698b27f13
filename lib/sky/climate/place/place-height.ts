import type { ClimateFrom } from "../../../plan/climate.ts";
import { distanceKm, type Spot } from "../spot.ts";
import type { ClimateTable } from "../table/climate-table.ts";
import { namedPlace } from "./find-place.ts";

/** A height above the sea, and the place that it is of. */
export interface PlaceHeight {
  readonly place: string;
  readonly elevationM: number;
  /** Lowest and highest of the near places that it was chosen among. */
  readonly among: readonly [number, number];
}

/** Farther away a place's height says nothing of a site's. */
const HEIGHT_REACH_KM = 150;
/**
 * The middle one of so many: of 964 shipped places with a neighbour within reach, 146 are off by 300 m or more so, 162 by the
 * nearest alone; a summit's observatory speaks for few.
 */
const NEAREST_HEIGHTS = 3;
/** Near places that differ by more leave the height open. */
const OPEN_HEIGHT_M = 300;

interface KnownHeight {
  readonly place: string;
  readonly elevationM: number;
  readonly awayKm: number;
}

const knownHeights = (table: ClimateTable, spot: Spot): readonly KnownHeight[] =>
  table.stations.flatMap((station): readonly KnownHeight[] => {
    const { place, elevationM } = station;
    const awayKm = distanceKm(station, spot);
    return elevationM === null || awayKm > HEIGHT_REACH_KM ? [] : [{ place, elevationM, awayKm }];
  });

const heightNear = (table: ClimateTable, spot: Spot): PlaceHeight | null => {
  const nearest = [...knownHeights(table, spot)]
    .sort((a, b) => a.awayKm - b.awayKm)
    .slice(0, NEAREST_HEIGHTS)
    .sort((a, b) => a.elevationM - b.elevationM);
  // Of two the lower: people stay in valleys.
  const middle = nearest[Math.floor((nearest.length - 1) / 2)];
  if (middle === undefined) return null;
  const heights = nearest.map(({ elevationM }) => elevationM);
  const { place, elevationM } = middle;
  return { place, elevationM, among: [Math.min(...heights), Math.max(...heights)] };
};

/**
 * The height to take for a site whose plan states none: that of the place whose climate it takes by name, else the middle one
 * of the three places of known height nearest to it, within 150 km. `null` where there is no such place, or the climate is of
 * no place.
 *
 * @throws PlanError when no place has the name
 */
export const placeHeight = (from: ClimateFrom, table: ClimateTable, spot: Spot): PlaceHeight | null => {
  switch (from.kind) {
    case "months":
    case "analogy":
      return null;
    case "place": {
      const named = namedPlace(table, from.name, spot);
      const { place, elevationM } = named;
      return elevationM === null
        ? heightNear(table, named)
        : { place, elevationM, among: [elevationM, elevationM] };
    }
    case "table":
    case "nearest":
      return heightNear(table, spot);
  }
};

/**
 * What must be said of a height that was not stated: which was taken and why, and that it must be stated where near places
 * differ by more than 300 m or none is known.
 *
 * @param stateIt how to state it, `site.elevationM`
 */
export const heightNote = (height: PlaceHeight | null, stateIt = "site.elevationM"): string => {
  if (height === null) {
    return `Height above the sea: not stated, and no place near tells one; sea level was taken. State it (${stateIt}): each 1000 m up the air is 6.5 degC cooler and clear light some 3 % stronger.`;
  }
  const { place, elevationM, among } = height;
  const [lowest, highest] = among;
  const taken = `Height above the sea: not stated; that of ${place} was taken, ${elevationM} m`;
  return highest - lowest > OPEN_HEIGHT_M
    ? `${taken}. Places near lie from ${lowest} to ${highest} m: state yours (${stateIt}).`
    : `${taken} (${stateIt} states another).`;
};
