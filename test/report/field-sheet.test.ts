import { parseHTML } from "linkedom";
import { expect, test } from "vitest";
import { fieldSheetPage } from "../../lib/report/paper/field-sheet-page.ts";
import { fieldSheetHeadline } from "../../lib/report/words/field-sheet-headline.ts";
import { panelUnits, skiesOfPlan } from "../../lib/season/index.ts";
import { fieldSheet } from "../../lib/season/sheet/field-sheet.ts";
import { monthExpectations } from "../../lib/season/sheet/month-expectations.ts";
import { aPlan, yieldsOf } from "./a-season.ts";

const emptyDocument = (): Document => parseHTML("<!doctype html><html><body></body></html>").document;

const sheetOf = (plan: ReturnType<typeof aPlan>, aims: number) =>
  fieldSheet(plan, skiesOfPlan(plan, null).skies, panelUnits(plan.panels), aims);

test("holds legs, calendar, facing, months and cautions, and is one document", () => {
  const plan = aPlan({ name: "<b>Raft</b> & reeds" });
  const page = fieldSheetPage(emptyDocument(), sheetOf(plan, 2), "Letter");
  const { document } = parseHTML(page);
  const text = document.body.textContent ?? "";
  expect(page).toContain("size: Letter portrait");
  expect(document.querySelector("h1")?.textContent).toBe("<b>Raft</b> & reeds");
  expect(document.querySelectorAll("h1 b")).toHaveLength(0);
  for (const words of [
    "Which leg when",
    "180° true, south",
    "by compass",
    "25° from the ground (65° from a post)",
    "an upper bound, not what to expect",
    "Battery to the controller",
    "stake the stand",
    "Local electrical code",
  ]) {
    expect(text).toContain(words);
  }
  expect(page).not.toMatch(/https?:\/\/(?!www\.w3\.org)/);
  expect(page).not.toContain("NaN");
});

test("spells out no turning when none is asked for", () => {
  expect(sheetOf(aPlan(), 1).turning).toBeNull();
  expect(sheetOf(aPlan(), 2).turning?.routine.parts.length).toBe(2);
});

test("a month's figures are those of the settings in use on its days", () => {
  const plan = aPlan({ season: { from: "2027-05-30", to: "2027-06-02", stepMinutes: 30 } });
  const yields = yieldsOf(plan, (day) => [0.5, 1, 0.25, 0.75][day]!);
  const inUse = Uint8Array.of(0, 1, 2, 1);
  const [may, june] = monthExpectations(yields, inUse);
  const at = (setting: number, day: number): number => yields.settings[setting]!.expectedWh![day]!;
  expect(may).toMatchObject({ month: "2027-05" });
  expect(may!.meanWh).toBeCloseTo((at(0, 0) + at(1, 1)) / 2, 9);
  expect(june!.meanWh).toBeCloseTo((at(2, 2) + at(1, 3)) / 2, 9);
  // Two values: their 10 % point lies a tenth of the way from the lower to the upper (d3's quantile, type 7).
  const [low, high] = [at(2, 2), at(1, 3)].sort((a, b) => a - b) as [number, number];
  expect(june!.p10Wh).toBeCloseTo(low + 0.1 * (high - low), 9);
  expect(june!.p90Wh).toBeCloseTo(low + 0.9 * (high - low), 9);
});

test("a likelier sky counts for more in a month's spread", () => {
  const yields = yieldsOf(aPlan(), () => 1);
  const one = yields.settings[0]!;
  const [bright, dark] = [one.clearWh, one.clearWh.map((wh) => wh / 10)];
  const mixed = { ...yields, weights: [0.95, 0.05], settings: [{ ...one, underEachSky: [bright, dark] }] };
  const [may] = monthExpectations(mixed, new Uint8Array(20));
  expect(may!.p10Wh).toBeGreaterThan(0.9 * Math.min(...bright));
});

test("what to expect of a day is the mean of the days, not of the months: a short month counts for less", () => {
  // Two days of May, thirty of June.
  const sheet = sheetOf(aPlan({ season: { from: "2027-05-30", to: "2027-06-30", stepMinutes: 30 } }), 1);
  const [may, june] = sheet.months;
  expect(sheet.dayWh).toBeCloseTo((2 * may!.meanWh + 30 * june!.meanWh) / 32, 9);
  expect(Math.abs(sheet.dayWh - (may!.meanWh + june!.meanWh) / 2)).toBeGreaterThan(0.1);
});

test("in a sentence it says what to begin with, when to change, where to face, and what to expect", () => {
  const sheet = sheetOf(aPlan(), 1);
  const words = (of: typeof sheet) =>
    fieldSheetHeadline(of)
      .map((part) => (typeof part === "string" ? part : part.figure))
      .join("");
  const [first] = sheet.swaps;
  const at = (date: string) => ({ ...first!, date });
  const expected = `, face south (180° true), and expect ${Math.round(sheet.dayWh)} Wh a day under a clear sky`;
  const begin = `Begin with ${first!.to.name} (${Math.round(first!.to.tiltDeg)}°)`;
  expect(words({ ...sheet, swaps: [first!] })).toContain(`${begin} and leave it${expected}`);
  expect(words({ ...sheet, swaps: [first!, at("2027-06-02"), at("2027-06-09")] })).toContain(
    `${begin}, change on 2 June and 9 June${expected}`,
  );
  const often = [1, 2, 3, 4, 5].map((day) => at(`2027-06-0${day}`));
  expect(words({ ...sheet, swaps: [first!, ...often] })).toContain(`${begin}, change 5 times${expected}`);
});
