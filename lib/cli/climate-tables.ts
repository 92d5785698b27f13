import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import type { ClimateFrom } from "../plan/climate.ts";
import { type ClimateTable, joinTables, parseClimateTable } from "../sky/climate/table/climate-table.ts";
import { readTextFile } from "./read-file.ts";

/** The largest shipped table has a quarter of a megabyte; a user's own has a few rows. */
const LARGEST_TABLE_BYTES = 20_000_000;

/** The shipped tables, best first. Their folder lies beside `lib` and beside `dist` alike. */
const SHIPPED = ["radiation-stations", "sunshine-stations", "sunshine-stations-share-alike"] as const;

const readTable = async (path: string, name: string): Promise<ClimateTable> =>
  parseClimateTable(await readTextFile(path, LARGEST_TABLE_BYTES), name);

const readShipped = async (): Promise<ClimateTable> =>
  joinTables(
    await Promise.all(
      SHIPPED.map((name) =>
        readTable(fileURLToPath(new URL(`../../data/climates/${name}.csv`, import.meta.url)), `${name}.csv`),
      ),
    ),
  );

let shipped: Promise<ClimateTable> | null = null;

/** The shipped climate tables as one, read once. */
export const shippedClimates = (): Promise<ClimateTable> => {
  shipped ??= readShipped();
  return shipped;
};

/**
 * The places that a plan's climate is chosen among: its own table where it names one, else the shipped ones.
 *
 * @param folder what file names in the plan are relative to
 * @throws PlanError when the table can't be read or used
 */
export const planClimates = async (from: ClimateFrom, folder: string): Promise<ClimateTable> => {
  switch (from.kind) {
    case "months":
      return { stations: [] };
    case "table":
      return readTable(resolve(folder, from.file), from.file);
    default:
      return shippedClimates();
  }
};
