import type { ClimateFrom } from "../../../lib/plan/climate.ts";
import { type ClimateTable, parseClimateTable } from "../../../lib/sky/climate/table/climate-table.ts";
import { type ShippedFile, shippedTable } from "../../../lib/sky/climate/world/shipped-climates.ts";
import { PlanError } from "../../../lib/units/problem.ts";
import { weatherText } from "../weather/files.ts";
import { turnedBack } from "../weather/turn-back.ts";
import { unpacked } from "../weather/unpack.ts";

/** The shipped climate tables, loaded when a plan first asks for one. */
const FILES = import.meta.glob<string>("../../../data/climates/*.csv", {
  query: "?packed",
  import: "default",
});

const readShipped = async (file: ShippedFile): Promise<string> => {
  const load = FILES[`../../../data/climates/${file}.csv`];
  if (load === undefined) throw new RangeError(`shippedClimates: expected a shipped file, received ${file}`);
  return turnedBack(await unpacked(await load()));
};

let shipped: Promise<ClimateTable> | null = null;

/** The shipped climates as one table, with the world; read once. */
export const shippedClimates = (): Promise<ClimateTable> => {
  shipped ??= shippedTable(readShipped);
  return shipped;
};

/**
 * The places that a plan's climate is chosen among: a table the person has opened, else the shipped ones.
 *
 * @throws PlanError when the plan names a table that has not been opened, or that cannot be used
 */
export const planClimates = async (from: ClimateFrom): Promise<ClimateTable> => {
  if (from.kind === "months") return { stations: [] };
  if (from.kind !== "table") return shippedClimates();
  const text = await weatherText(from.file);
  if (text === null) {
    throw new PlanError([
      {
        path: "sky.from.file",
        value: from.file,
        allowed: "must be a climate table that has been opened here",
        hint: "open it under Sky",
      },
    ]);
  }
  return parseClimateTable(text, from.file);
};
