import type { ClimateFrom } from "../../../lib/plan/climate.ts";
import {
  type ClimateTable,
  joinTables,
  parseClimateTable,
} from "../../../lib/sky/climate/table/climate-table.ts";
import { PlanError } from "../../../lib/units/problem.ts";
import { weatherText } from "../weather/files.ts";
import { unpacked } from "../weather/unpack.ts";

/** The shipped climate tables, loaded when a plan first asks for one. */
const FILES = import.meta.glob<string>("../../../data/climates/*.csv", {
  query: "?packed",
  import: "default",
});

const nameOf = (path: string): string => path.slice(path.lastIndexOf("/") + 1);

const readShipped = async (): Promise<ClimateTable> =>
  joinTables(
    await Promise.all(
      Object.entries(FILES).map(async ([path, load]) =>
        parseClimateTable(await unpacked(await load()), nameOf(path)),
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
