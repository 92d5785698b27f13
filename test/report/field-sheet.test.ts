import { parseHTML } from "linkedom";
import { expect, test } from "vitest";
import { fieldSheetPage } from "../../lib/report/paper/field-sheet-page.ts";
import { fieldSheetHeadline } from "../../lib/report/words/field-sheet-headline.ts";
import { panelUnits, skiesOfPlan } from "../../lib/season/index.ts";
import { fieldSheet } from "../../lib/season/sheet/field-sheet.ts";
import { aPlan } from "./a-season.ts";

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
    "Stake it, and bring it in above that",
    "unstaked it may move above",
    "Never look into the sun",
    "into the battery",
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

test("in a sentence it says what to begin with, when to change, where to face, and what to expect", () => {
  const sheet = sheetOf(aPlan(), 1);
  const words = (of: typeof sheet) =>
    fieldSheetHeadline(of)
      .map((part) => (typeof part === "string" ? part : part.figure))
      .join("");
  const [first] = sheet.swaps;
  const at = (date: string) => ({ ...first!, date });
  const expected = `, face south (180° true), and expect ${Math.round(sheet.batteryDayWh)} Wh a day into the battery, of ${Math.round(sheet.panelsDayWh)} Wh that the panels make, under a clear sky`;
  const begin = `Begin with ${first!.to.name} (${Math.round(first!.to.tiltDeg)}°)`;
  expect(words({ ...sheet, swaps: [first!] })).toContain(`${begin} and leave it${expected}`);
  expect(words({ ...sheet, swaps: [first!, at("2027-06-02"), at("2027-06-09")] })).toContain(
    `${begin}, change on 2 June and 9 June${expected}`,
  );
  const often = [1, 2, 3, 4, 5].map((day) => at(`2027-06-0${day}`));
  expect(words({ ...sheet, swaps: [first!, ...often] })).toContain(`${begin}, change 5 times${expected}`);
});
