import { readFileSync } from "node:fs";
import type { ClimateTable } from "../../../lib/sky/climate/table/climate-table.ts";
import { shippedTable } from "../../../lib/sky/climate/world/shipped-climates.ts";

export const shippedText = (name: string): string =>
  readFileSync(new URL(`../../../data/climates/${name}.csv`, import.meta.url), "utf8");

/** The shipped climates with the world, as the command line has them. */
export const shipped: ClimateTable = await shippedTable(async (name) => shippedText(name));

/** The same places, the world left out: the nearest speak alone. */
export const placesAlone: ClimateTable = { stations: shipped.stations };
