import { parseHTML } from "linkedom";
import { describe, expect, it } from "vitest";
import { readPlan } from "../../lib/plan/index.ts";
import { fieldSheetPage } from "../../lib/report/paper/field-sheet-page.ts";
import { fieldSheetHeadline } from "../../lib/report/words/field-sheet-headline.ts";
import { legsHeadline } from "../../lib/report/words/legs-headline.ts";
import { legsSummary } from "../../lib/report/words/legs-summary.ts";
import { swapsSummary } from "../../lib/report/words/swaps-summary.ts";
import { legsAnswer } from "../../lib/season/legs/legs-answer.ts";
import { standSeason } from "../../lib/season/legs/stand-season.ts";
import { swapsAnswer } from "../../lib/season/legs/swaps-answer.ts";
import { panelUnits } from "../../lib/season/light/panel-unit.ts";
import { fieldSheet } from "../../lib/season/sheet/field-sheet.ts";
import { clearSkies } from "../season/random-plan.ts";

/** Two legs close together in a northern summer: changing between them is worth little. */
const seasonWith = (leastGainPct?: number) => {
  const plan = readPlan({
    site: { latitudeDeg: 57.75, longitudeDeg: 12, timeZone: "Europe/Stockholm" },
    season: { from: "2027-05-01", to: "2027-08-15", stepMinutes: 30 },
    panels: [{ name: "panel", module: { powerW: 100 }, lengthMm: 1100 }],
    stand: {
      pivotMm: 700,
      legs: [
        { name: "low", lengthMm: 330 },
        { name: "high", lengthMm: 560 },
      ],
      ...(leastGainPct === undefined ? {} : { leastGainPct }),
    },
  });
  return standSeason(plan, clearSkies(plan), panelUnits(plan.panels));
};

const textOf = (answer: Parameters<typeof legsHeadline>[0]): string =>
  legsHeadline(answer)
    .map((part) => (typeof part === "string" ? part : part.figure))
    .join("");

describe("more than it is worth", () => {
  it("changes were ordered for less than 2 % of the season: now the first sentence says never to change it", () => {
    const answer = swapsAnswer(seasonWith());
    const { calendar } = answer;
    expect(calendar.swaps.length).toBeGreaterThan(0);
    expect(calendar.totalWh / calendar.forgetWh).toBeLessThan(1.02);
    expect(swapsSummary(answer)[0]).toMatch(/^Never change it: /);
    expect(textOf(answer)).toMatch(/^Never change it: /);
  });

  it("sets of two and three were given for next to nothing: now the first sentence says one leg is enough", () => {
    expect(legsSummary(legsAnswer(seasonWith()))[0]).toMatch(/^One leg is enough: \d+ mm .* at best\.$/);
  });

  it("a plan may ask for less or more before a leg or a change counts", () => {
    expect(swapsSummary(swapsAnswer(seasonWith(0)))[0]).not.toMatch(/^Never/);
    expect(legsSummary(legsAnswer(seasonWith(0)))[0]).not.toMatch(/enough/);
    expect(legsSummary(legsAnswer(seasonWith(50)))[0]).toMatch(/^No leg is needed\. More legs bring/);
    expect(textOf(swapsAnswer(seasonWith(50)))).toMatch(/^Never change it: flat/);
  });

  it("the field sheet led with dates worth less than 2 %: now it says never to change it, and how little they bring", () => {
    const { plan } = seasonWith();
    const sheet = fieldSheet(plan, clearSkies(plan), panelUnits(plan.panels), 1);
    expect(sheet.kept).not.toBeNull();
    const { document } = parseHTML("<!doctype html><html><body></body></html>");
    const page = fieldSheetPage(document as unknown as Document, sheet, "A4");
    expect(page).toMatch(
      /Never change it: [AB] \((low|high)\), tilt \d+°, all season\. The changes below bring [\d.]+ % more/,
    );
    const headline = fieldSheetHeadline(sheet).map((part) => (typeof part === "string" ? part : part.figure));
    expect(headline.join("")).toMatch(/^Never change it: set (low|high)/);
    const { plan: keen } = seasonWith(0);
    expect(fieldSheet(keen, clearSkies(keen), panelUnits(keen.panels), 1).kept).toBeNull();
  });
});
