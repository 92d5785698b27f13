import { describe, expect, it } from "vitest";
import { readPlan } from "../../lib/plan/index.ts";
import { panelUnits } from "../../lib/season/panel-unit.ts";
import { periodsOf } from "../../lib/season/periods.ts";
import { rulesOfThumb } from "../../lib/season/rules-of-thumb.ts";
import {
  aimEnergyOver,
  bestTilts,
  finerLadder,
  tiltLadder,
  tiltsEvery,
} from "../../lib/season/tilt-ladder.ts";
import { tiltBands, toleranceOf } from "../../lib/season/tolerance.ts";
import { standGeometry } from "../../lib/stand/settings.ts";
import { clearSkies } from "./random-plan.ts";

const plan = readPlan({
  site: { latitudeDeg: 45, longitudeDeg: 10 },
  season: { from: "2027-04-15", to: "2027-10-05", stepMinutes: 20 },
  panels: [{ name: "panel", module: { powerW: 100 } }],
  stand: { pivotMm: 700 },
});
const skies = clearSkies(plan);
const units = panelUnits(plan.panels);
const energy = aimEnergyOver(skies, units);
const ladder = tiltLadder(skies, units, 180);
const { days } = skies.sun;

describe("periodsOf", () => {
  it("gives the season, then its months, cut where the season is", () => {
    expect(periodsOf(days).map(({ name, first, end }) => [name, end - first])).toEqual([
      ["season", 174],
      ["2027-04", 16],
      ["2027-05", 31],
      ["2027-06", 30],
      ["2027-07", 31],
      ["2027-08", 31],
      ["2027-09", 30],
      ["2027-10", 5],
    ]);
  });
});

describe("toleranceOf", () => {
  const stand = standGeometry(plan.stand);
  const setting = { name: "leg", legMm: 404.145, tiltDeg: 30, bearingDeg: 180 };
  const costs = toleranceOf(energy, days, stand, setting);

  it("one millimetre costs what its share of a degree does", () => {
    // A 700 mm square stand at 30 degrees turns cos^2(30) / 700 rad = 0.0614 degrees a mm. In October, far from the
    // best tilt, cost is nearly straight in the tilt.
    const october = costs[costs.length - 1];
    expect((october.perMmWh ?? 0) / october.perDegWh).toBeCloseTo(0.0614, 2);
  });

  it("a bearing further off costs more, and twice as far about four times as much", () => {
    for (const { bearingWh } of costs) {
      expect([...bearingWh].sort((a, b) => a - b)).toEqual([...bearingWh]);
    }
    const [season] = costs;
    expect(season.bearingWh[2] / season.bearingWh[1]).toBeGreaterThan(3);
    expect(season.bearingWh[2] / season.bearingWh[1]).toBeLessThan(5);
  });

  it("at the season's best tilt a degree costs next to nothing; flat has no leg to be wrong", () => {
    const [{ bestTiltDeg }] = tiltBands(ladder);
    const [best] = toleranceOf(energy, days, stand, { ...setting, tiltDeg: bestTiltDeg });
    expect(best.perDegWh).toBeLessThan(0.001 * best.dayWh);
    const [flat] = toleranceOf(energy, days, stand, {
      name: "flat",
      legMm: null,
      tiltDeg: 0,
      bearingDeg: 180,
    });
    expect(flat.perMmWh).toBeNull();
    // Turning a flat panel changes nothing.
    for (const cost of flat.bearingWh) expect(cost).toBeLessThan(1e-9 * flat.dayWh);
  });
});

describe("tiltBands", () => {
  it("the best lies in the 1 % band, that in the 3 % band, and the ends hold what they say", () => {
    for (const { period, bestTiltDeg, dayWh, within1Pct, within3Pct } of tiltBands(ladder)) {
      expect(within1Pct[0]).toBeLessThanOrEqual(bestTiltDeg);
      expect(within1Pct[1]).toBeGreaterThanOrEqual(bestTiltDeg);
      expect(within3Pct[0]).toBeLessThanOrEqual(within1Pct[0]);
      expect(within3Pct[1]).toBeGreaterThanOrEqual(within1Pct[1]);
      const mean = (tilt: number) =>
        ladder.dayWh[tilt].subarray(period.first, period.end).reduce((a, b) => a + b, 0) /
        (period.end - period.first);
      for (const tilt of within1Pct) expect(mean(tilt)).toBeGreaterThanOrEqual(0.99 * dayWh);
      if (within3Pct[0] > 0) expect(mean(within3Pct[0] - 1)).toBeLessThan(0.97 * dayWh);
    }
  });
});

describe("rulesOfThumb", () => {
  const rules = rulesOfThumb(ladder, 45);

  it("no rule beats the computed best of its kind", () => {
    expect(rules).toHaveLength(9);
    for (const { lossWh, totalWh, lossShare } of rules) {
      expect(lossWh).toBeGreaterThanOrEqual(-1e-6);
      expect(lossShare).toBeCloseTo(lossWh / (totalWh + lossWh), 12);
    }
  });

  it("at 45 N: 45, 30 and 60 degrees, and a noon rule that runs from 22 to beyond 45", () => {
    const tilts = new Map(rules.map(({ rule, tiltDeg }) => [rule, tiltDeg.map(Math.round)]));
    expect(tilts.get("latitude")).toEqual([45, 45]);
    expect(tilts.get("latitude less 15")).toEqual([30, 30]);
    expect(tilts.get("latitude plus 15")).toEqual([60, 60]);
    expect(tilts.get("latitude less 15 in summer, plus 15 in winter")).toEqual([30, 60]);
    expect(tilts.get("square to the noon sun: latitude less declination")).toEqual([22, 49]);
  });

  it("holds the same in the south, half a year on", () => {
    const south = readPlan({
      ...plan,
      site: { latitudeDeg: -45, longitudeDeg: 10 },
      season: { from: "2027-10-15", to: "2028-04-05", stepMinutes: 20 },
    });
    const mirrored = rulesOfThumb(tiltLadder(clearSkies(south), units, 0), -45);
    mirrored.forEach(({ rule, tiltDeg, lossShare }, index) => {
      expect(rule).toBe(rules[index].rule);
      // The orbit is not round: seasons differ by a few days and the sun by 3 % in distance.
      tiltDeg.forEach((tilt, end) => {
        expect(Math.abs(tilt - rules[index].tiltDeg[end])).toBeLessThan(3);
      });
      expect(Math.abs(lossShare - rules[index].lossShare)).toBeLessThan(0.01);
    });
  });

  it("needs the whole ladder", () => {
    expect(() => rulesOfThumb(tiltLadder(skies, units, 180, tiltsEvery(1).slice(10)), 45)).toThrow(
      RangeError,
    );
  });
});

describe("bestTilts", () => {
  it("reads a fraction of a degree off a ladder of 3-degree steps", () => {
    const fine = bestTilts(tiltLadder(skies, units, 180, tiltsEvery(0.25)));
    bestTilts(tiltLadder(skies, units, 180, tiltsEvery(3))).forEach((tilt, day) => {
      // Days are not quite parabolas; half a degree is far below what a leg can hold.
      expect(Math.abs(tilt - fine[day])).toBeLessThan(0.5);
    });
  });

  it("has no best tilt in the polar night", () => {
    const dark = readPlan({
      ...plan,
      site: { latitudeDeg: 80, longitudeDeg: 0 },
      season: { from: "2027-12-01", to: "2027-12-05" },
    });
    expect([...bestTilts(tiltLadder(clearSkies(dark), units, 180, tiltsEvery(45)))]).toEqual(
      new Array(5).fill(Number.NaN),
    );
  });
});

describe("finerLadder", () => {
  it("reads every degree off steps of 3 to 0.02 % of the day's best, to 0.2 % where it faces away from the sun", () => {
    // Facing north the noon sun slips behind the panel at one tilt: a corner that no cubic follows.
    for (const [bearing, share] of [
      [180, 2e-4],
      [90, 2e-4],
      [250, 2e-4],
      [0, 2e-3],
    ]) {
      const exact = tiltLadder(skies, units, bearing);
      const read = finerLadder(tiltLadder(skies, units, bearing, tiltsEvery(3)), 1);
      expect(read.tiltsDeg).toEqual(exact.tiltsDeg);
      days.forEach((_, day) => {
        const best = Math.max(...exact.dayWh.map((column) => column[day]));
        exact.dayWh.forEach((column, rung) => {
          expect(Math.abs(read.dayWh[rung][day] - column[day])).toBeLessThan(share * best);
        });
      });
    }
  });

  it("needs four rungs", () => {
    expect(() => finerLadder(tiltLadder(skies, units, 180, tiltsEvery(45)), 1)).toThrow(RangeError);
  });
});
