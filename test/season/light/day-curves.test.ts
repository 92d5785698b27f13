import { describe, expect, test } from "vitest";
import { emptyPlaneColumns, martinRuizGlass, planeColumns } from "../../../lib/plane/index.ts";
import { dayCurves } from "../../../lib/season/light/day-curves.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { seasonYield } from "../../../lib/season/light/season-yield.ts";
import { settingsOf } from "../../../lib/season/light/settings.ts";
import { readySkies, type SeasonSkies } from "../../../lib/season/light/skies.ts";
import { quickPlan } from "../battery/battery-plan.ts";
import { clearSkies } from "../random-plan.ts";

const mixed = quickPlan({
  panels: [
    { name: "propped", howMany: 2, module: { powerW: 100 } },
    { name: "roof", module: { powerW: 50 }, mount: { kind: "fixed", tiltDeg: 10, bearingDeg: 120 } },
  ],
});
const settings = settingsOf(mixed);

const cloudy = (): SeasonSkies => {
  const { sun, clear } = clearSkies(mixed);
  const dull = {
    ...clear.sky,
    beamNormal: clear.sky.beamNormal.map((watts) => watts / 4),
    global: clear.sky.global.map((watts) => watts / 2),
  };
  return readySkies(sun, clear.sky, [
    { weight: 0.75, sky: clear.sky },
    { weight: 0.25, sky: dull },
  ]);
};

describe("dayCurves", () => {
  test.each(["clear", "expected"] as const)("adds up to the day's watt-hours: %s", (under) => {
    const skies = cloudy();
    const units = panelUnits(mixed.panels);
    const yields = seasonYield(skies, units, settings);
    skies.sun.days.forEach((day, index) => {
      const { curves, timeMs, day: told } = dayCurves(skies, units, settings, index, under);
      expect(told).toBe(day);
      expect([...timeMs]).toEqual([...skies.sun.timeMs.subarray(day.first, day.end)]);
      curves.forEach(({ setting, watts }, at) => {
        expect(setting).toBe(settings[at]);
        const wh = watts.reduce((sum, one, row) => sum + one * skies.sun.hours[day.first + row], 0);
        const { clearWh, expectedWh } = yields.settings[at];
        expect(wh).toBeCloseTo((under === "clear" ? clearWh : expectedWh)?.[index] ?? Number.NaN, 6);
      });
    });
  });

  test("shows the light on the setting's plane before the glass, the mean over the skies", () => {
    const skies = cloudy();
    const { sun, clear, expected } = skies;
    const units = panelUnits(mixed.panels);
    const planeUnder = (sky: typeof clear) =>
      planeColumns(
        sun,
        sky.dome,
        settings[2],
        martinRuizGlass(),
        emptyPlaneColumns(sun.length),
      ).plane.slice();
    const { first, end } = sun.days[1];
    const [bright, dull] = expected.map(planeUnder);
    const shown = dayCurves(skies, units, settings, 1, "expected").curves[2].planeWm2;
    const inClear = dayCurves(skies, units, settings, 1, "clear").curves[2].planeWm2;
    expect(shown).toHaveLength(end - first);
    for (let row = first; row < end; row += 1) {
      expect(shown[row - first]).toBeCloseTo(0.75 * bright[row] + 0.25 * dull[row], 9);
      expect(inClear[row - first]).toBeCloseTo(bright[row], 9);
    }
  });

  test("is empty in the polar night", () => {
    const dark = quickPlan({
      site: { latitudeDeg: 80, longitudeDeg: 8, timeZone: "Etc/GMT-1" },
      season: { from: "2027-12-20", to: "2027-12-21", stepMinutes: 60 },
    });
    const { curves, timeMs } = dayCurves(
      clearSkies(dark),
      panelUnits(dark.panels),
      settingsOf(dark),
      1,
      "clear",
    );
    expect(timeMs).toHaveLength(0);
    expect(curves[0].watts).toHaveLength(0);
  });

  test("refuses a day that there is not, and cloud where none is known", () => {
    const clear = clearSkies(mixed);
    const units = panelUnits(mixed.panels);
    expect(() => dayCurves(clear, units, settings, 4, "clear")).toThrow(
      "dayCurves: expected a day 0 to 3, received 4",
    );
    expect(() => dayCurves(clear, units, settings, 0, "expected")).toThrow(
      "dayCurves: expected a sky with cloud in it, received none",
    );
  });
});
