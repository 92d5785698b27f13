import { resolve } from "node:path";
import { fileURLToPath } from "node:url";
import type { ClimateFrom } from "../plan/climate.ts";
import { type ClimateTable, parseClimateTable } from "../sky/climate/table/climate-table.ts";
import { type ShippedFile, shippedTable } from "../sky/climate/world/shipped-climates.ts";
import { readTextFile } from "./read-file.ts";

/** The largest shipped table has a quarter of a megabyte; a user's own has a few rows. */
const LARGEST_TABLE_BYTES = 20_000_000;

/** The folder of the shipped tables lies beside `lib` and beside `dist` alike. */
const readShipped = (file: ShippedFile): Promise<string> =>
  readTextFile(
    fileURLToPath(new URL(`../../data/climates/${file}.csv`, import.meta.url)),
    LARGEST_TABLE_BYTES,
  );

let shipped: Promise<ClimateTable> | null = null;

/** The shipped climates as one table, with the world; read once. */
export const shippedClimates = (): Promise<ClimateTable> => {
  shipped ??= shippedTable(readShipped);
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
      return parseClimateTable(
        await readTextFile(resolve(folder, from.file), LARGEST_TABLE_BYTES),
        from.file,
      );
    default:
      return shippedClimates();
  }
};
