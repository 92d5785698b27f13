import { parseHTML } from "linkedom";
import { beforeAll, describe, expect, test } from "vitest";
import { type Plan, type PlanInput, readPlan } from "../../lib/plan/index.ts";
import {
  aimCard,
  aimGainChart,
  aimsHeadline,
  aimsSummary,
  aimsTable,
  cardPlace,
  csvText,
  dialBearings,
  sunPathChart,
  walkWords,
} from "../../lib/report/index.ts";
import { panelUnits, type Reaim, reaim, skiesOfPlan } from "../../lib/season/index.ts";

const planWith = (changes: Partial<PlanInput> = {}): Plan =>
  readPlan({
    site: {
      latitudeDeg: 52,
      longitudeDeg: 5,
      timeZone: "Europe/Amsterdam",
      horizon: [
        { bearingDeg: 60, altitudeDeg: 0 },
        { bearingDeg: 90, altitudeDeg: 20 },
        { bearingDeg: 120, altitudeDeg: 0 },
      ],
    },
    season: { from: "2027-03-10", to: "2027-05-05", stepMinutes: 30 },
    panels: [{ name: "propped", module: { powerW: 100 } }],
    stand: {
      pivotMm: 760,
      legs: [
        { name: "short", lengthMm: 300 },
        { name: "long", lengthMm: 760 },
      ],
    },
    aiming: { bearingStepDeg: 15 },
    ...changes,
  });

const answerOf = (plan: Plan) => {
  const { skies } = skiesOfPlan(plan, null);
  return { answer: reaim(plan, skies, panelUnits(plan.panels)), place: cardPlace(plan.site, skies.sun.days) };
};

const frameOf = (width: number) => ({
  document: parseHTML("<!doctype html><html><body></body></html>").document,
  width,
});

const plan = planWith();
let answer: Reaim;
let place: ReturnType<typeof cardPlace>;
beforeAll(() => {
  ({ answer, place } = answerOf(plan));
});

describe("aimGainChart", () => {
  test.each([960, 360])("has a bar for every month and routine at %i px, and a name", (width) => {
    const svg = aimGainChart(answer, frameOf(width));
    expect(svg.getAttribute("aria-label")).toBe("Clear-sky watt-hours a day by number of aims");
    expect(svg.querySelectorAll("[data-marks=bar] rect")).toHaveLength(3 * 5);
    expect(svg.outerHTML).not.toContain("NaN");
    expect(svg.textContent).toContain("facing the sun");
  });
});

describe("sunPathChart", () => {
  test.each([960, 360])("draws path, skyline and a ring for each aim at %i px", (width) => {
    const [, , april] = answer.periods;
    const svg = sunPathChart(place, april.period, april.routines[2], plan.site.horizon, frameOf(width));
    expect(svg.outerHTML).not.toContain("NaN");
    expect(svg.querySelectorAll("[data-marks=area] path").length).toBeGreaterThan(0);
    for (const { setting } of april.routines[2].parts) expect(svg.textContent).toContain(setting.name);
    expect(svg.textContent).toContain("13:00");
  });

  test("says so in polar night", () => {
    const dark = planWith({
      site: { latitudeDeg: 78, longitudeDeg: 15, timeZone: "Arctic/Longyearbyen" },
      season: { from: "2027-12-01", to: "2027-12-20", stepMinutes: 30 },
    });
    const night = answerOf(dark);
    const [season] = night.answer.periods;
    const svg = sunPathChart(night.place, season.period, season.routines[0], [], frameOf(960));
    expect(svg.textContent).toContain("The sun stays down all day.");
    expect(svg.outerHTML).not.toContain("NaN");
    const words = [
      ...aimsSummary(night.answer, night.place, 2),
      JSON.stringify(aimsHeadline(night.answer)),
    ].join(" ");
    expect(words).toContain("The sun stays down all season");
    expect(words).not.toMatch(/NaN|Infinity/);
    expect(csvText(aimsTable(night.answer, night.place))).not.toMatch(/NaN|Infinity/);
  });
});

describe("aimCard", () => {
  test("tells leg, hour, compass, shadow and sun for each aim", () => {
    const [, , april] = answer.periods;
    const lines = aimCard(place, april.period, april.routines[1]);
    expect(lines).toHaveLength(2);
    expect(lines[0].when).toBe("the evening before, or before sunrise");
    expect(lines[0].bySun).toBeNull();
    expect(lines[1].when).toMatch(/^1[34]:\d[05]$/);
    expect(lines[1].bySun).toMatch(/^Face the panel \d+° to the right of the sun/);
    for (const line of lines) {
      expect(line.compass).toMatch(/^\d+° by compass/);
      expect(line.byShadow).toMatch(/that is true south/);
      // The needle points 3 degrees east of true north there.
      expect((line.setting.bearingDeg - (line.compassDeg ?? 0) + 360) % 360).toBeCloseTo(2.9, 0);
    }
  });

  test("tells two clock times in a month in which the clocks change", () => {
    const [, march, april] = answer.periods;
    expect(walkWords(place, march.period, 0)).toBe("12:50, from 28 March 2027 13:45");
    expect(walkWords(place, april.period, 0)).toBe("13:40");
  });

  test("names the dial's bearings after the season's routine", () => {
    const wanted = dialBearings(answer, 2);
    expect(wanted.map(({ name }) => name.slice(0, 2))).toEqual(["1 ", "2 "]);
    expect(wanted[0].bearingDeg).toBeLessThan(180);
    expect(wanted[1].bearingDeg).toBeGreaterThan(180);
  });
});

describe("aimsTable", () => {
  test("has for each period noon, each routine's aims, and the limit", () => {
    const { rows, key } = aimsTable(answer, place);
    expect(key).toEqual(["period", "routine", "aim"]);
    const keys = rows.map((row) => `${row.period}/${row.routine}/${row.aim}`);
    expect(new Set(keys).size).toBe(keys.length);
    const season = rows.filter(({ period }) => period === "season");
    expect(season.map(({ routine }) => routine)).toEqual([
      "facing noon",
      "1 aim",
      ...Array<string>(2).fill("2 aims"),
      ...Array<string>(3).fill("3 aims"),
      ...Array<string>(4).fill("4 aims"),
      "facing the sun",
    ]);
    expect(season.at(-1)).toMatchObject({ setting: null, bearingDeg: null });
  });
});
