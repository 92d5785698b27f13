import { describe, expect, test } from "vitest";
import { panelPower } from "../../../lib/panel/index.ts";
import { emptyPlaneColumns, martinRuizGlass, planeColumns } from "../../../lib/plane/index.ts";
import { addDayEnergies, dayEnergiesOver } from "../../../lib/season/light/day-energy.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { bestEachDayWh, bestSingle, judgedWh, seasonYield } from "../../../lib/season/light/season-yield.ts";
import { settingsOf } from "../../../lib/season/light/settings.ts";
import { readySkies, type SeasonSkies } from "../../../lib/season/light/skies.ts";
import { quickPlan } from "../battery/battery-plan.ts";
import { clearSkies } from "../random-plan.ts";

const plan = quickPlan({
  panels: [
    { name: "propped", howMany: 2, module: { powerW: 100 } },
    { name: "roof", module: { powerW: 50 }, mount: { kind: "fixed", tiltDeg: 10, bearingDeg: 120 } },
  ],
});
const settings = settingsOf(plan);

/** A day of one aim under a sky, step by step: watts of one panel times the hours of the step. */
const dayWh = (
  skies: SeasonSkies,
  sky: SeasonSkies["clear"],
  unit: ReturnType<typeof panelUnits>[0],
  tiltDeg: number,
  bearingDeg: number,
  day: number,
): number => {
  const light = planeColumns(
    skies.sun,
    sky.dome,
    { tiltDeg, bearingDeg },
    martinRuizGlass(),
    emptyPlaneColumns(skies.sun.length),
  );
  const watts = panelPower(unit.model, light, sky.sky);
  const { first, end } = skies.sun.days[day];
  let sum = 0;
  for (let row = first; row < end; row += 1) sum += watts[row] * skies.sun.hours[row];
  return sum;
};

const cloudy = (shares: readonly number[], weights: readonly number[]): SeasonSkies => {
  const { sun, clear } = clearSkies(plan);
  return readySkies(
    sun,
    clear.sky,
    shares.map((share, at) => ({
      weight: weights[at],
      sky: {
        ...clear.sky,
        beamNormal: clear.sky.beamNormal.map((watts) => share * watts),
        diffuse: clear.sky.diffuse.map((watts) => share * watts),
        global: clear.sky.global.map((watts) => share * watts),
      },
    })),
  );
};

describe("day energies", () => {
  test("are added to what is there, so many times over", () => {
    const { sun } = clearSkies(plan);
    const out = Float64Array.of(1, 2, 3, 4);
    addDayEnergies(sun, new Float64Array(sun.length).fill(10), 3, out);
    sun.days.forEach(({ sunHours }, day) => {
      expect(out[day]).toBeCloseTo(1 + day + 30 * sunHours, 6);
    });
  });

  test("count all panels of a kind at an aim", () => {
    const skies = clearSkies(plan);
    const [propped] = panelUnits(plan.panels);
    const out = new Float64Array(4).fill(5);
    expect(dayEnergiesOver(skies.sun)(skies.clear, propped, { tiltDeg: 30, bearingDeg: 200 }, out)).toBe(out);
    out.forEach((wh, day) => {
      expect(wh).toBeCloseTo(5 + 2 * dayWh(skies, skies.clear, propped, 30, 200, day), 6);
    });
  });
});

describe("seasonYield, day by day", () => {
  test("those on the stand go with the setting, fixed ones stay where they are", () => {
    const skies = clearSkies(plan);
    const units = panelUnits(plan.panels);
    const [propped, roof] = units;
    const { settings: yields, days, weights } = seasonYield(skies, units, settings);
    expect(days).toBe(skies.sun.days);
    expect(weights).toEqual([]);
    yields.forEach(({ setting, clearWh, expectedWh, band, underEachSky }, at) => {
      expect(setting).toBe(settings[at]);
      expect([expectedWh, band, underEachSky]).toEqual([null, null, []]);
      clearWh.forEach((wh, day) => {
        const own = 2 * dayWh(skies, skies.clear, propped, setting.tiltDeg, 180, day);
        expect(wh).toBeCloseTo(own + dayWh(skies, skies.clear, roof, 10, 120, day), 6);
      });
    });
  });

  test("what is expected is the mean over the skies by their weights; it is what a setting is judged by", () => {
    const skies = cloudy([0.2, 0.6], [0.25, 0.75]);
    const units = panelUnits(plan.panels);
    const { settings: yields, weights } = seasonYield(skies, units, settings);
    expect(weights).toEqual([0.25, 0.75]);
    for (const one of yields) {
      expect(one.band).toBeNull();
      expect(one.underEachSky).toHaveLength(2);
      one.expectedWh?.forEach((wh, day) => {
        expect(wh).toBeCloseTo(0.25 * one.underEachSky[0][day] + 0.75 * one.underEachSky[1][day], 9);
        expect(wh).toBeLessThan(one.clearWh[day]);
      });
      expect(judgedWh(one)).toBe(one.expectedWh);
    }
    const [flat] = seasonYield(
      cloudy([0.1, 0.2, 0.3, 0.4, 0.5], new Array(5).fill(0.2)),
      units,
      settings,
    ).settings;
    expect(flat.band?.p50Wh[0]).toBeCloseTo(flat.underEachSky[2][0], 9);
  });

  test("the best of a day, of equals the first; the best single setting; the best of every day", () => {
    const skies = clearSkies(plan);
    const { settings: yields, days } = seasonYield(skies, panelUnits(plan.panels), settings);
    const made = (...columns: readonly (readonly number[])[]) => ({
      days,
      weights: [],
      best: Uint8Array.of(1, 0, 1, 0),
      settings: columns.map((column, at) => ({ ...yields[at], clearWh: Float64Array.from(column) })),
    });
    expect(bestSingle(made([5, 5, 5, 5], [8, 1, 6, 5]))).toBe(0);
    expect(bestSingle(made([5, 5, 5, 4], [8, 1, 6, 5]))).toBe(1);
    expect(bestEachDayWh(made([5, 5, 5, 5], [8, 1, 6, 5]))).toBe(8 + 5 + 6 + 5);
    // Two alike settings: the first is named.
    const [flat, , long] = settings;
    expect([...seasonYield(skies, panelUnits(plan.panels), [long, long, flat]).best]).toEqual([0, 0, 0, 0]);
    expect([...seasonYield(skies, panelUnits(plan.panels), [flat, long]).best]).toEqual([1, 1, 1, 1]);
  });

  test("refuses to run without a setting", () => {
    expect(() => seasonYield(clearSkies(plan), [], [])).toThrow(
      "seasonYield: expected at least one setting, received none",
    );
  });
});

describe("readySkies", () => {
  test("the clear sky weighs all, the others what they are given; each goes to the plane by the model asked for", () => {
    const { sun, clear } = clearSkies(plan);
    const isotropic = readySkies(sun, clear.sky, [{ weight: 0.4, sky: clear.sky }], "isotropic");
    expect(isotropic.clear.weight).toBe(1);
    expect(isotropic.expected[0].weight).toBe(0.4);
    expect(Math.max(...isotropic.expected[0].dome.circumsolar)).toBe(0);
    // Perez unless told otherwise, with a level horizon.
    const usual = readySkies(sun, clear.sky, []);
    const perez = readySkies(sun, clear.sky, [], "perez", []);
    expect([...usual.clear.dome.circumsolar]).toEqual([...perez.clear.dome.circumsolar]);
    expect(Math.max(...usual.clear.dome.circumsolar)).toBeGreaterThan(0);
    const wall = [0, 90, 180, 270].map((bearingDeg) => ({ bearingDeg, altitudeDeg: 60 }));
    expect(Math.max(...readySkies(sun, clear.sky, [], "perez", wall).clear.dome.beam)).toBe(0);
  });
});
