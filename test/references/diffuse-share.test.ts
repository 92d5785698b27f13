/**
 * Published diffuse shares: the textbook's examples to their rounding, and a grid of the published correlations
 * evaluated by an independent program (tolerance 0.0001: its last digit).
 */
import { describe, expect, test } from "vitest";
import { erbsDaily, erbsHourly, erbsMonthly } from "../../lib/sky/diffuse-share/erbs.ts";
import { dailyExtraterrestrial } from "../../lib/sky/extraterrestrial.ts";
import { cooperDeclinationDeg } from "../../lib/sun/orbit.ts";
import { inputsOf, type ReferenceRow, readReference } from "./read.ts";

const WH_PER_MJ = 1e6 / 3600;

const computed = (row: ReferenceRow): number => {
  const inputs = inputsOf(row);
  const value = (key: string): number => Number(inputs[key]);
  switch (row.quantity) {
    case "diffuse_fraction":
      return erbsHourly(value("hourly_clearness"));
    case "diffuse_fraction_day":
      return erbsDaily(value("daily_clearness"), value("sunset_hour_angle_deg"));
    case "diffuse_fraction_month":
      return erbsMonthly(value("monthly_clearness"), value("sunset_hour_angle_deg"));
    case "hourly_clearness":
      return value("global_hour_MJ_per_m2") / value("extraterrestrial_hour_MJ_per_m2");
    case "daily_clearness": {
      const day = value("day_of_year");
      const normal = value("solar_constant_W_per_m2") * (1 + 0.033 * Math.cos((2 * Math.PI * day) / 365));
      const above = dailyExtraterrestrial(value("latitude_deg"), cooperDeclinationDeg(day), normal);
      return value("global_horizontal_daily_MJ_per_m2") / (above / WH_PER_MJ);
    }
    default:
      throw new Error(`unknown quantity ${row.quantity}`);
  }
};

describe("diffuse share against published values", () => {
  const rows = readReference("diffuse-share.csv");

  test("every case is here", () => {
    expect(rows).toHaveLength(30);
  });

  test.each(rows.map((row) => [row.case_id, row] as const))("%s", (_, row) => {
    expect(Math.abs(computed(row) - Number(row.expected))).toBeLessThanOrEqual(Number(row.tolerance));
  });
});
