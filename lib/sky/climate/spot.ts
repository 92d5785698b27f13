import { clampedAsin, toRadians } from "../../units/angle.ts";

/** A place on the map; north and east positive. */
export interface Spot {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** A place with its height above the sea, m; `null` where it is not known. */
export interface HighSpot extends Spot {
  readonly elevationM: number | null;
}

/** Where a climate is wanted. */
export interface ClimateSite extends Spot {
  readonly elevationM: number;
  /** The height was taken from a place near, not stated: air is brought to it, but no place is chosen by it. */
  readonly heightBorrowed?: true;
}

/** Mean radius of the Earth, km (IUGG). */
export const EARTH_KM = 6371;

/** Great-circle distance in km (haversine). */
export const distanceKm = (a: Spot, b: Spot): number => {
  const [from, to] = [toRadians(a.latitudeDeg), toRadians(b.latitudeDeg)];
  const half = Math.sin((to - from) / 2) ** 2;
  const round = Math.sin(toRadians(b.longitudeDeg - a.longitudeDeg) / 2) ** 2;
  return 2 * EARTH_KM * clampedAsin(Math.sqrt(half + Math.cos(from) * Math.cos(to) * round));
};
