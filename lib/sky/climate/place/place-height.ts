import type { ClimateFrom } from "../../../plan/climate.ts";
import type { ClimateStation } from "../station.ts";
import type { ClimateTable } from "../table/climate-table.ts";
import type { ClimateSite } from "./blend.ts";
import { distanceKm } from "./choose-place.ts";
import { namedPlace } from "./find-place.ts";

/** A height above the sea, and the place that it is of. */
export interface PlaceHeight {
  readonly place: string;
  readonly elevationM: number;
}

/** Farther away a place's height says nothing of a site's. */
const HEIGHT_REACH_KM = 150;

const heightOf = ({ place, elevationM }: ClimateStation): PlaceHeight | null =>
  elevationM === null ? null : { place, elevationM };

const nearestHeight = (table: ClimateTable, spot: Omit<ClimateSite, "elevationM">): PlaceHeight | null => {
  let [found, least]: [PlaceHeight | null, number] = [null, HEIGHT_REACH_KM];
  for (const station of table.stations) {
    const away = distanceKm(station, spot);
    if (station.elevationM === null || away > least) continue;
    [found, least] = [heightOf(station), away];
  }
  return found;
};

/**
 * The height to take for a site whose plan states none: that of the place whose climate it takes by name, or of the
 * nearest place of known height within 150 km. `null` where there is no such place, or the climate is of no place.
 *
 * @throws PlanError when no place has the name
 */
export const placeHeight = (
  from: ClimateFrom,
  table: ClimateTable,
  spot: Omit<ClimateSite, "elevationM">,
): PlaceHeight | null => {
  switch (from.kind) {
    case "months":
    case "analogy":
      return null;
    case "place":
      return heightOf(namedPlace(table, from.name, spot));
    case "table":
    case "nearest":
      return nearestHeight(table, spot);
  }
};

/** What must be said of a height that was not stated: `Height above the sea: that of Denver, CO, 1650 m, ...`. */
export const heightNote = ({ place, elevationM }: PlaceHeight): string =>
  `Height above the sea: that of ${place}, ${elevationM} m, since the plan states none (site.elevationM).`;
