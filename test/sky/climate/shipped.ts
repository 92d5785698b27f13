import { readFileSync } from "node:fs";
import {
  type ClimateTable,
  joinTables,
  parseClimateTable,
} from "../../../lib/sky/climate/table/climate-table.ts";

export const shippedText = (name: string): string =>
  readFileSync(new URL(`../../../data/climates/${name}.csv`, import.meta.url), "utf8");

/** The shipped tables, best first, as the command line joins them. */
export const shipped: ClimateTable = joinTables(
  ["radiation-stations", "sunshine-stations", "sunshine-stations-share-alike"].map((name) =>
    parseClimateTable(shippedText(name), `${name}.csv`),
  ),
);
