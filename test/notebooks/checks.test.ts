import { parseHTML } from "linkedom";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { csvText } from "../../lib/report/index.ts";
import { allowanceChart } from "../../notebooks/kit/checks/allowance-chart.ts";
import { casesChart } from "../../notebooks/kit/checks/cases-chart.ts";
import { casesTable, comparisonsTable, measuredTable } from "../../notebooks/kit/checks/checks-tables.ts";
import { measuredDaysChart } from "../../notebooks/kit/checks/measured-days-chart.ts";
import { modelErrorsChart } from "../../notebooks/kit/checks/model-errors-chart.ts";
import {
  type CheckedQuantity,
  type Checks,
  checksHeadline,
  type MeasuredStation,
  shareUsed,
} from "../../notebooks/kit/checks/outcomes.ts";

const quantity = (name: string, differences: readonly number[], allowed: number): CheckedQuantity => ({
  quantity: name,
  reference: "a book",
  unit: "W",
  cause: "its rounding",
  meanDifference: 0.1,
  greatestDifference: Math.max(...differences.map(Math.abs)),
  cases: differences.map((difference, at) => [
    `case ${at}`,
    10 + at + difference,
    10 + at,
    difference,
    allowed,
  ]),
});

const station: MeasuredStation = {
  station: "A roof",
  from: "global light",
  planes: [0, 90, 180, 270, 45].map((bearingDeg) => ({
    tiltDeg: 90,
    bearingDeg,
    errors: (["perez", "hay-davies", "isotropic"] as const).map((model, at) => ({
      model,
      days: 2,
      biasPct: at - 1,
      rmsePct: 3 + at,
    })),
    days: [
      ["2027-05-01", 2100, 2000],
      ["2027-05-02", 3100, 3200],
    ],
  })),
};

const checks: Checks = {
  sections: [
    { room: "sun", comparisons: [quantity("altitude", [0.1, -0.5], 1), quantity("noon", [0], 0)] },
    { room: "panel", comparisons: [quantity("power", [0.3], 0.4)] },
  ],
  stations: [station],
};

describe("what the checks came to", () => {
  test("shareUsed is the worst case over its own allowance; exact is none of it, and beyond is more than all", () => {
    expect(shareUsed(quantity("a", [0.1, -0.5], 1))).toBe(0.5);
    expect(shareUsed(quantity("b", [0, 0], 0))).toBe(0);
    expect(shareUsed(quantity("c", [3], 2))).toBe(1.5);
    expect(shareUsed(quantity("d", [1e-9], 0))).toBe(Number.POSITIVE_INFINITY);
  });

  test("the headline counts cases and comparisons, and says so when one fails", () => {
    const words = (of: Checks) =>
      checksHeadline(of)
        .map((part) => (typeof part === "string" ? part : part.figure))
        .join("");
    expect(words(checks)).toContain("4 numbers");
    expect(words(checks)).toContain("3 comparisons; all are as near");
    const failing = { ...checks, sections: [{ room: "sun", comparisons: [quantity("x", [2], 1)] }] };
    expect(words(failing)).toContain("1 is not as near as they must be");
  });

  test("tables hold every comparison, every case and every plane, ready for a file", () => {
    expect(csvText(comparisonsTable(checks)).split("\r\n")).toHaveLength(1 + 3 + 1);
    const cases = csvText(casesTable(quantity("altitude", [0.125, -0.5], 1)));
    expect(cases).toContain("case 0,10.125,10,0.13,1");
    expect(cases).toContain("case 1,10.5,11,-0.5,1");
    expect(csvText(casesTable(quantity("exact", [0], 0)))).toContain("case 0,10,10,0,0");
    const planes = csvText(measuredTable(station));
    expect(planes).toContain("90,180,south,perez,2,-1,3");
    expect(planes.split("\r\n")).toHaveLength(1 + 15 + 1);
  });
});

describe.each([320, 1100])("charts at %i px", (width) => {
  const frame = () => ({ document: parseHTML("<html></html>").document as unknown as Document, width });
  const draws = [
    ["allowance", () => allowanceChart(checks, frame())],
    ["cases", () => casesChart(quantity("altitude", [0.1, -0.5, 2], 1), frame())],
    ["measured days", () => measuredDaysChart(station, frame())],
    ["model errors", () => modelErrorsChart(station, frame())],
  ] as const;

  let warned: ReturnType<typeof vi.spyOn>;
  beforeEach(() => {
    warned = vi.spyOn(console, "warn");
  });
  afterEach(() => warned.mockRestore());

  test.each(draws)(
    "%s: named, described, no wider than its frame, nothing that is no number, no warning",
    (_, draw) => {
      const svg = draw();
      expect(svg.getAttribute("aria-label")).toMatch(/\w+ \w+/);
      expect(svg.getAttribute("aria-description")).toMatch(/\d/);
      expect(Number(svg.getAttribute("width"))).toBe(width);
      expect(svg.outerHTML).not.toMatch(/NaN|Infinity|undefined/);
      expect(warned).not.toHaveBeenCalled();
    },
  );

  test("a dot for every comparison, every case, every day", () => {
    const dots = (svg: SVGSVGElement) => svg.querySelectorAll("[data-marks=dot] circle").length;
    expect(dots(allowanceChart(checks, frame()))).toBe(3);
    expect(dots(casesChart(quantity("altitude", [0.1, -0.5, 2], 1), frame()))).toBe(3);
    expect(dots(measuredDaysChart(station, frame()))).toBe(10);
  });

  test("a case beyond its allowance is drawn in the warning's colour", () => {
    const svg = casesChart(quantity("altitude", [0.1, -0.5, 2], 1), frame());
    expect(svg.querySelectorAll('circle[fill="var(--season-warning)"]')).toHaveLength(1);
  });
});
