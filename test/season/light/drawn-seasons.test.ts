import { describe, expect, test } from "vitest";
import { readPlan } from "../../../lib/plan/index.ts";
import type { SeasonCloud } from "../../../lib/season/light/season-cloud.ts";
import type { SeasonYield } from "../../../lib/season/light/season-yield.ts";
import { seasonBands, seasonTotals, sequenceDays, totalBand } from "../../../lib/season/light/sequences.ts";
import { skiesOfPlan } from "../../../lib/season/light/skies-of-plan.ts";

const column = (...values: readonly number[]): Float64Array => Float64Array.from(values);

type Skies = Pick<SeasonCloud, "skies">;

/** Skies known by their days' ratios to the clear day alone. */
const skiesOf = (...ratios: readonly Float64Array[]): Skies => {
  const { skies } = cloudOf();
  return { skies: ratios.map((ratio, at) => ({ ...skies[at], ratio })) };
};

const climatePlan = (changes: object = {}) =>
  readPlan({
    site: { latitudeDeg: 50, longitudeDeg: 8, elevationM: 100, timeZone: "Etc/GMT-1" },
    season: { from: "2027-06-29", to: "2027-07-02", stepMinutes: 60 },
    sky: {
      source: "climate",
      from: { kind: "months", clearness: new Array<number>(12).fill(0.45) },
      seasons: 10,
      seed: 3,
    },
    panels: [{ name: "panel", module: { powerW: 100 } }],
    ...changes,
  });

const cloudOf = (): SeasonCloud => {
  const { cloud } = skiesOfPlan(climatePlan(), null);
  if (cloud === null) throw new Error("expected a climate");
  return cloud;
};

describe("sequenceDays, by hand", () => {
  test("a day's watt-hours run straight from sky to sky, and on beyond the outer ones, never below none", () => {
    // One day, drawn in seven seasons. 0.2, 0.5 and 1 of the light bring 40, 100 and 300 Wh.
    const skies = skiesOf(column(0.2), column(0.5), column(1));
    const ratio = column(0.2, 0.35, 0.5, 0.75, 1, 1.1, 0.1, 0, Number.NaN);
    const found = sequenceDays([column(40), column(100), column(300)], skies, { seasons: 9, days: 1, ratio });
    [40, 70, 100, 200, 300, 340, 20, 0, 0].forEach((wh, season) => {
      expect(found[season]).toBeCloseTo(wh, 9);
    });
    // A steeper start would go below nothing.
    expect(
      sequenceDays([column(10), column(100)], skiesOf(column(0.2), column(0.5)), {
        seasons: 1,
        days: 1,
        ratio: column(0.1),
      })[0],
    ).toBe(0);
  });

  test("each season's days stand together, each day by its own skies", () => {
    const skies = skiesOf(column(0.2, 0.4), column(0.6, 0.8));
    const ratio = column(0.2, 0.8, 0.6, 0.4, 0.4, 0.6);
    const found = sequenceDays([column(10, 100), column(30, 300)], skies, { seasons: 3, days: 2, ratio });
    expect([...found].map((wh) => Math.round(wh * 1e6) / 1e6)).toEqual([10, 300, 30, 100, 20, 200]);
    expect([...seasonTotals(found, 3)].map(Math.round)).toEqual([310, 130, 220]);
  });

  test("skies that are all alike: watt-hours go with the light; where there is none, they are as they are", () => {
    const alike = sequenceDays([column(80), column(80)], skiesOf(column(0.8), column(0.8)), {
      seasons: 2,
      days: 1,
      ratio: column(0.4, 0.8),
    });
    expect([...alike]).toEqual([40, 80]);
    const dark = sequenceDays([column(7), column(7)], skiesOf(column(0), column(0)), {
      seasons: 1,
      days: 1,
      ratio: column(0.4),
    });
    expect([...dark]).toEqual([7]);
  });
});

describe("totalBand and seasonBands", () => {
  test("p10, p50 and p90 of the seasons' totals, in whatever order they come", () => {
    expect(totalBand(column(50, 10, 30, 20, 40, 0, 100, 60, 80, 70, 90))).toEqual({
      p10Wh: 10,
      p50Wh: 50,
      p90Wh: 90,
    });
    // Two totals: a tenth of the way from one to the other.
    expect(totalBand(column(200, 100))).toEqual({ p10Wh: 110, p50Wh: 150, p90Wh: 190 });
  });

  test("one band a setting, under the same drawn seasons, and none for yields under other skies", () => {
    const cloud = cloudOf();
    const { days } = skiesOfPlan(climatePlan(), null).skies.sun;
    // A setting that brings a hundred watt-hours for each unit of the clear day's light.
    const bringing = (wh: number) => ({
      setting: { name: "made", legMm: null, tiltDeg: 0, bearingDeg: 180 },
      clearWh: column(wh, wh, wh, wh),
      expectedWh: null,
      band: null,
      underEachSky: cloud.skies.map(({ ratio }) => ratio.map((share) => share * wh)),
    });
    const yields: SeasonYield = {
      days,
      settings: [bringing(100), bringing(200)],
      best: new Uint8Array(4),
      weights: cloud.skies.map(({ weight }) => weight),
    };
    const told: number[] = [];
    const [one, two] = seasonBands(yields, cloud, (done) => told.push(done));
    expect(told).toEqual([1, 2, 3, 4]);
    expect(two.p50Wh).toBeCloseTo(2 * one.p50Wh, 9);
    expect(one.p10Wh).toBeLessThan(one.p90Wh);
    expect(() => seasonBands({ ...yields, weights: [1] }, cloud)).toThrow(
      `seasonBands: expected yields under ${cloud.skies.length} skies, received 1`,
    );
  });
});

describe("what a climate says of its season", () => {
  const from = (clearness: readonly number[]) => ({
    sky: { source: "climate", from: { kind: "months", clearness }, seasons: 10 },
  });

  test("an ordinary one nothing but where it is from", () => {
    expect(skiesOfPlan(climatePlan(), null).notes).toEqual([
      "Cloud from the climate of twelve months as stated in the plan.",
    ]);
  });

  test("months brighter than the clear sky are named, with the brightest one's share", () => {
    const notes = (clearness: readonly number[]) =>
      skiesOfPlan(climatePlan(from(clearness)), null).notes.slice(1);
    const months = new Array<number>(12).fill(0.45);
    expect(notes(months.with(5, 0.85))[0]).toMatch(
      /^The climate's June is up to \d+ % brighter than a clear sky over this site: is site\.elevationM right, is air\.turbidity too hazy\?$/,
    );
    const two = notes(months.with(5, 0.85).with(6, 0.88))[0];
    expect(two).toMatch(/^The climate's June, July are up to \d+ % brighter/);
    // The clear sky of June at 50 N has a clearness of some 0.77: 0.88 is 14 % more.
    expect(Number(/up to (\d+) %/.exec(two)?.[1])).toBeGreaterThan(10);
    expect(Number(/up to (\d+) %/.exec(two)?.[1])).toBeLessThan(20);
  });

  test("the climate's own seed and number of seasons go with it", () => {
    expect(cloudOf()).toMatchObject({ seasons: 10, seed: 3 });
  });
});
