import { sum } from "d3";
import { describe, expect, test } from "vitest";
import type { Plan } from "../../../lib/plan/index.ts";
import { emptyPlaneColumns, martinRuizGlass, planeColumns } from "../../../lib/plane/index.ts";
import { legsInUse, turnedAfterSun } from "../../../lib/season/aiming/aims-of-plan.ts";
import { reaim } from "../../../lib/season/aiming/reaim.ts";
import { todayOf } from "../../../lib/season/battery/today.ts";
import { aimEnergyOver } from "../../../lib/season/legs/tilt-ladder.ts";
import { aimByDay, emptyBranchLight, heldAim, lightOver } from "../../../lib/season/light/aim-plan.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { settingsOf } from "../../../lib/season/light/settings.ts";
import { quickPlan } from "../battery/battery-plan.ts";
import { clearSkies } from "../random-plan.ts";

const plan = quickPlan();
const skies = clearSkies(plan);
const { sun, clear } = skies;
const SOUTH = { tiltDeg: 45, bearingDeg: 180 };
const FLAT = { tiltDeg: 0, bearingDeg: 180 };

describe("lightOver", () => {
  const heatLoss = { u0: 20, u1: 5 };
  const lightAt = (aim: typeof SOUTH) =>
    planeColumns(sun, clear.dome, aim, martinRuizGlass(), emptyPlaneColumns(sun.length));

  test("is the light past the glass, and cells warmed by what falls on it (Faiman 2008: G / (u0 + u1 v))", () => {
    const out = emptyBranchLight(sun.length);
    lightOver(sun)(clear, heldAim(SOUTH), heatLoss, out);
    const { plane, absorbed } = lightAt(SOUTH);
    const { airC, windMs } = clear.sky;
    for (let row = 0; row < sun.length; row += 1) {
      // The season's glass is the standard one of clean glass, kept in another object.
      expect(out.absorbed[row]).toBeCloseTo(absorbed[row], 6);
      expect(out.cellC[row]).toBeCloseTo(airC[row] + plane[row] / (20 + 5 * windMs[row]), 9);
    }
    expect(Math.max(...out.cellC)).toBeGreaterThan(Math.max(...airC) + 10);
  });

  test("takes each day's own aim", () => {
    const out = emptyBranchLight(sun.length);
    lightOver(sun)(clear, aimByDay(sun, [FLAT, SOUTH], Uint8Array.of(1, 0, 0, 1)), heatLoss, out);
    const [flat, south] = [lightAt(FLAT).absorbed.slice(), lightAt(SOUTH).absorbed.slice()];
    for (let row = 0; row < sun.length; row += 1) {
      const right = sun.day[row] === 0 || sun.day[row] === 3 ? south : flat;
      expect(out.absorbed[row]).toBeCloseTo(right[row], 6);
    }
  });
});

describe("legsInUse", () => {
  // By the end of April at 50 N the short leg has overtaken the long one.
  const spring = quickPlan({ season: { from: "2027-03-20", to: "2027-05-20", stepMinutes: 60 } });
  const inSpring = clearSkies(spring);

  test("brings what the best leg of every day brings, to a hundredth of the gain", () => {
    const units = panelUnits(spring.panels);
    const settings = settingsOf(spring);
    const { aims, ofRow } = legsInUse(inSpring, units, settings);
    expect(aims).toEqual(settings);
    const energy = aimEnergyOver(inSpring, units);
    const dayWh = settings.map(({ tiltDeg, bearingDeg }) => energy(tiltDeg, bearingDeg));
    const inUse = inSpring.sun.days.map(({ first }) => ofRow?.[first] ?? -1);
    expect(inUse[0]).toBe(2);
    expect(inUse.at(-1)).toBe(1);
    const brings = sum(inUse, (setting, day) => dayWh[setting][day]);
    const best = sum(inUse, (_, day) => Math.max(...dayWh.map((column) => column[day])));
    const gain = best - sum(dayWh[0]);
    expect(best - brings).toBeLessThanOrEqual(0.01 * gain);
    // Every row of a day has the day's leg.
    inSpring.sun.days.forEach(({ first, end }, day) => {
      for (let row = first; row < end; row += 1) expect(ofRow?.[row]).toBe(inUse[day]);
    });
  });

  test("a fixed panel stands in where none is on the stand", () => {
    const roof = quickPlan({ panels: [{ name: "roof", module: { powerW: 100 }, mount: { kind: "fixed" } }] });
    const { ofRow } = legsInUse(skies, panelUnits(roof.panels), settingsOf(roof));
    expect(new Set(ofRow)).toEqual(new Set([2]));
  });
});

describe("turnedAfterSun", () => {
  const units = panelUnits(plan.panels);

  /** The routine of a month with so many aims a day. */
  const routineOf = (of: Plan, aimsADay: number, month: number) => {
    const aiming = { ...of.aiming, mostAims: aimsADay };
    const { routines } = reaim({ ...of, aiming }, skies, units).periods[month];
    return routines[routines.length - 1];
  };

  test.each([2, 3])("holds each month's own routine of %i aims, row by row", (aimsADay) => {
    const { aims, ofRow } = turnedAfterSun(plan, skies, units, aimsADay);
    [
      { month: 1, days: sun.days.slice(0, 2) },
      { month: 2, days: sun.days.slice(2) },
    ].forEach(({ month, days }) => {
      const { parts } = routineOf(plan, aimsADay, month);
      expect(parts).toHaveLength(aimsADay);
      for (const { first, end, noonMs } of days) {
        for (let row = first; row < end; row += 1) {
          const minutes = (sun.timeMs[row] - noonMs) / 60_000;
          const part = parts.find(
            ({ fromMinutes, toMinutes }) => minutes >= fromMinutes && minutes < toMinutes,
          );
          const { tiltDeg, bearingDeg } = aims[ofRow?.[row] ?? -1];
          expect({ tiltDeg, bearingDeg }).toEqual({
            tiltDeg: part?.setting.tiltDeg,
            bearingDeg: part?.setting.bearingDeg,
          });
        }
      }
    });
  });

  test("months with different routines each keep their own: steeper in March than in June", () => {
    const long = quickPlan({
      season: { from: "2027-03-25", to: "2027-06-10", stepMinutes: 60 },
      stand: {
        legs: [
          { name: "low", tiltDeg: 15, readFrom: "ground" },
          { name: "steep", tiltDeg: 50, readFrom: "ground" },
        ],
      },
    });
    const inSpring = clearSkies(long);
    const { aims, ofRow } = turnedAfterSun(long, inSpring, units, 1);
    const { periods } = reaim({ ...long, aiming: { ...long.aiming, mostAims: 1 } }, inSpring, units);
    const noonTilt = (day: number): number => {
      const { first, end } = inSpring.sun.days[day];
      return aims[ofRow?.[(first + end) >> 1] ?? -1].tiltDeg;
    };
    const tilts = [0, 77].map(noonTilt);
    expect(tilts[0]).toBeGreaterThan(tilts[1]);
    const told = periods
      .slice(1)
      .map(({ routines }) => routines[routines.length - 1].parts.map(({ setting }) => setting.tiltDeg));
    expect(told[0]).toContain(tilts[0]);
    expect(told[3]).toContain(tilts[1]);
  });

  test("names each aim once, though both months use it", () => {
    const { aims } = turnedAfterSun(plan, skies, units, 3);
    const told = aims.map(({ tiltDeg, bearingDeg }) => `${tiltDeg} ${bearingDeg}`);
    expect(new Set(told).size).toBe(told.length);
    expect(told.length).toBeLessThan(6);
  });
});

describe("todayOf", () => {
  const mixed = (now: "flat" | "one-leg" | "legs" | undefined) =>
    quickPlan({
      panels: [
        { name: "propped", module: { powerW: 100 } },
        {
          name: "roof",
          module: { powerW: 50 },
          mount: { kind: "fixed", tiltDeg: 10, bearingDeg: 120 },
        },
      ],
      worth: { now },
    });

  test("stated legs are used unless the plan says that the stand lies flat", () => {
    const today = todayOf(mixed(undefined), skies);
    expect(today.asIs.panels[0].aims).toBe(today.legAims());
  });

  test("on one leg for good it has the setting that brings most when it is never changed", () => {
    const { asIs, legAims } = todayOf(mixed("one-leg"), skies);
    const [held] = asIs.panels[0].aims.aims;
    expect(asIs.panels[0].aims.ofRow).toBeNull();
    // Over these few days of spring the calendar has no reason to change either.
    const { aims, ofRow } = legAims();
    expect(new Set(ofRow ?? [])).toEqual(
      new Set([aims.findIndex(({ tiltDeg }) => tiltDeg === held.tiltDeg)]),
    );
  });

  test("has panels on the stand flat or on its legs, as the plan says, fixed ones where they are", () => {
    const flat = todayOf(mixed("flat"), skies);
    expect(flat.asIs.name).toBe("as is");
    expect(flat.asIs.panels.map(({ unit }) => unit.name)).toEqual(["propped", "roof"]);
    expect(flat.asIs.panels[0].aims).toMatchObject({ aims: [{ tiltDeg: 0, bearingDeg: 180 }], ofRow: null });
    expect(flat.asIs.panels[1].aims).toMatchObject({ aims: [{ tiltDeg: 10, bearingDeg: 120 }], ofRow: null });
    expect(flat.onStand.map(({ name }) => name)).toEqual(["propped"]);
    expect(flat.hasLegs).toBe(true);
    const legs = todayOf(mixed("legs"), skies);
    expect(legs.asIs.panels[0].aims.aims).toHaveLength(3);
    expect(legs.asIs.panels[0].aims).toBe(legs.legAims());
    expect(legs.asIs.panels[1].aims).toMatchObject({ aims: [{ tiltDeg: 10, bearingDeg: 120 }] });
  });

  test("gives each fixed panel one aim for all set-ups, so that its light is worked out once", () => {
    const { asIs, place, legAims } = todayOf(mixed("flat"), skies);
    const onLegs = place(legAims());
    expect(onLegs[1].aims).toBe(asIs.panels[1].aims);
    expect(onLegs[0].aims).toBe(legAims());
    expect(legAims()).toBe(legAims());
  });

  test("lies flat where there is no leg", () => {
    const bare = todayOf(quickPlan({ stand: {} }), skies);
    expect(bare.hasLegs).toBe(false);
    expect(bare.legAims()).toMatchObject({ aims: [{ tiltDeg: 0 }], ofRow: null });
  });

  test("asks for legs by a fixed panel where none is on the stand", () => {
    const roof = todayOf(
      quickPlan({ panels: [{ name: "roof", module: { powerW: 100 }, mount: { kind: "fixed" } }] }),
      skies,
    );
    expect(roof.onStand).toEqual([]);
    expect(roof.legAims().aims).toHaveLength(3);
  });
});
