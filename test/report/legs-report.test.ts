import { parseHTML } from "linkedom";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { type Plan, readPlan } from "../../lib/plan/index.ts";
import { tiltMapChart, tiltsInUse } from "../../lib/report/chart/tilt-map-chart.ts";
import { cuttingSheetPage } from "../../lib/report/paper/cutting-sheet-page.ts";
import { sideViewDrawing } from "../../lib/report/paper/side-view-drawing.ts";
import { tiltGauge } from "../../lib/report/paper/tilt-gauge.ts";
import { legSetsTable } from "../../lib/report/table/leg-sets-table.ts";
import { legsTable } from "../../lib/report/table/legs-table.ts";
import { rulesTable } from "../../lib/report/table/rules-table.ts";
import { swapsTable } from "../../lib/report/table/swaps-table.ts";
import { csvText, type Table } from "../../lib/report/table/table.ts";
import { bandsTable, toleranceTable } from "../../lib/report/table/tolerance-table.ts";
import { legsSummary } from "../../lib/report/words/legs-summary.ts";
import { swapsSummary } from "../../lib/report/words/swaps-summary.ts";
import { bestLegsOfPlan, legsAnswer } from "../../lib/season/legs/legs-answer.ts";
import { standSeason } from "../../lib/season/legs/stand-season.ts";
import { swapsAnswer } from "../../lib/season/legs/swaps-answer.ts";
import { panelUnits } from "../../lib/season/light/panel-unit.ts";
import { legMmOfTilt } from "../../lib/stand/geometry.ts";
import { namedLegs, standGeometry } from "../../lib/stand/settings.ts";
import { clearSkies } from "../season/random-plan.ts";

const emptyDocument = (): Document =>
  parseHTML("<!doctype html><html><head></head><body></body></html>").document;

const plan = readPlan({
  name: "<script>alert(1)</script> hut",
  site: { latitudeDeg: 52, longitudeDeg: 5 },
  season: { from: "2027-04-01", to: "2027-09-30", stepMinutes: 60 },
  panels: [{ name: "panel", module: { powerW: 100 }, lengthMm: 1100 }],
  stand: {
    pivotMm: 700,
    legs: [
      { name: "=short", lengthMm: 260, owned: true },
      { name: "long", tiltDeg: 45, readFrom: "post" },
    ],
  },
});
const seasonOf = (of: Plan) => standSeason(of, clearSkies(of), panelUnits(of.panels));
const season = seasonOf(plan);
const answer = legsAnswer(season, "season total", bestLegsOfPlan(season, { most: 2 }));
const swaps = swapsAnswer(season);

const number = (element: Element, name: string): number => Number(element.getAttribute(name));

describe("tiltGauge", () => {
  const gauge = tiltGauge(emptyDocument(), [{ name: "long", tiltDeg: 45 }]);
  const hole = gauge.querySelector("circle");
  if (!hole) throw new Error("no hole for the thread");
  const angleOf = (line: Element): number => {
    const [dx, dy] = [number(line, "x2") - number(hole, "cx"), number(line, "y2") - number(hole, "cy")];
    return (Math.atan2(Math.abs(dx), dy) * 180) / Math.PI;
  };

  it("has a tick for every degree on both halves, where a plumb line from the hole will lie", () => {
    const ticks = [...gauge.querySelectorAll("[data-ground-deg]")];
    expect(ticks).toHaveLength(182);
    for (const tick of ticks) {
      expect(angleOf(tick)).toBeCloseTo(number(tick, "data-ground-deg"), 6);
      // Both ends of a tick point at the hole.
      const [x1, y1] = [number(tick, "x1") - number(hole, "cx"), number(tick, "y1") - number(hole, "cy")];
      expect((Math.atan2(Math.abs(x1), y1) * 180) / Math.PI).toBeCloseTo(angleOf(tick), 6);
    }
  });

  it("marks the plan's legs on both halves, and says both readings", () => {
    const marks = [...gauge.querySelectorAll("[data-leg-deg]")];
    expect(marks.map(angleOf).map(Math.round)).toEqual([45, 45]);
    expect(gauge.textContent).toContain("long: 45° from the ground (45° from a post)");
  });

  it("is printed at true size: one unit a millimetre, and a bar of 100 of them", () => {
    expect(gauge.getAttribute("width")).toBe("190mm");
    expect(gauge.getAttribute("viewBox")?.split(" ")[2]).toBe("190");
    expect(gauge.querySelector(".check-bar")?.getAttribute("d")).toContain("h100");
  });
});

describe("sideViewDrawing", () => {
  const stand = standGeometry(plan.stand);
  const frame = { lengthMm: 1100, depthMm: 35 };
  const ends = (element: Element | null): readonly (readonly number[])[] =>
    (element?.getAttribute("d") ?? "")
      .slice(1)
      .split(/[LZ]/)
      .filter((text) => text !== "")
      .map((text) => text.split(",").map(Number));
  const length = ([a, b]: readonly (readonly number[])[]): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

  it.each([10, 35, 60, 80])(
    "at %i degrees, leg, frame and scale bar are to one scale, and the angle is the tilt",
    (tiltDeg) => {
      const legMm = legMmOfTilt(stand, tiltDeg);
      const svg = sideViewDrawing(
        stand,
        frame,
        { name: "a", legMm, tiltDeg, colour: "red" },
        { document: emptyDocument(), width: 500 },
      );
      const panel = ends(svg.querySelector(".panel"));
      const perMm = length(panel.slice(0, 2)) / 1100;
      // Coordinates are written to 0.01 px.
      expect(length(ends(svg.querySelector(".leg"))) / perMm).toBeCloseTo(legMm, -0.5);
      const [low, high] = panel;
      expect((Math.atan2(low[1] - high[1], high[0] - low[0]) * 180) / Math.PI).toBeCloseTo(tiltDeg, 1);
      const bar = /h([\d.]+)M/.exec(svg.querySelector(".scale-bar")?.getAttribute("d") ?? "");
      const barMm = Number(/(\d+) mm$/.exec(svg.textContent ?? "")?.[1]);
      expect(Number(bar?.[1]) / perMm).toBeCloseTo(barMm, 0);
      expect(svg.getAttribute("aria-label")).toContain(
        `${tiltDeg}° from the ground, ${90 - tiltDeg}° from a post`,
      );
    },
  );

  it("lying flat there is no leg to draw", () => {
    const svg = sideViewDrawing(
      stand,
      frame,
      { name: "flat", legMm: null, tiltDeg: 0, colour: "red" },
      { document: emptyDocument(), width: 320 },
    );
    expect(svg.querySelector(".leg")).toBeNull();
    expect(svg.textContent).toContain("no leg");
  });
});

describe("cuttingSheetPage", () => {
  const html = cuttingSheetPage(emptyDocument(), plan, namedLegs(plan.stand));
  const page = parseHTML(html).document;

  it("is whole in itself, and plan text can't become markup", () => {
    expect(html).not.toContain("<script>");
    expect(html).not.toMatch(/(src|href)=|url\(|@import/);
    expect(page.querySelector("h1")?.textContent).toContain("<script>alert(1)</script> hut");
  });

  it("lists the pieces, cuts none of an owned leg, and draws every setting", () => {
    const cells = [...page.querySelectorAll("tbody tr")].map((row) =>
      [...row.querySelectorAll("td")].map((cell) => cell.textContent),
    );
    expect(cells.map(([mark, , cut, piece]) => [mark, cut, piece])).toEqual([
      ["A", "0", "280.0"],
      ["B", "2", "720.0"],
    ]);
    expect(page.querySelectorAll(".drawings svg")).toHaveLength(3);
    // Two pieces of 720 mm and a cut from one bar of 2 m.
    expect(page.querySelectorAll("svg.bar")).toHaveLength(1);
    expect(page.querySelector("svg.bar")?.textContent).toContain("554 mm left over");
  });

  it("sets the cautions beside cutting and wind, and says what does not stow", () => {
    expect([...page.querySelectorAll(".caution")].map((caution) => caution.textContent)).toEqual([
      expect.stringContaining("no new hole"),
      expect.stringContaining("bring the panel in above the wind named"),
    ]);
    const winds = [...page.querySelectorAll("p")].filter(({ textContent }) =>
      /unstaked, it may move above/.test(textContent ?? ""),
    );
    expect(winds).toHaveLength(3);
    expect(page.body.textContent).toContain("B must be at most 670 mm to stow");
  });
});

describe("tables and words", () => {
  const isWhole = <Row>(table: Table<Row>, rows: number): void => {
    const { data, errors, meta } = Papa.parse<Record<string, string>>(csvText(table), {
      header: true,
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    expect(data).toHaveLength(rows);
    expect(meta.fields).toEqual(table.columns.map(({ name }) => name));
    expect(csvText(table)).not.toMatch(/NaN|Infinity/);
    const keys = data.map((row) => table.key.map((name) => row[name]).join("|"));
    expect(new Set(keys).size).toBe(rows);
    for (const { datatype, unit, name } of table.columns) {
      if (datatype === "decimal") expect(unit, name).toBeDefined();
    }
  };

  it("every CSV parses, has a unit for every number and a key for every row", () => {
    isWhole(legsTable(plan, answer.settings), 3);
    isWhole(legSetsTable(answer), 3);
    isWhole(toleranceTable(answer.settings), 3 * 7);
    isWhole(bandsTable(answer.bands), 7);
    isWhole(rulesTable(answer.rules), 9);
    isWhole(swapsTable(swaps), swaps.calendar.stays.length);
  });

  it("a leg named like a formula is no formula in a spreadsheet", () => {
    expect(csvText(legsTable(plan, answer.settings))).toContain("'=short");
  });

  it("ground and post readings sum to 90 in every row", () => {
    const { data } = Papa.parse<Record<string, string>>(csvText(legsTable(plan, answer.settings)), {
      header: true,
      skipEmptyLines: true,
    });
    for (const row of data) expect(Number(row.tilt_deg) + Number(row.from_post_deg)).toBe(90);
  });

  it("the summaries say what kind of figure they give, and label every tilt", () => {
    for (const sentences of [legsSummary(answer), swapsSummary(swaps)]) {
      // What is enough may come before it.
      expect(sentences.slice(0, 2).join(" ")).toContain("upper bound");
      for (const sentence of sentences) expect(sentence).not.toMatch(/NaN|undefined|null/);
    }
    expect(legsSummary(answer).join(" ")).toMatch(/Best two legs to cut/);
    expect(swapsSummary(swaps).join(" ")).toMatch(/Set and forget/);
  });
});

describe("tiltMapChart", () => {
  it("draws the map, the best line and the steps, and describes itself", () => {
    const inUse = tiltsInUse(
      swaps.calendar,
      swaps.settings.map(({ tiltDeg }) => tiltDeg),
    );
    expect(inUse).toHaveLength(answer.ladder.days.length);
    const svg = tiltMapChart(answer.ladder, inUse, { document: emptyDocument(), width: 700 });
    expect(svg.querySelectorAll("[data-marks=contour] path").length).toBeGreaterThan(10);
    expect(svg.querySelectorAll("[data-marks=line] path")).toHaveLength(4);
    expect(svg.getAttribute("aria-label")).toBe("Clear-sky watt-hours a day by date and tilt");
    expect(svg.getAttribute("aria-description")).toMatch(/best tilt runs from \d+ to \d+ degrees/);
  });

  it("stands the polar night", () => {
    const dark = readPlan({
      ...plan,
      site: { latitudeDeg: 85, longitudeDeg: 0 },
      season: { from: "2027-11-20", to: "2027-12-20" },
    });
    const darkSeason = seasonOf(dark);
    const { ladder } = darkSeason;
    expect(legsSummary(legsAnswer(darkSeason))).toEqual([
      "The sun stays down all season: no setting brings anything.",
    ]);
    expect(swapsSummary(swapsAnswer(darkSeason))).toEqual(legsSummary(legsAnswer(darkSeason)));
    const svg = tiltMapChart(ladder, null, { document: emptyDocument(), width: 360 });
    expect(svg.outerHTML).not.toContain("NaN");
    expect(svg.getAttribute("aria-description")).toContain("sun stays down");
  });
});
