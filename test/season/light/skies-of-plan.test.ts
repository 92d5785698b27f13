import { describe, expect, test } from "vitest";
import { readPlan } from "../../../lib/plan/read-plan.ts";
import { skiesOfPlan } from "../../../lib/season/light/skies-of-plan.ts";
import { PlanError } from "../../../lib/units/problem.ts";
import { asCsv, madeRows, PLACE } from "../../sky/weather/weather-text.ts";

const planWith = (sky: object) =>
  readPlan({
    site: PLACE,
    season: { from: "2027-06-01", to: "2027-06-05" },
    sky: { source: "weather", file: "light.csv", ...sky },
    panels: [{ name: "panel", module: { powerW: 100 } }],
  });

const rows = madeRows({ from: "2021-06-01", days: 30, intervalMinutes: 60 });
const light = asCsv(rows);
const air = ["time_utc,air_degC", ...rows.map(({ stamp }) => `${stamp},31`)].join("\n");

describe("skiesOfPlan with a weather file", () => {
  test("lays it onto the season", () => {
    const { skies, notes } = skiesOfPlan(planWith({}), light);
    expect(skies.expected).toHaveLength(1);
    expect(skies.expected[0].sky.global.some((watts) => watts > 400)).toBe(true);
    expect(notes).toEqual([]);
  });

  test("takes air temperature from a file of its own, and asks for it", () => {
    const plan = planWith({ airFile: "air.csv" });
    const { skies } = skiesOfPlan(plan, light, undefined, air);
    expect(skies.expected[0].sky.airC.every((degrees) => Math.abs(degrees - 31) < 1e-6)).toBe(true);
    expect(() => skiesOfPlan(plan, light)).toThrow("expected the text of air.csv, received null");
    expect(() => skiesOfPlan(plan, null)).toThrow("expected the text of light.csv, received null");
  });

  test("reads columns by the names the plan gives", () => {
    const plan = planWith({ columns: { time: "when", global: "roof sensor" } });
    expect(skiesOfPlan(plan, asCsv(rows, "when,roof sensor")).skies.expected).toHaveLength(1);
    expect(() => skiesOfPlan(plan, light)).toThrow(PlanError);
  });

  test("refuses a clock that slips, unless told to take it", () => {
    const slow = asCsv(madeRows({ from: "2021-06-01", days: 30, intervalMinutes: 60, fastMinutes: -30 }));
    expect(() => skiesOfPlan(planWith({}), slow)).toThrow('set stamps to "centre"');
    expect(skiesOfPlan(planWith({ stamps: "centre" }), slow).skies.expected).toHaveLength(1);
    expect(skiesOfPlan(planWith({ checkClock: false }), slow).skies.expected).toHaveLength(1);
  });

  test("a file of two years gives two skies, each half as likely", () => {
    const twoYears = asCsv(madeRows({ from: "2020-06-01", days: 395, intervalMinutes: 60 }));
    const { skies } = skiesOfPlan(planWith({}), twoYears);
    expect(skies.expected.map(({ weight }) => weight)).toEqual([0.5, 0.5]);
  });
});
