import { parseHTML } from "linkedom";
import { describe, expect, test } from "vitest";
import { dayChart, dayTable, seasonChart, svgFile } from "../../lib/report/index.ts";
import { clockHours } from "../../lib/report/words/day-clock.ts";
import { dayCurves, panelUnits, settingsOf, skiesOfPlan } from "../../lib/season/index.ts";
import { aPlan, yieldsOf } from "./a-season.ts";

const document = (): Document => parseHTML("<!doctype html><html><body></body></html>").document;

const marks = (chart: SVGSVGElement, kind: string): Element | null =>
  chart.querySelector(`[data-marks="${kind}"]`);

describe("seasonChart", () => {
  test("names itself, and labels each line directly with its tilt", () => {
    const chart = seasonChart(
      yieldsOf(aPlan(), () => 0.5),
      { document: document(), width: 800 },
    );
    expect(chart.getAttribute("role")).toBe("img");
    expect(chart.getAttribute("aria-label")).toBe("Expected watt-hours a day for each setting");
    expect(chart.getAttribute("aria-description")).toMatch(
      /3 settings over 20 days, 2027-05-01 to 2027-05-20/,
    );
    for (const words of ["low 25°", "=HIGH() 55°", "Wh a day", "best setting"]) {
      expect(chart.textContent).toContain(words);
    }
  });

  test("draws no daily points when only the clear sky is known, and says so", () => {
    const clear = seasonChart(yieldsOf(aPlan()), { document: document(), width: 800 });
    expect(marks(clear, "dot")).toBeNull();
    expect(clear.getAttribute("aria-label")).toBe("Clear-sky watt-hours a day for each setting");
    const cloudy = seasonChart(
      yieldsOf(aPlan(), () => 0.5),
      { document: document(), width: 800 },
    );
    expect(marks(cloudy, "dot")?.childElementCount).toBe(20 * 3);
  });

  test("uses no colour that the theme does not name", () => {
    const chart = seasonChart(
      yieldsOf(aPlan(), () => 0.5),
      { document: document(), width: 800 },
    );
    for (const painted of chart.querySelectorAll("[fill], [stroke]")) {
      for (const name of ["fill", "stroke"]) {
        expect(painted.getAttribute(name) ?? "none").toMatch(/^(none|currentColor|var\(--[\w-]+\))$/);
      }
    }
  });

  test("a single day, and a page without a width, still make a chart", () => {
    const oneDay = aPlan({ season: { from: "2027-05-01", to: "2027-05-01", stepMinutes: 30 } });
    const chart = seasonChart(yieldsOf(oneDay), { document: document(), width: 0 });
    expect(chart.outerHTML).not.toMatch(/NaN|width="-/);
  });

  test("polar night is a chart at zero, not an error", () => {
    const dark = aPlan({
      site: { name: "the ice", latitudeDeg: 80, longitudeDeg: 15 },
      season: { from: "2027-12-10", to: "2027-12-31", stepMinutes: 30 },
    });
    expect(seasonChart(yieldsOf(dark), { document: document(), width: 700 }).outerHTML).not.toContain("NaN");
  });
});

describe("dayChart", () => {
  const curvesOf = (plan: ReturnType<typeof aPlan>) =>
    dayCurves(skiesOfPlan(plan, null).skies, panelUnits(plan.panels), settingsOf(plan), 0, "clear");

  test("shows watts and light through the hours of the site's clock", () => {
    const plan = aPlan();
    const curves = curvesOf(plan);
    for (const quantity of ["watts", "plane irradiance"] as const) {
      const chart = dayChart(curves, quantity, plan.site.timeZone, { document: document(), width: 420 });
      expect(chart.textContent).toContain(quantity === "watts" ? "W" : "W/m²");
      expect(chart.outerHTML).not.toContain("NaN");
    }
    // Solar noon at 6 degrees east on summer time: 13:33, less the equation of time (+3 min on 1 May).
    const hours = clockHours(curves, plan.site.timeZone);
    const brightest = curves.curves[1]!.watts.indexOf(Math.max(...curves.curves[1]!.watts));
    expect(hours[brightest]).toBeGreaterThan(13);
    expect(hours[brightest]).toBeLessThan(14);
    expect(dayTable(curves, plan.site.timeZone).rows).toHaveLength(hours.length * 3);
  });

  test("says that the sun stays down in polar night", () => {
    const dark = aPlan({
      site: { name: "the ice", latitudeDeg: 80, longitudeDeg: 15 },
      season: { from: "2027-12-10", to: "2027-12-12", stepMinutes: 30 },
    });
    const chart = dayChart(curvesOf(dark), "watts", "Etc/UTC", { document: document(), width: 420 });
    expect(chart.textContent).toContain("The sun stays down all day.");
  });
});

test("an SVG file carries its colours for both schemes and its paper", () => {
  const chart = seasonChart(yieldsOf(aPlan()), { document: document(), width: 800 });
  const text = svgFile(chart);
  expect(text.startsWith('<?xml version="1.0" encoding="UTF-8"?>\n<svg')).toBe(true);
  expect(text).toContain("prefers-color-scheme: dark");
  expect(text).toContain("var(--season-paper)");
  expect(text).toContain('xmlns="http://www.w3.org/2000/svg"');
});
