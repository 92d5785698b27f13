/**
 * A climate for any coordinates on Earth: light, air and wind, from a table's places and what is known of the world.
 */
import type { Climate } from "../climate.ts";
import { MEAN_SHARE } from "../day-temperature.ts";
import { LEAST_EXTRATERRESTRIAL_KWH_M2, monthSuns } from "../month-sun.ts";
import type { ClimateSite } from "../spot.ts";
import type { ClimateTable } from "../table/climate-table.ts";
import type { World } from "../world.ts";
import { airAnywhere, type Without, windAnywhere } from "./air-anywhere.ts";
import { type Asked, askedOf } from "./asked.ts";
import { columnWaterCm } from "./column-water.ts";
import { type Influence, lightAnywhere } from "./light-anywhere.ts";

const laidOut = new WeakMap<ClimateTable, Asked>();

/** A table's places laid out for searching; once a table. */
const askedIn = (table: ClimateTable, world: World): Asked => {
  const before = laidOut.get(table);
  if (before !== undefined) return before;
  const asked = askedOf(table.stations, world);
  laidOut.set(table, asked);
  return asked;
};

/** A climate but for how its days follow each other, and who spoke for its light. */
export interface ClimateAnywhere {
  readonly climate: Omit<Climate, "dayMemory">;
  readonly influences: readonly Influence[];
}

/** No month anywhere is clearer (common knowledge, no source). */
const MOST_CLEARNESS = 0.88;
/**
 * Beyond this latitude the one station of whole years is told better with the standard air's water (daily clearness: 0.082 against
 * 0.084; 0.143 against 0.114 on a tropical island), so nothing is told there.
 */
const POLAR_DEG = 66;
/** Wind is stated at this height, m. */
const WIND_HEIGHT_M = 10;

/**
 * The climate of any place on Earth.
 *
 * @param world what is known of the whole Earth
 * @param without stations that are not asked [none]
 */
export const climateAnywhere = (
  table: ClimateTable,
  world: World,
  site: ClimateSite,
  without?: Without,
): ClimateAnywhere => {
  const asked = askedIn(table, world);
  const { clearness, uncertainty, influences } = lightAnywhere(asked, site, without);
  const { lowC, highC, vapourHPa } = airAnywhere(asked, site, without);
  return {
    climate: {
      globalKWhM2: monthSuns(site.latitudeDeg).map(({ extraterrestrialKWhM2 }, month) =>
        extraterrestrialKWhM2 < LEAST_EXTRATERRESTRIAL_KWH_M2
          ? 0
          : Math.min(MOST_CLEARNESS, clearness[month] ?? Number.NaN) * extraterrestrialKWhM2,
      ),
      air: { lowC, highC },
      wind: { ms: windAnywhere(asked, site, without), heightM: WIND_HEIGHT_M },
      ...(Math.abs(site.latitudeDeg) > POLAR_DEG
        ? {}
        : {
            waterCm: vapourHPa.map((vapour, month) => {
              const low = lowC[month] ?? Number.NaN;
              return columnWaterCm(low + MEAN_SHARE * ((highC[month] ?? Number.NaN) - low), vapour);
            }),
          }),
      uncertainty,
    },
    influences,
  };
};
