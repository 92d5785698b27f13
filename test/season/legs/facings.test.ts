import { describe, expect, it } from "vitest";
import { type PlanInput, readPlan } from "../../../lib/plan/index.ts";
import { swapsTable } from "../../../lib/report/table/swaps-table.ts";
import { swapsSummary } from "../../../lib/report/words/swaps-summary.ts";
import {
  bestLegsOfPlan,
  legCandidates,
  legFacings,
  lyingFlat,
} from "../../../lib/season/legs/legs-answer.ts";
import { standSeason } from "../../../lib/season/legs/stand-season.ts";
import { swapsAnswer } from "../../../lib/season/legs/swaps-answer.ts";
import { totalWh } from "../../../lib/season/light/day-sums.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { facingsOf, settingsOf } from "../../../lib/season/light/settings.ts";
import { clearSkies } from "../random-plan.ts";

const planAt = (latitudeDeg: number, [from, to]: readonly [string, string], stand: PlanInput["stand"] = {}) =>
  readPlan({
    site: { latitudeDeg, longitudeDeg: 32, timeZone: "Africa/Kampala" },
    season: { from, to, stepMinutes: 60 },
    panels: [{ name: "panel", module: { powerW: 100 }, lengthMm: 1100 }],
    stand: {
      pivotMm: 700,
      cutting: { stepMm: 50 },
      legs: [
        { name: "short", lengthMm: 130 },
        { name: "long", lengthMm: 280 },
      ],
      ...stand,
    },
  });

const seasonAt = (...given: Parameters<typeof planAt>) => {
  const plan = planAt(...given);
  return standSeason(plan, clearSkies(plan), panelUnits(plan.panels));
};

const SPRING_AND_SUMMER = ["2027-04-01", "2027-08-31"] as const;
const YEAR = ["2027-01-01", "2027-12-31"] as const;

describe("facingsOf", () => {
  it("goes by where the noon sun stands in the season", () => {
    // The sun's declination reaches +23.4 in June and -23.4 in December (any almanac).
    expect(facingsOf(planAt(0.35, SPRING_AND_SUMMER))).toEqual([180, 0]);
    expect(facingsOf(planAt(12, YEAR))).toEqual([180, 0]);
    expect(facingsOf(planAt(12, ["2027-11-01", "2028-02-28"]))).toEqual([180]);
    expect(facingsOf(planAt(-12, YEAR))).toEqual([0, 180]);
    expect(facingsOf(planAt(23.3, YEAR))).toEqual([180, 0]);
    expect(facingsOf(planAt(23.7, YEAR))).toEqual([180]);
    for (const latitude of [36.78, 57.75]) expect(facingsOf(planAt(latitude, YEAR))).toEqual([180]);
    expect(facingsOf(planAt(-42.15, YEAR))).toEqual([0]);
  });

  it("keeps a facing that the plan states", () => {
    expect(facingsOf(planAt(0.35, YEAR, { facingDeg: 180 }))).toEqual([180]);
  });
});

describe("the stand near the equator, April to August", () => {
  it("the legs all faced south there, and no leg brought more: facing north brings some 9 % more than flat", () => {
    const season = seasonAt(0.35, SPRING_AND_SUMMER, { legs: [] });
    expect(season.facingDeg).toBe(0);
    const [bare, one] = bestLegsOfPlan(season, { most: 1 });
    const flatWh = totalWh(season.energy(0, 180));
    expect(bare.totalWh).toBeCloseTo(flatWh, 6);
    expect(one.totalWh / flatWh).toBeGreaterThan(1.03);
  });

  it("each leg comes facing south and facing north, flat once", () => {
    expect(settingsOf(planAt(0.35, YEAR)).map(({ name, bearingDeg }) => [name, bearingDeg])).toEqual([
      ["flat", 180],
      ["short facing south", 180],
      ["short facing north", 0],
      ["long facing south", 180],
      ["long facing north", 0],
    ]);
  });

  it("the calendar turns the stand round in those words, and its table has the bearings", () => {
    const answer = swapsAnswer(seasonAt(4, YEAR, { legs: [{ name: "only", lengthMm: 200 }] }));
    expect(swapsSummary(answer).join("\n")).toMatch(/facing north/);
    const bearings = swapsTable(answer).columns.find(({ name }) => name === "bearing_deg");
    const named = swapsTable(answer).rows.map((row) => bearings?.value(row));
    expect(new Set(named)).toEqual(new Set([0, 180]));
  });

  it("a turn on the same leg is a turn, not a change of legs", () => {
    const answer = swapsAnswer(seasonAt(12, YEAR));
    const sentences = swapsSummary(answer).join("\n");
    expect(sentences).toMatch(/turn the stand to face north on the same leg/);
  });

  it("outside the tropics the calendar's table has no bearing, as before", () => {
    const { columns } = swapsTable(swapsAnswer(seasonAt(52, SPRING_AND_SUMMER)));
    expect(columns.map(({ name }) => name)).not.toContain("bearing_deg");
  });
});

describe("best sets with facings", () => {
  it("are the best of all sets and facings tried by hand, at many places and seasons", () => {
    const seasons = [
      YEAR,
      SPRING_AND_SUMMER,
      ["2027-02-10", "2027-05-20"],
      ["2027-09-01", "2027-12-10"],
    ] as const;
    for (const latitude of [-22, -9, -1, 0.35, 6, 12, 20]) {
      for (const span of seasons) {
        const season = seasonAt(latitude, span, { legs: [], groundSlopeDeg: latitude > 5 ? 4 : 0 });
        const flat = lyingFlat(season).dayWh;
        // Every length facing every way, as a column of its own; a pair of lengths has up to four of them.
        const ways = legCandidates(season).map((leg) => legFacings(season, leg).map(({ dayWh }) => dayWh));
        const score = (columns: readonly Float64Array[]): number =>
          totalWh(flat.map((wh, day) => Math.max(wh, ...columns.map((column) => column[day]))));
        let [one, two] = [score([]), score([])];
        ways.forEach((a, i) => {
          one = Math.max(one, score(a));
          for (const b of ways.slice(i + 1)) two = Math.max(two, score([...a, ...b]));
        });
        const sets = bestLegsOfPlan(season, { most: 2 });
        const totalOf = (size: number) => sets.findLast(({ legs }) => legs.length <= size)?.totalWh ?? 0;
        expect(totalOf(1) / one).toBeCloseTo(1, 11);
        expect(totalOf(2) / Math.max(one, two)).toBeCloseTo(1, 11);
      }
    }
  });
});
