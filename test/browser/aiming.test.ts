import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { readPlan } from "../../lib/plan/index.ts";
import { aimsCsv, aimsHeadline, cardPlace } from "../../lib/report/index.ts";
import { panelUnits, reaim } from "../../lib/season/index.ts";
import { DEMO, skiesFor } from "./demo.ts";
import { expectFigures, figuresOf, notebookUnderTest } from "./notebook-under-test.ts";

/** The answer as the library has it, outside any browser: its table and the figures of its headline. */
const answerOf = (given: unknown) => {
  const plan = readPlan(given);
  const { skies } = skiesFor(plan);
  const answer = reaim(plan, skies, panelUnits(plan.panels));
  return {
    csv: aimsCsv(answer, cardPlace(plan.site, skies.sun.days)),
    figures: figuresOf(aimsHeadline(answer)),
  };
};

const cards = (page: Page) => page.locator(".aim-cards li");
const PATH_CHART = 'svg[aria-label="Path of the sun with the day\'s aims"]';

/** The chart below the fold, which is drawn when its heading comes into view. */
const pathPicture = async (page: Page): Promise<string> => {
  await page.getByText("The sun's path, and where the panel looks").scrollIntoViewIfNeeded();
  return page.locator(PATH_CHART).innerHTML();
};

const { opened } = notebookUnderTest("aiming.html");

test("shows the library's figures, and a hill in the plan changes them and the sun's path", async () => {
  const { page, complaints, close } = await opened();
  await expectFigures(page, answerOf(DEMO).figures);
  const before = await pathPicture(page);

  await page.getByRole("button", { name: "Add a point" }).click();
  const withHill = {
    ...DEMO,
    site: { ...(DEMO.site as object), horizon: [{ bearingDeg: 60, altitudeDeg: 10 }] },
  };
  await expectFigures(page, answerOf(withHill).figures);
  // A chart below the fold is drawn anew in a quiet moment.
  await expect.poll(() => pathPicture(page), { timeout: 30_000 }).not.toBe(before);
  expect(complaints).toEqual([]);
  await close();
}, 120_000);

test("gives a card for each aim of the routine picked, and keeps the pick", async () => {
  const { page, close } = await opened();
  await expect.poll(() => cards(page).count()).toBe(2);
  await page.getByLabel("Aims a day").selectOption({ label: "3" });
  await expect.poll(() => cards(page).count()).toBe(3);
  await page.getByLabel("For", { exact: true }).selectOption({ label: "the whole season" });
  await expect.poll(() => cards(page).nth(1).textContent()).toContain("from 28 March 2027");
  expect(await cards(page).count()).toBe(3);
  expect(await cards(page).first().textContent()).toContain("by compass");
  await close();
}, 120_000);

test("the table and the sun compass can be taken away", async () => {
  const { page, close } = await opened();
  const [table] = await Promise.all([
    page.waitForEvent("download"),
    page.locator(".data-table").getByRole("button", { name: "Save CSV" }).last().click(),
  ]);
  expect(readFileSync(await table.path(), "utf8")).toBe(answerOf(DEMO).csv);
  const [dial] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save SVG to print" }).click(),
  ]);
  expect(dial.suggestedFilename()).toBe("sun-compass.svg");
  expect(readFileSync(await dial.path(), "utf8")).toMatch(/<svg[^>]*width="190mm"/);
  await close();
}, 120_000);
