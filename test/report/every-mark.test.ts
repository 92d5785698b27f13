import { parseHTML } from "linkedom";
import { describe, expect, test } from "vitest";
import type { Worth } from "../../lib/plan/worth.ts";
import {
  aimGainChart,
  chargeChart,
  dropChart,
  seasonChart,
  sunCompass,
  tiltGauge,
  worthChart,
} from "../../lib/report/index.ts";
import { monthBars } from "../../lib/report/paper/field-sheet-drawings.ts";
import { fieldSheetArticle } from "../../lib/report/paper/field-sheet-page.ts";
import { bandSentences } from "../../lib/report/words/band-words.ts";
import type {
  BatterySeason,
  FieldSheet,
  Reaim,
  RunAnswer,
  SeasonYield,
  WorthAnswer,
} from "../../lib/season/index.ts";
import { fieldSheet, panelUnits, skiesOfPlan } from "../../lib/season/index.ts";
import { aPlan } from "./a-season.ts";

/**
 * Where each mark of a chart or a drawing stands, from answers written by hand: its scale is worked out here from its size
 * and margins, so that a mark that shows its neighbour's value is seen.
 */

const handMade = <Answer>(stated: unknown): Answer => stated as Answer;
const { document } = parseHTML("<!doctype html><html><body></body></html>") as unknown as Window;
const frame = { document, width: 960 };
const of = (...values: readonly number[]) => Float64Array.from(values);
const days = (howMany: number) =>
  Array.from({ length: howMany }, (_, day) => ({
    date: `2027-06-${String(day + 1).padStart(2, "0")}`,
    sunHours: 12,
  }));

const marks = (svg: SVGSVGElement, kind: string): readonly Element[] => [
  ...svg.querySelectorAll(`[data-marks="${kind}"]`),
];
const number = (element: Element, name: string): number => Number(element.getAttribute(name));
/** All heights that a path goes through, rounded to half a pixel, each once, from the top down. */
const heights = (path: Element): readonly number[] => {
  const numbers = (path.getAttribute("d") ?? "").match(/-?[\d.]+/g) ?? [];
  const found = numbers.flatMap((value, index) =>
    index % 2 === 1 ? [Math.round(2 * Number(value)) / 2] : [],
  );
  return [...new Set(found)].sort((a, b) => a - b);
};
const half = (value: number): number => Math.round(2 * value) / 2;

test("season chart: the band reaches from p10 to p90 of the setting that is best when left alone", () => {
  const same = (value: number) => of(value, value, value);
  const of3 = (clear: number, expected: number, [p10, p50, p90]: readonly [number, number, number]) => ({
    setting: { name: `s${clear}`, legMm: clear, tiltDeg: clear / 10, bearingDeg: 180 },
    clearWh: same(clear),
    expectedWh: same(expected),
    band: { p10Wh: same(p10), p50Wh: same(p50), p90Wh: same(p90) },
    underEachSky: [],
  });
  const yields = handMade<SeasonYield>({
    days: days(3),
    settings: [of3(400, 210, [70, 215, 330]), of3(500, 260, [110, 280, 410])],
    best: Uint8Array.of(1, 1, 0),
    weights: [],
  });
  const svg = seasonChart(yields, frame);
  // 430 high, 34 above and 62 below the frame; the scale ends at 1.04 times the highest clear day.
  const y = (wh: number) => 430 - 62 - (wh / (1.04 * 500)) * (430 - 34 - 62);
  const [envelope, band] = marks(svg, "area").map((group) => group.querySelector("path")!);
  expect(heights(band!)).toEqual([half(y(410)), half(y(110))]);
  expect(heights(envelope!)).toEqual([half(y(500)), half(y(0))]);
  // Three days from 44 to 960 - 132 px: two of them the second setting's, then one of the first.
  const strip = marks(svg, "rect").flatMap((group) =>
    [...group.querySelectorAll("rect")].map((rect) => [half(number(rect, "x")), half(number(rect, "width"))]),
  );
  const dayPx = (960 - 132 - 44) / 3;
  expect(strip).toEqual([
    [44, half(2 * dayPx)],
    [half(44 + 2 * dayPx), half(dayPx)],
  ]);
});

test("charge chart: the band reaches from p10 to p90, the line is p50, the floor is what stays in", () => {
  const season = handMade<BatterySeason>({
    setUp: { name: "as is", battery: { usablePct: 65 } },
    days: days(3),
    outcomes: [1, 2, 3, 4, 5],
    lowest: { p10: of(0.41, 0.41, 0.41), p50: of(0.58, 0.58, 0.58), p90: of(0.93, 0.93, 0.93) },
    meanLowest: of(0.6, 0.6, 0.6),
    shortShare: of(0.1, 0.4, 0.8),
  });
  const svg = chargeChart(season, frame);
  // 380 high, 34 above and 64 below; from -12 to 104 %.
  const y = (pct: number) => 380 - 64 - ((pct + 12) / 116) * (380 - 34 - 64);
  expect(heights(marks(svg, "area")[0]!.querySelector("path")!)).toEqual([half(y(93)), half(y(41))]);
  expect(heights(marks(svg, "line")[0]!.querySelector("path")!)).toEqual([half(y(58))]);
  const floor = marks(svg, "rule").map((rule) => half(number(rule.querySelector("line") ?? rule, "y1")));
  expect(floor).toContain(half(y(35)));
  const shares = marks(svg, "rect").flatMap((group) =>
    [...group.querySelectorAll("rect")].map((rect) => number(rect, "fill-opacity")),
  );
  expect(shares).toEqual([0.1, 0.4, 0.8]);
});

test("worth chart: a bar to the mean, a whisker on to p90, both figures and the price at its end", () => {
  const row = (name: string, shortDays: number, shortDaysP90: number, price: number) => ({
    name,
    shortDays,
    shortDaysP90,
    price,
    enough: shortDays <= 5,
  });
  const answer = handMade<WorthAnswer>({
    asIs: { shortDays: 20, shortDaysP90: 31 },
    rows: [row("panel", 4.2, 9, 130), row("cable", 17, 27, 44)],
  });
  const svg = worthChart(answer, handMade<Worth>({ wantedShortDays: 5, currency: "EUR" }), frame);
  // 960 wide, 176 on the left and 92 on the right; the scale ends at 1.05 times the most.
  const x = (shown: number) => 176 + (shown / (31 * 1.05)) * (960 - 176 - 92);
  const bars = [...marks(svg, "bar")[0]!.querySelectorAll("rect")];
  expect(bars.map((bar) => half(number(bar, "x") + number(bar, "width")))).toEqual(
    [20, 4.2, 17].map((shown) => half(x(shown))),
  );
  const whiskers = marks(svg, "rule").flatMap((group) =>
    [...group.querySelectorAll("line")].map((line) => [half(number(line, "x1")), half(number(line, "x2"))]),
  );
  for (const [mean, p90] of [
    [20, 31],
    [4.2, 9],
    [17, 27],
  ] as const) {
    expect(whiskers).toContainEqual([half(x(mean)), half(x(p90))]);
  }
  const words = svg.textContent ?? "";
  expect(words).toContain("4.2 (9)  EUR 130");
  expect(words).toContain("17 (27)  EUR 44");
  expect(words).toContain("accepted: 5");
});

test("aims chart: each bar grows from facing noon by what the next aim adds, up to the limit", () => {
  const routine = (dayWh: number) => ({ dayWh, parts: [] });
  const month = (name: string, noon: number, one: number, two: number, limitDayWh: number) => ({
    period: { name, first: 0, end: 1 },
    noon: routine(noon),
    routines: [routine(one), routine(two)],
    limitDayWh,
  });
  const answer = handMade<Reaim>({
    cloudIn: true,
    periods: [month("season", 1, 2, 3, 4), month("2027-06", 300, 320, 370, 450)],
  });
  const svg = aimGainChart(answer, frame);
  const y = (wh: number) => 380 - 34 - (wh / (450 * 1.05)) * (380 - 68);
  const bars = [...marks(svg, "bar")[0]!.querySelectorAll("rect")].map((bar) => [
    half(number(bar, "y")),
    half(number(bar, "y") + number(bar, "height")),
  ]);
  expect(bars).toEqual([
    [half(y(300)), half(y(0))],
    [half(y(320)), half(y(300))],
    [half(y(370)), half(y(320))],
  ]);
  const ticks = marks(svg, "tick").flatMap((group) =>
    [...group.querySelectorAll("line")].map((line) => half(number(line, "y1"))),
  );
  expect(ticks).toContain(half(y(450)));
});

test("drop chart: each size's drop as a bar, what it costs a day above it, the custom of 3 %", () => {
  const choice = (size: string, dropPct: number, lostWhADay: number) => ({
    size,
    dropPct,
    lostWhADay,
    today: size === "4 mm2",
    withinCustom: dropPct <= 3,
  });
  const run = handMade<RunAnswer>({
    run: "panel cable",
    choices: [choice("4 mm2", 4.4, 8.2), choice("6 mm2", 2.9, 5.1)],
  });
  const svg = dropChart(run, frame);
  const y = (pct: number) => 300 - 40 - (pct / (4.4 * 1.25)) * (300 - 34 - 40);
  const bars = [...marks(svg, "bar")[0]!.querySelectorAll("rect")].map((bar) => half(number(bar, "y")));
  expect(bars).toEqual([half(y(4.4)), half(y(2.9))]);
  const rules = marks(svg, "rule").map((rule) => half(number(rule.querySelector("line") ?? rule, "y1")));
  expect(rules).toContain(half(y(3)));
  expect(svg.textContent).toContain("8.2 Wh");
  expect(svg.textContent).toContain("5.1 Wh");
});

describe("drawings at true size", () => {
  const gauge = tiltGauge(document, [{ name: "low", tiltDeg: 30 }]);
  const compass = sunCompass(
    document,
    { name: "x", latitudeDeg: 52, longitudeDeg: 6, timeZone: "Etc/UTC" },
    skiesOfPlan(aPlan(), null).skies.sun.days,
    [{ name: "1 low", bearingDeg: 135 }],
  );

  test.each([
    ["tilt gauge", gauge],
    ["sun compass", compass],
  ])(
    "%s: a unit of the drawing is a millimetre of paper, both ways, and the bar is 100 of them",
    (_, svg) => {
      const [, , width, height] = svg.getAttribute("viewBox")!.split(" ").map(Number);
      expect(svg.getAttribute("width")).toBe(`${width}mm`);
      expect(svg.getAttribute("height")).toBe(`${height}mm`);
      expect(svg.querySelector(".check-bar")!.getAttribute("d")).toMatch(/h100M/);
      expect(svg.textContent).toContain("This bar must measure 100 mm");
    },
  );

  test("tilt gauge: outside the arc the tilt from the ground, inside it the same from a post", () => {
    // The thread hangs from (95, 34); at a tilt it crosses the arc that far round from straight below. The arc is at 82 mm.
    const texts = [...gauge.querySelectorAll("text")].flatMap((text) => {
      const [right, down] = [number(text, "x") - 95, number(text, "y") - 1.2 - 34];
      const shown = text.textContent ?? "";
      if (!/^\d+$/.test(shown)) return [];
      return [
        {
          shown: Number(shown),
          radius: Math.hypot(right, down),
          deg: Math.round((Math.atan2(Math.abs(right), down) * 180) / Math.PI),
        },
      ];
    });
    const outer = texts.filter(({ radius }) => radius > 82);
    const inner = texts.filter(({ radius }) => radius < 82);
    expect([outer.length, inner.length]).toEqual([17, 17]);
    for (const { shown, deg } of outer) expect(shown).toBe(deg);
    for (const { shown, deg } of inner) expect(shown).toBe(90 - deg);
    expect(gauge.textContent).toContain("low: 30° from the ground (60° from a post)");
  });

  test("sun compass: an arrow points along its bearing, north is up", () => {
    const arrow = compass.querySelector('[data-bearing-deg="135"]')!.getAttribute("d")!;
    const [x1, y1, x2, y2] = arrow.match(/-?[\d.]+/g)!.map(Number);
    // South-east on a page with north at the top: as far to the right as down.
    expect(x2! - x1!).toBeGreaterThan(0);
    expect(x2! - x1!).toBeCloseTo(y2! - y1!, 6);
    expect(compass.textContent).toContain("Never look into the sun");
  });
});

test("how far days and seasons scatter: each of the three points of a band in its own place", () => {
  const day = (wh: number) => Float64Array.from({ length: 30 }, () => wh);
  const yields = handMade<SeasonYield>({
    days: days(30),
    settings: [
      {
        setting: { name: "low", legMm: 300, tiltDeg: 30, bearingDeg: 180 },
        clearWh: day(900),
        expectedWh: day(500),
        band: {},
        underEachSky: Array.from({ length: 11 }, (_, sky) => day(100 + 70 * sky)),
      },
    ],
    best: new Uint8Array(30),
    weights: [],
  });
  const totals = [{ p10Wh: 12_300, p50Wh: 15_600, p90Wh: 17_800 }];
  expect(bandSentences(yields, handMade(totals))).toEqual([
    "With low (30°) left alone: Nine June days in ten bring more than 170 Wh, one in ten more than 730 Wh.",
    "Nine such seasons in ten bring more than 12.3 kWh, half more than 15.6 kWh, one in ten more than 17.8 kWh.",
  ]);
});

describe("field sheet", () => {
  const plan = aPlan();
  const made = fieldSheet(plan, skiesOfPlan(plan, null).skies, panelUnits(plan.panels), 1);
  const sheet: FieldSheet = {
    ...made,
    cloudIn: true,
    panelsDayWh: 444,
    batteryDayWh: 333,
    months: [
      { month: "2027-05", panelsWh: 410, batteryWh: 320, p10Wh: 90, p90Wh: 530 },
      { month: "2027-06", panelsWh: 480, batteryWh: 350, p10Wh: 120, p90Wh: 600 },
    ],
  };
  const article = fieldSheetArticle(document, sheet);
  const part = (heading: string) =>
    [...article.querySelectorAll("section")].find((one) => one.querySelector("h2")?.textContent === heading)!;

  test("each month's figures under their headers: panels, battery, and the two ends of the spread", () => {
    const rows = [...part("What to expect, Wh a day").querySelectorAll("tr")].map((row) =>
      [...row.children].map((cell) => cell.textContent),
    );
    expect(rows).toEqual([
      ["month", "panels", "into the battery", "9 days in 10 above", "1 day in 10 above"],
      ["May", "410", "320", "90", "530"],
      ["June", "480", "350", "120", "600"],
    ]);
    expect(article.querySelector("header p")?.textContent).toContain(
      "about 333 Wh a day into the battery (panels 444 Wh)",
    );
  });

  test("a month's bar is its mean into the battery, its stroke from p10 to p90", () => {
    const svg = monthBars(document, sheet.months);
    const bars = [...svg.querySelectorAll("rect")].map((bar) => [number(bar, "y"), number(bar, "height")]);
    // The highest value, 600, stands at 12, nothing at 62.
    const y = (wh: number) => 62 - (wh / 600) * 50;
    expect(bars[0]![0]).toBeCloseTo(y(320), 6);
    expect(bars[1]![1]).toBeCloseTo(62 - y(350), 6);
    const stroke = svg.querySelectorAll("path")[1]!.getAttribute("d")!;
    const [, top, foot] = /^M[\d.]+,([\d.]+)V([\d.]+)/.exec(stroke)!;
    expect(Number(top)).toBeCloseTo(y(600), 6);
    expect(Number(foot)).toBeCloseTo(y(120), 6);
  });

  test("wiring goes battery first, then panel; taking down the other way round: panel off before the battery", () => {
    const steps = [...part("Wiring, in this order").querySelectorAll("li")].map((step) => step.textContent);
    expect(steps).toHaveLength(4);
    expect(steps[0]).toContain("Cover the panel");
    expect(steps[1]).toMatch(/^Battery to the controller: fuse close to the battery/);
    expect(steps[2]).toMatch(/^Panel to the controller/);
    expect(steps[3]).toMatch(/cover, panel off, battery off/);
  });

  test("each leg has its own wind beside it", () => {
    // The steeper of two legs holds less: textbook coefficients rise with tilt up to 30 degrees, its lever with all of it.
    const winds = [...part("Legs").querySelectorAll("td")].flatMap(
      (cell) => /unstaked it may move above (\d+) m\/s/.exec(cell.textContent ?? "")?.[1] ?? [],
    );
    expect(winds).toHaveLength(2);
    expect(Number(winds[0])).toBeGreaterThan(Number(winds[1]));
  });
});
