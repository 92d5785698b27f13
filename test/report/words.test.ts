import { describe, expect, test } from "vitest";
import { readPlan } from "../../lib/plan/index.ts";
import { standUseWords } from "../../lib/report/words/battery-words.ts";
import { countedWords, textSummary } from "../../lib/report/words/text-summary.ts";
import { bearingShort, energyWords, lengthWords } from "../../lib/report/words/words.ts";
import type { SeasonYield } from "../../lib/season/index.ts";

test("energy that rounds to nothing has no sign", () => {
  expect(energyWords(-0.4)).toBe("0 Wh");
  expect(energyWords(-0.6)).toBe("-1 Wh");
});

test("a bearing a hair short of north is 0°, not 360°", () => {
  expect(bearingShort(359.7)).toBe("0°");
  expect(bearingShort(359.4)).toBe("359°");
  expect(bearingShort(-0.2)).toBe("0°");
  expect(bearingShort(360)).toBe("0°");
});

test("a length both ways", () => {
  expect(lengthWords(546.1)).toBe("546 mm (21 1/2 in)");
});

const yieldsOf = (flatWh: readonly number[], legWh: readonly number[], bearingDeg = 180): SeasonYield => {
  const setting = (name: string, legMm: number | null, dayWh: readonly number[]) => ({
    setting: { name, legMm, tiltDeg: legMm === null ? 0 : 30, bearingDeg },
    clearWh: Float64Array.from(dayWh),
    expectedWh: null,
    band: null,
    underEachSky: [],
  });
  return {
    days: flatWh.map((_, day) => ({
      date: `2027-06-0${day + 1}`,
      dayOfYear: 152 + day,
      month: 6,
      first: 0,
      end: 0,
      startMs: 0,
      noonMs: 0,
      noonAltitudeDeg: 60,
      sunHours: 16,
    })),
    settings: [setting("flat", null, flatWh), setting("leg", 300, legWh)],
    best: Uint8Array.from(flatWh, (wh, day) => (legWh[day] > wh ? 1 : 0)),
    weights: [],
  };
};

describe("textSummary", () => {
  test("counts days only where settings change hands", () => {
    expect(textSummary(yieldsOf([300, 500], [400, 400]), "here").at(-1)).toBe(
      "Using whichever is best on each day would bring in 900 Wh, 13 % more: flat on 1 and leg (30°) on 1 of the days.",
    );
    expect(textSummary(yieldsOf([300, 300], [400, 400]), "here").at(-1)).toBe("It is the best on every day.");
  });

  test("says of a season without sun just that", () => {
    expect(textSummary(yieldsOf([0, 0], [0, 0]), "here")).toEqual([
      "here, 1 June 2027 to 2 June 2027 (2 days), facing south (180° from true north).",
      "The sun stays down all season: no setting brings anything.",
    ]);
  });

  test("faces north, not 360°", () => {
    expect(textSummary(yieldsOf([1], [2], 359.7), "here")[0]).toContain("facing north (0° from true north)");
  });
});

const planWith = (mounts: readonly ("stand" | "fixed")[], changes: object = {}) =>
  readPlan({
    site: { latitudeDeg: 52, longitudeDeg: 6 },
    season: { from: "2027-04-01", to: "2027-04-02" },
    panels: mounts.map((kind, index) => ({
      name: `panel ${index + 1}`,
      module: { powerW: 100 },
      mount: { kind },
    })),
    ...changes,
  });

test("which panels are counted is said where some are fixed", () => {
  expect(countedWords(planWith(["stand", "stand"]))).toEqual([]);
  expect(countedWords(planWith(["fixed", "stand"]))).toEqual([
    "All panels are counted, fixed ones (panel 1) where they are.",
  ]);
  expect(countedWords(planWith(["fixed"]))).toEqual([
    "No panel is on the stand: every setting brings the same.",
  ]);
});

test("how the stand is used is said where it has legs", () => {
  const stand = { legs: [{ name: "long", lengthMm: 500 }] };
  expect(standUseWords(planWith(["stand"]))).toEqual([]);
  expect(standUseWords(planWith(["fixed"], { stand }))).toEqual([]);
  expect(standUseWords(planWith(["stand"], { stand }))).toEqual([
    "The stand is on its legs in this, changed by the calendar.",
  ]);
  expect(standUseWords(planWith(["stand"], { stand, worth: { now: "one-leg" } }))).toEqual([
    "The stand stays all season on the one leg that brings most.",
  ]);
  expect(standUseWords(planWith(["stand"], { stand, worth: { now: "flat" } }))).toEqual([
    'The stand lies flat in this, as the plan says ("worth": { "now": "flat" }): its legs are not used.',
  ]);
});
