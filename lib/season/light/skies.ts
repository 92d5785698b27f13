import type { SkyToPlane } from "../../plan/sky.ts";
import { type DomeColumns, domeColumns } from "../../plane/dome-columns.ts";
import { behindSkyline, type HorizonPoint } from "../../plane/horizon.ts";
import type { SkyColumns } from "../../sky/columns.ts";
import type { SunColumns } from "../../sun/columns.ts";

/** One possible sky of a season, and how much it counts among the others. */
export interface WeightedSky {
  /** Share of this sky, above 0; the shares of a season sum to 1. */
  readonly weight: number;
  readonly sky: SkyColumns;
  /** Air on every step of the season's whole days, night too, degC, where the sky's source knows it. */
  readonly stepAirC?: Float64Array;
}

/** A sky sorted by where its light comes from, ready for any number of aims. */
export interface ReadySky extends WeightedSky {
  readonly dome: DomeColumns;
}

/** The skies of a season: the clear one, which bounds, and those to be expected (none when only the clear one is known). */
export interface SeasonSkies {
  readonly sun: SunColumns;
  readonly clear: ReadySky;
  readonly expected: readonly ReadySky[];
}

/**
 * Sorts the light of every sky once, so that all aims share it.
 *
 * @param skyline what stands round the site: bearing and altitude pairs [none, a level horizon]
 */
export const readySkies = (
  sun: SunColumns,
  clear: SkyColumns,
  expected: readonly WeightedSky[],
  toPlane: SkyToPlane = "perez",
  skyline: readonly HorizonPoint[] = [],
): SeasonSkies => {
  const shaded = behindSkyline(sun, skyline);
  const ready = (one: WeightedSky): ReadySky => ({
    ...one,
    dome: shaded(one.sky, domeColumns(sun, one.sky, toPlane)),
  });
  return { sun, clear: ready({ weight: 1, sky: clear }), expected: expected.map(ready) };
};
