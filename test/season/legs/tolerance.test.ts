import { describe, expect, it } from "vitest";
import { readPlan } from "../../../lib/plan/index.ts";
import { rulesOfThumb } from "../../../lib/season/legs/rules-of-thumb.ts";
import {
  type AimEnergy,
  aimEnergyOver,
  bestTilts,
  finerLadder,
  tiltLadder,
  tiltsEvery,
} from "../../../lib/season/legs/tilt-ladder.ts";
import { tiltBands, toleranceOf } from "../../../lib/season/legs/tolerance.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { periodsOf } from "../../../lib/season/light/periods.ts";
import { standGeometry } from "../../../lib/stand/settings.ts";
import { clearSkies } from "../random-plan.ts";

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

describe("toleranceOf, by hand", () => {
  // Wh of a day fall with the square of the degrees from 40 degrees tilt, and with the square of those from 350 degrees
  // bearing, in April twice as fast as later: every cost is a difference of squares.
  const { days: someDays } = clearSkies(
    readPlan({ ...plan, season: { from: "2027-04-30", to: "2027-05-01", stepMinutes: 60 } }),
  ).sun;
  const squares: AimEnergy = (tiltDeg, bearingDeg) => {
    const off = Math.abs(bearingDeg - 350);
    const turn = Math.min(off, 360 - off);
    return Float64Array.of(1000 - 2 * (tiltDeg - 40) ** 2 - turn ** 2 / 50, 800 - (tiltDeg - 40) ** 2);
  };
  const stand = standGeometry(plan.stand);
  const leg = { name: "leg", legMm: 700, tiltDeg: 45, bearingDeg: 350 };

  it("takes the worse of the two directions, period by period", () => {
    const [season, april, may] = toleranceOf(squares, someDays, stand, leg);
    // Right: 1000 - 2 x 25 = 950 and 800 - 25 = 775. A degree steeper is 6 off: 928 and 764.
    expect([season.dayWh, april.dayWh, may.dayWh]).toEqual([862.5, 950, 775]);
    expect([season.perDegWh, april.perDegWh, may.perDegWh]).toEqual([16.5, 22, 11]);
    // 20 degrees off costs 400 / 50 = 8 Wh in April, whichever way, also where it passes north (350 + 20 is 10).
    expect(april.bearingWh).toEqual([0.5, 2, 8, 18]);
    expect(may.bearingWh).toEqual([0, 0, 0, 0]);
    expect(season.bearingWh).toEqual([0.25, 1, 4, 9]);
    // A square leg of 701 mm on a 700 mm pivot: 45.0409 degrees, 2 x (5.0409^2 - 25) = 0.8217 Wh.
    const steeper = (Math.atan2(701, 700) * 180) / Math.PI;
    expect(april.perMmWh).toBeCloseTo(2 * ((steeper - 40) ** 2 - 25), 9);
    expect(april.period.name).toBe("2027-04");
  });

  it("never costs less than nothing, though it may be an accident for the better", () => {
    // At 44 degrees flatter is better: only steeper counts, 25 - 16 = 9 each, twice in April.
    expect(toleranceOf(squares, someDays, stand, { ...leg, tiltDeg: 44 })[1].perDegWh).toBe(18);
    const rising: AimEnergy = () => Float64Array.of(5, 5);
    expect(toleranceOf(rising, someDays, stand, leg)[0]).toMatchObject({
      perMmWh: 0,
      perDegWh: 0,
      bearingWh: [0, 0, 0, 0],
    });
  });

  it("holds a tilt between flat and upright, and stays where a leg can't follow", () => {
    const asked: number[] = [];
    const noted: AimEnergy = (tiltDeg) => {
      asked.push(tiltDeg);
      return Float64Array.of(1, 1);
    };
    toleranceOf(noted, someDays, stand, { ...leg, legMm: null, tiltDeg: 0 });
    expect(asked.slice(0, 3)).toEqual([0, 1, 0]);
    asked.length = 0;
    // A plumb leg as long as its pivot distance stands upright; one longer finds no triangle and changes nothing.
    const plumb = standGeometry({ ...plan.stand, legStyle: "plumb" });
    toleranceOf(noted, someDays, plumb, { ...leg, tiltDeg: 90 });
    expect(asked[1]).toBe(90);
    expect(asked[2]).toBeCloseTo((Math.asin(699 / 700) * 180) / Math.PI, 9);
    expect(asked.slice(3, 5)).toEqual([90, 89]);
  });
});

describe("tiltBands", () => {
  it("by hand: 970 to 1000 over the tilts is good to 3 %, 990 and more to 1 %", () => {
    const [season] = tiltBands({
      ...ladder,
      days: days.slice(0, 1),
      tiltsDeg: [0, 10, 20, 30, 40, 50],
      dayWh: [960, 970, 990, 1000, 989, 971].map((wh) => Float64Array.of(wh)),
    });
    expect(season).toMatchObject({
      bestTiltDeg: 30,
      dayWh: 1000,
      within1Pct: [20, 30],
      within3Pct: [10, 50],
    });
  });

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
