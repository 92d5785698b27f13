import { type ClimateTable, joinTables, parseCheckedTable } from "../table/climate-table.ts";
import { parseWorld } from "./parse-world.ts";

/** The shipped tables of places with light, best first. */
export const LIGHT_TABLES = [
  "radiation-stations",
  "radiation-normals",
  "sunshine-stations",
  "sunshine-normals",
  "sunshine-stations-share-alike",
] as const;

/** The shipped tables of places whose air is known. */
const AIR_TABLES = ["air-normals", "air-typical-years"] as const;

/** A shipped file, by its name without `.csv`. */
export type ShippedFile =
  | (typeof LIGHT_TABLES)[number]
  | (typeof AIR_TABLES)[number]
  | "world-clearness"
  | "world-air";

/**
 * The shipped climates as one table, with what is known of the world.
 *
 * @param textOf brings the text of a shipped file
 */
export const shippedTable = async (textOf: (file: ShippedFile) => Promise<string>): Promise<ClimateTable> => {
  const [light, air, clearness, grid] = await Promise.all([
    Promise.all(LIGHT_TABLES.map(async (file) => parseCheckedTable(await textOf(file), `${file}.csv`))),
    Promise.all(AIR_TABLES.map(textOf)),
    textOf("world-clearness"),
    textOf("world-air"),
  ]);
  return { ...joinTables(light), world: parseWorld({ clearness, air: grid, airPlaces: air }) };
};
