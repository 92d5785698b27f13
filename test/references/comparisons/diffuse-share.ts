/** Diffuse share of global light against the textbook's examples and the published correlations. */
import { erbsDaily, erbsHourly, erbsMonthly } from "../../../lib/sky/diffuse-share/erbs.ts";
import { dailyExtraterrestrial } from "../../../lib/sky/extraterrestrial.ts";
import { cooperDeclinationDeg } from "../../../lib/sun/orbit.ts";
import { type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Case, type Comparison } from "./comparison.ts";
import { idOf, inputReader, numberOf } from "./fields.ts";

const rows = readReference("diffuse-share.csv");
const WH_PER_MJ = 1e6 / 3600;

const oursFor = (row: ReferenceRow): number => {
  const input = inputReader(row);
  switch (row.quantity) {
    case "diffuse_fraction":
      return erbsHourly(input("hourly_clearness"));
    case "diffuse_fraction_day":
      return erbsDaily(input("daily_clearness"), input("sunset_hour_angle_deg"));
    case "diffuse_fraction_month":
      return erbsMonthly(input("monthly_clearness"), input("sunset_hour_angle_deg"));
    case "hourly_clearness":
      return input("global_hour_MJ_per_m2") / input("extraterrestrial_hour_MJ_per_m2");
    case "daily_clearness": {
      const day = input("day_of_year");
      // The example's own distance and declination.
      const normal = input("solar_constant_W_per_m2") * (1 + 0.033 * Math.cos((2 * Math.PI * day) / 365));
      const above = dailyExtraterrestrial(input("latitude_deg"), cooperDeclinationDeg(day), normal);
      return (input("global_horizontal_daily_MJ_per_m2") * WH_PER_MJ) / above;
    }
    default:
      throw new Error(`unknown quantity ${row.quantity}`);
  }
};

const caseOf = (row: ReferenceRow): Case =>
  absolute(idOf(row), oursFor(row), numberOf(row, "expected"), numberOf(row, "tolerance"));

const isExample = (row: ReferenceRow): boolean => idOf(row).startsWith("DB");

export const diffuseShare: readonly Comparison[] = [
  {
    quantity: "clearness and diffuse share, worked examples",
    reference: "Duffie & Beckman, examples 2.11.1 and 2.15.1",
    unit: "1",
    cause: "half the last printed digit",
    count: 4,
    cases: () => rows.filter(isExample).map(caseOf),
  },
  {
    quantity: "diffuse share of hours, days and months",
    reference: "Erbs, Klein & Duffie 1982, evaluated by an independent program",
    unit: "1",
    cause: "four printed decimals",
    count: 26,
    cases: () => rows.filter((row) => !isExample(row)).map(caseOf),
  },
];
