import { describe, expect, it } from "vitest";
import { rulesOfThumb } from "../../../lib/season/legs/rules-of-thumb.ts";
import type { TiltLadder } from "../../../lib/season/legs/tilt-ladder.ts";
import { sunColumns } from "../../../lib/sun/index.ts";

const daysFrom = (from: string, to: string) =>
  sunColumns({ latitudeDeg: 40, longitudeDeg: 0, timeZone: "UTC" }, { from, to }, 60).days;

/** Two days whose watt-hours run straight from rung to rung: what a rule brings can be worked out by hand. */
const ladderOf = (days: TiltLadder["days"], columns: readonly (readonly number[])[]): TiltLadder => ({
  days,
  tiltsDeg: [0, 30, 60, 90],
  bearingDeg: 180,
  dayWh: columns.map((column) => Float64Array.from(column)),
  cloudIn: false,
});

// 20 June and 21 June: declination 23.4 degrees by Spencer, so that "latitude less declination" at 40 N is 16.5 degrees.
const summer = ladderOf(daysFrom("2027-06-20", "2027-06-21"), [
  [400, 500],
  [440, 470],
  [300, 380],
  [100, 200],
]);

const ruleOf = (ladder: TiltLadder, latitudeDeg: number, name: string) => {
  const found = rulesOfThumb(ladder, latitudeDeg).find(({ rule }) => rule === name);
  if (found === undefined) throw new Error(`no rule ${name}`);
  return found;
};

describe("rulesOfThumb, by hand", () => {
  it("goes through all rules in the order in which they are told", () => {
    expect(rulesOfThumb(summer, 40).map(({ rule, changes }) => [rule, changes])).toEqual([
      ["computed best, never changed", false],
      ["latitude", false],
      ["latitude less 15", false],
      ["latitude plus 15", false],
      ["3.7 + 0.69 x latitude", false],
      ["flat", false],
      ["computed best of every day", true],
      ["latitude less 15 in summer, plus 15 in winter", true],
      ["square to the noon sun: latitude less declination", true],
    ]);
  });

  it("reads tilts between rungs off a straight line", () => {
    // Latitude 40: a third of the way from 30 to 60. Day 1: 440 - 140/3, day 2: 470 - 90/3.
    const latitude = ruleOf(summer, 40, "latitude");
    expect(latitude.totalWh).toBeCloseTo(440 - 140 / 3 + 470 - 30, 9);
    expect(latitude.tiltDeg).toEqual([40, 40]);
    // Less 15 is 25: five sixths of the way from 0 to 30.
    expect(ruleOf(summer, 40, "latitude less 15").totalWh).toBeCloseTo(
      400 + (40 * 5) / 6 + 500 - (30 * 5) / 6,
      9,
    );
    // Plus 15 is 55; 3.7 + 27.6 is 31.3.
    expect(ruleOf(summer, 40, "latitude plus 15").totalWh).toBeCloseTo(
      440 - (140 * 25) / 30 + 470 - (90 * 25) / 30,
      9,
    );
    expect(ruleOf(summer, 40, "3.7 + 0.69 x latitude").totalWh).toBeCloseTo(
      440 - (140 * 1.3) / 30 + 470 - (90 * 1.3) / 30,
      9,
    );
    expect(ruleOf(summer, 40, "flat")).toMatchObject({ totalWh: 900, tiltDeg: [0, 0] });
  });

  it("holds one tilt against the best tilt of the season, changes against the best of every day", () => {
    // Season: 900, 910, 680, 300. Days: 440 and 500.
    const held = ruleOf(summer, 40, "computed best, never changed");
    expect(held).toMatchObject({ totalWh: 910, lossWh: 0, lossShare: 0, tiltDeg: [30, 30] });
    expect(ruleOf(summer, 40, "flat")).toMatchObject({ lossWh: 10, lossShare: 1 - 900 / 910 });
    const daily = ruleOf(summer, 40, "computed best of every day");
    expect(daily).toMatchObject({ totalWh: 940, lossWh: 0, tiltDeg: [0, 30] });
    const seasonal = ruleOf(summer, 40, "latitude less 15 in summer, plus 15 in winter");
    expect(seasonal.tiltDeg).toEqual([25, 25]);
    expect(seasonal.lossWh).toBeCloseTo(940 - seasonal.totalWh, 9);
    const noon = ruleOf(summer, 40, "square to the noon sun: latitude less declination");
    expect(noon.tiltDeg[0]).toBeCloseTo(40 - 23.44, 1);
    expect(noon.totalWh).toBeCloseTo(900 + (40 - 30) * (noon.tiltDeg[0] / 30), 1);
  });

  it("is summer where the sun stands on the same side of the equator", () => {
    const name = "latitude less 15 in summer, plus 15 in winter";
    expect(ruleOf(summer, -40, name).tiltDeg).toEqual([55, 55]);
    const winter = { ...summer, days: daysFrom("2027-12-20", "2027-12-21") };
    expect(ruleOf(winter, 40, name).tiltDeg).toEqual([55, 55]);
    expect(ruleOf(winter, -40, name).tiltDeg).toEqual([25, 25]);
  });

  it("loses no share of nothing in the polar night", () => {
    const dark = ladderOf(
      summer.days,
      [0, 0, 0, 0].map((wh) => [wh, wh]),
    );
    for (const { totalWh, lossShare } of rulesOfThumb(dark, 80)) expect([totalWh, lossShare]).toEqual([0, 0]);
  });

  it("needs a ladder from flat to upright, and says what it got", () => {
    const tilts = (tiltsDeg: readonly number[]) => () => rulesOfThumb({ ...summer, tiltsDeg }, 40);
    expect(tilts([1, 30, 60, 90])).toThrow(
      "rulesOfThumb: expected tilts from 0 to 90 degrees, received 1 to 90",
    );
    expect(tilts([0, 30, 60, 89])).toThrow(
      "rulesOfThumb: expected tilts from 0 to 90 degrees, received 0 to 89",
    );
  });
});
