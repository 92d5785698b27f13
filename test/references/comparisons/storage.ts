/** Storage sizing against worksheets and a textbook. */
import { capacityShare } from "../../../lib/circuit/chemistry.ts";
import { dailyAh, storageDays95, storageWh } from "../../../lib/circuit/sizing.ts";
import { batterySchema } from "../../../lib/plan/battery.ts";
import { type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Case, type Comparison } from "./comparison.ts";
import { idOf, inputReader, numberOf } from "./fields.ts";

const rows = readReference("battery-sizing.csv");

const rowsOf = (...prefixes: readonly string[]): readonly ReferenceRow[] =>
  rows.filter((row) => prefixes.some((prefix) => idOf(row).startsWith(prefix)));

const asTolerated = (row: ReferenceRow, ours: number): Case =>
  absolute(idOf(row), ours, numberOf(row, "expected"), numberOf(row, "tolerance"));

const worksheetWh = (row: ReferenceRow): number => {
  const input = inputReader(row);
  return storageWh({
    loadWhPerDay: input("load_Wh_per_day"),
    days: input("days"),
    usableShare: input("depth_of_discharge"),
    capacityShare: 1 / input("temperature_multiplier"),
  });
};

export const storage: readonly Comparison[] = [
  {
    quantity: "lead-acid capacity multiplier in the cold",
    reference: "two battery sizing worksheets",
    unit: "1",
    cause: "two printed decimals, and temperatures rounded from degF",
    count: 5,
    cases: () =>
      rowsOf("TEMP-").map((row) => asTolerated(row, 1 / capacityShare("AGM", inputReader(row)("ambient_C")))),
  },
  {
    quantity: "storage to buy",
    reference: "simplified worksheet",
    unit: "Wh",
    cause: "none: the worksheet prints whole watt-hours (a millionth for the last bit)",
    count: 1,
    cases: () =>
      rowsOf("IEEE-Wh").map((row) => absolute(idOf(row), worksheetWh(row), numberOf(row, "expected"), 1e-6)),
  },
  {
    quantity: "storage to buy",
    reference: "simplified worksheet, in ampere-hours",
    unit: "Ah",
    cause: "one printed decimal",
    count: 1,
    cases: () =>
      rowsOf("IEEE-Ah").map((row) => asTolerated(row, worksheetWh(row) / inputReader(row)("system_V"))),
  },
  {
    quantity: "daily charge through an inverter",
    reference: "Masters 2004, chapter 9",
    unit: "Ah",
    cause: "whole ampere-hours printed",
    count: 1,
    cases: () =>
      rowsOf("MAS9-Ah").map((row) => {
        const input = inputReader(row);
        return asTolerated(
          row,
          dailyAh(input("ac_load_Wh_per_day"), input("inverter_efficiency"), input("system_V")),
        );
      }),
  },
  {
    quantity: "storage days for 95 %",
    reference: "Masters 2004, fit to Sandia 1995",
    unit: "d",
    cause: "one printed decimal in the book's example, two in the evaluated rows",
    count: 4,
    cases: () =>
      rowsOf("MAS9-D95", "D95-").map((row) =>
        asTolerated(row, storageDays95(inputReader(row)("peak_sun_hours"))),
      ),
  },
  {
    quantity: "round trip of a flooded lead-acid battery, our default",
    reference: "a battery handbook, as quoted",
    unit: "1",
    cause:
      "the source's own spread; its charge (Ah) efficiencies have no counterpart here, where energy is counted",
    count: 1,
    cases: () =>
      rowsOf("EFF-PbWh").map((row) => {
        const battery = batterySchema.parse({ chemistry: "flooded" });
        return asTolerated(row, (battery.chargeEfficiencyPct * battery.dischargeEfficiencyPct) / 1e4);
      }),
  },
];
