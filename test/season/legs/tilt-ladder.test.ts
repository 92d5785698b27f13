import { describe, expect, it } from "vitest";
import { PlanError, readPlan } from "../../../lib/plan/index.ts";
import {
  aimEnergyOver,
  bestTilts,
  energyAt,
  finerLadder,
  panelsOnStand,
  type TiltLadder,
  tiltLadder,
  tiltsEvery,
} from "../../../lib/season/legs/tilt-ladder.ts";
import { clearLightOf, foreseen } from "../../../lib/season/light/foreseen.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { seasonYield } from "../../../lib/season/light/season-yield.ts";
import { readySkies } from "../../../lib/season/light/skies.ts";
import { clearSkies } from "../random-plan.ts";

const planWith = (panels: readonly object[]) =>
  readPlan({
    site: { latitudeDeg: 52, longitudeDeg: 5 },
    season: { from: "2027-06-01", to: "2027-06-04", stepMinutes: 60 },
    panels,
  });

const propped = { name: "propped", module: { powerW: 100 } };
const roof = { name: "roof", module: { powerW: 50 }, mount: { kind: "fixed" } };

/** A ladder whose first day follows some course over the tilt, and whose second day is dark. */
const ladderOf = (tiltsDeg: readonly number[], course: (tiltDeg: number) => number): TiltLadder => {
  const { days } = clearSkies(planWith([propped])).sun;
  return {
    days: days.slice(0, 2),
    tiltsDeg,
    bearingDeg: 180,
    dayWh: tiltsDeg.map((tilt) => Float64Array.of(course(tilt), 0)),
    cloudIn: false,
  };
};

describe("energyAt", () => {
  // A cubic is read exactly off any four of its points: Lagrange's form is that of the one cubic through them.
  const cubic = (tilt: number): number => 400 + 3 * tilt - 0.09 * tilt ** 2 + 0.0004 * tilt ** 3;

  it("reads a cubic exactly between any rungs, the first and the last included", () => {
    const ladder = ladderOf(tiltsEvery(15), cubic);
    for (const tilt of [1, 14, 16, 29, 44, 46, 61, 74, 76, 89]) {
      expect(energyAt(ladder, tilt)[0]).toBeCloseTo(cubic(tilt), 9);
      expect(energyAt(ladder, tilt)[1]).toBe(0);
    }
  });

  it("takes the four rungs around a tilt: two below it and two above", () => {
    // Nothing but the rung at 60 is lit: 44 lies between 30 and 45, so that 60 is the last of its four.
    const spike = ladderOf(tiltsEvery(15), (tilt) => (tilt === 60 ? 1000 : 0));
    // By hand: weight of 60 at 44 among 15, 30, 45, 60 = (29 x 14 x -1) / (45 x 30 x 15) = -0.02005; below 0 is held to 0.
    expect(energyAt(spike, 44)[0]).toBe(0);
    // At 46, among 30, 45, 60, 75: (16 x 1 x -29) / (30 x 15 x -15) = 0.06874.
    expect(energyAt(spike, 46)[0]).toBeCloseTo((1000 * (16 * 1 * 29)) / (30 * 15 * 15), 9);
    expect(energyAt(spike, 14)[0]).toBe(0);
  });

  it("is a rung's own column at a rung", () => {
    const ladder = ladderOf(tiltsEvery(15), cubic);
    expect(energyAt(ladder, 45)).toBe(ladder.dayWh[3]);
    expect(energyAt(ladder, 0)).toBe(ladder.dayWh[0]);
  });

  it("is never below nothing, whatever a cubic makes of a corner", () => {
    // Dark but for upright: a cubic through 0, 0, 0 and 500 dips below 0 between the second and third rung.
    const corner = ladderOf(tiltsEvery(30), (tilt) => (tilt === 90 ? 500 : 0));
    expect(energyAt(corner, 45)[0]).toBe(0);
    expect(energyAt(corner, 75)[0]).toBeGreaterThan(100);
  });

  it("needs four rungs, and says how many there are", () => {
    expect(() => energyAt(ladderOf(tiltsEvery(45), cubic), 10)).toThrow(
      "energyAt: expected at least 4 rungs, received 3",
    );
    expect(finerLadder(ladderOf(tiltsEvery(30), cubic), 45)).toMatchObject({ tiltsDeg: [0, 45, 90] });
  });
});

describe("bestTilts", () => {
  it("finds the top of a parabola exactly, with even and with uneven rungs", () => {
    const parabola = (top: number) => (tilt: number) => 500 - 0.1 * (tilt - top) ** 2;
    for (const top of [20, 30, 37.5, 44, 52])
      expect(bestTilts(ladderOf([0, 15, 30, 45, 60, 90], parabola(top)))[0]).toBeCloseTo(top, 9);
    expect(bestTilts(ladderOf([0, 10, 30, 60, 90], parabola(33)))[0]).toBeCloseTo(33, 9);
  });

  it("is flat or upright where that is best, and none in the dark", () => {
    expect(bestTilts(ladderOf(tiltsEvery(30), (tilt) => 100 - tilt))).toEqual(Float64Array.of(0, Number.NaN));
    expect(bestTilts(ladderOf(tiltsEvery(30), (tilt) => 100 + tilt))[0]).toBe(90);
  });
});

describe("aimEnergyOver", () => {
  it("adds up the panels on the stand, and leaves out those fixed elsewhere", () => {
    const plan = planWith([propped, roof, { ...propped, name: "two more", howMany: 2 }]);
    const skies = clearSkies(plan);
    const all = aimEnergyOver(skies, panelUnits(plan.panels))(30, 180);
    const one = aimEnergyOver(skies, panelUnits(planWith([propped]).panels))(30, 180);
    all.forEach((wh, day) => {
      expect(wh).toBeCloseTo(3 * one[day], 9);
    });
    expect(one[0]).toBeGreaterThan(300);
  });

  it("takes a climate's mean as it is, and the weather of a few years as it can be foreseen", () => {
    const plan = planWith([propped]);
    const { sun, clear } = clearSkies(plan);
    const dimmed = (share: number) => ({
      ...clear.sky,
      beamNormal: clear.sky.beamNormal.map((beam, row) => beam * (sun.day[row] === 1 ? share : 1)),
    });
    const under = (shares: readonly number[]) =>
      readySkies(
        sun,
        clear.sky,
        shares.map((share) => ({ weight: 1 / shares.length, sky: dimmed(share) })),
      );
    const units = panelUnits(plan.panels);
    const flat = { name: "flat", legMm: null, tiltDeg: 0, bearingDeg: 180 };
    const meanUnder = (shares: readonly number[]): Float64Array =>
      seasonYield(under(shares), units, [flat]).settings[0].expectedWh ?? new Float64Array();
    const climate = [0.1, 0.2, 0.3, 0.4, 0.5];
    const asItIs = aimEnergyOver(under(climate), units)(0, 180);
    asItIs.forEach((wh, day) => {
      expect(wh).toBeCloseTo(meanUnder(climate)[day], 9);
    });
    const years = [0.1, 0.5];
    const smooth = aimEnergyOver(under(years), units)(0, 180);
    expect([...smooth]).toEqual([...foreseen(meanUnder(years), clearLightOf(sun, clear.sky))]);
    // The dark second day is weather: nobody foresees it.
    expect(smooth[1]).toBeGreaterThan(meanUnder(years)[1] + 50);
    expect(tiltLadder(under(years), units, 180, [0]).cloudIn).toBe(true);
    expect(tiltLadder(clearSkies(plan), units, 180, [0])).toMatchObject({ cloudIn: false, bearingDeg: 180 });
  });
});

describe("panelsOnStand", () => {
  it("asks for a panel that a leg moves, and names those that none does", () => {
    const problems = (): PlanError["problems"] => {
      try {
        panelsOnStand(panelUnits(planWith([roof, { ...roof, name: "shed" }]).panels));
      } catch (error) {
        if (error instanceof PlanError) return error.problems;
      }
      return [];
    };
    expect(problems()).toEqual([
      {
        path: "panels",
        value: "roof, shed",
        allowed: "must hold at least one panel on the stand",
        hint: 'legs move no fixed panel; give one the mount {"kind": "stand"}',
      },
    ]);
    expect(panelsOnStand(panelUnits(planWith([roof, propped]).panels)).map(({ name }) => name)).toEqual([
      "propped",
    ]);
  });
});
