import { readFileSync } from "node:fs";
import { parseHTML } from "linkedom";
import Papa from "papaparse";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { readPlan } from "../../lib/plan/index.ts";
import { csvText, legsHeadline, swapsTable } from "../../lib/report/index.ts";
import {
  bestLegsOfPlan,
  chosenLegs,
  legsAsSettings,
  panelUnits,
  type SwapsAnswer,
  standSeason,
  swapsAnswer,
} from "../../lib/season/index.ts";
import { DEMO, skiesFor } from "./demo.ts";
import { CHART, expectFigures, field, figuresOf, notebookUnderTest } from "./notebook-under-test.ts";

/** The calendar as the library has it, outside any browser: for the plan's own legs, or the best so many. */
const swapsOf = (given: unknown, best?: number): SwapsAnswer => {
  const plan = readPlan(given);
  const season = standSeason(plan, skiesFor(plan).skies, panelUnits(plan.panels));
  const sets = bestLegsOfPlan(season, { most: 4 });
  return swapsAnswer(season, { keep: 0.99 }, legsAsSettings(plan, chosenLegs(plan, sets, best)));
};

/** Waits until the answer is that of a calendar. */
const expectSwaps = (page: Page, swaps: SwapsAnswer): Promise<void> =>
  expectFigures(page, figuresOf(legsHeadline(swaps)));

/** Parts below the fold are made when a reader comes near, or prints. */
const madeAll = (page: Page): Promise<unknown> =>
  page.evaluate(() => dispatchEvent(new Event("beforeprint")));

const { opened } = notebookUnderTest("legs.html");

test("the drawing follows the slider, and answer and map with it", async () => {
  const { page, complaints, close } = await opened();
  await expectSwaps(page, swapsOf(DEMO));
  const drawing = page.locator(".drawing svg").nth(1);
  const before = [await drawing.innerHTML(), await page.locator(CHART).first().innerHTML()];
  const slider = field(page, "stand.legs[0].lengthMm").locator("input[type=range]");
  await slider.focus();
  for (let press = 0; press < 8; press += 1) await page.keyboard.press("ArrowRight");
  const lengthMm = Number(await slider.inputValue());
  expect(lengthMm).toBe(340);
  const stand = DEMO.stand as { legs: readonly object[] };
  await expectSwaps(
    page,
    swapsOf({ ...DEMO, stand: { ...stand, legs: [{ name: "short", lengthMm }, stand.legs[1]] } }),
  );
  expect(await drawing.getAttribute("aria-label")).toContain("340 mm = 13 3/8 in");
  expect([await drawing.innerHTML(), await page.locator(CHART).first().innerHTML()]).not.toContain(before[0]);
  expect(complaints).toEqual([]);
  await close();
}, 120_000);

test("the best two legs can be shown instead, and everything is for them", async () => {
  const { page, complaints, close } = await opened();
  await page.getByLabel("Legs", { exact: true }).selectOption({ label: "the best 2 to cut" });
  const swaps = swapsOf(DEMO, 2);
  await expectSwaps(page, swaps);
  await expect.poll(() => page.locator(".drawing").count()).toBe(3);
  await madeAll(page);
  const [calendar] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save CSV" }).nth(1).click(),
  ]);
  expect(readFileSync(await calendar.path(), "utf8")).toBe(csvText(swapsTable(swaps)));
  const [sheet] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save the cutting sheet" }).click(),
  ]);
  const cut = parseHTML(readFileSync(await sheet.path(), "utf8")).document;
  expect(cut.querySelectorAll("tbody tr")).toHaveLength(2);
  expect(cut.querySelectorAll(".drawings svg")).toHaveLength(3);
  expect(complaints).toEqual([]);
  await close();
}, 120_000);

test("a leg that can't stand is told next to its field, and trimming refuses what a saw can't do", async () => {
  const { page, close } = await opened();
  await page.getByLabel("Measured with the leg as it is").fill("30");
  await page.getByLabel("Wanted").fill("35");
  await expect.poll(() => page.locator(".trimmed").textContent()).toMatch(/Don't cut: .* too short/);
  await page.getByLabel("Angles are read from").selectOption("post");
  // Read from a post, 30 is steeper than 35: now there is something to cut.
  await expect.poll(() => page.locator(".trimmed").textContent()).toMatch(/^Cut about [\d.]+ mm/);
  await page.getByLabel("Wanted").fill("steep");
  await expect.poll(() => page.locator(".trimmed").textContent()).toBe("Type both angles in degrees.");
  await close();
}, 120_000);

test("the legs for the fewest short days are lived through beside the page", async () => {
  const { page, complaints, close } = await opened();
  await page.getByLabel("Legs for the fewest short days").selectOption({ label: "yes (takes longer)" });
  const said = page.locator(".short-day-legs li");
  await said.first().waitFor({ timeout: 90_000 });
  const sentences = await said.allTextContents();
  expect(sentences[0]).toMatch(/^Without a new leg: [\d.]+ short days/);
  const short = sentences.slice(0, -1).map((sentence) => Number(/([\d.]+) short days/.exec(sentence)?.[1]));
  expect(short.length).toBeGreaterThan(1);
  expect(short).toEqual([...short].sort((a, b) => b - a));
  expect(complaints).toEqual([]);
  await close();
}, 120_000);

test("every table is a CSV that parses, on a phone too, with no sideways scroll", async () => {
  const { page, complaints, close } = await opened({ viewport: { width: 390, height: 844 } });
  await madeAll(page);
  const buttons = page.getByRole("button", { name: "Save CSV" });
  const count = await buttons.count();
  expect(count).toBe(8);
  for (let index = 0; index < count; index += 1) {
    const [download] = await Promise.all([page.waitForEvent("download"), buttons.nth(index).click()]);
    const { errors, data } = Papa.parse(readFileSync(await download.path(), "utf8"), {
      header: true,
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    expect(data.length).toBeGreaterThan(1);
  }
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  expect(complaints).toEqual([]);
  await close();
}, 120_000);

test("how long the map takes to follow a slider is measured and told", async () => {
  const { page, close } = await opened();
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Performance.enable", { timeDomain: "threadTicks" });
  const processorMs = async (): Promise<number> => {
    const { metrics } = await devtools.send("Performance.getMetrics");
    return 1000 * (metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN);
  };
  // The bearing changes every tilt's energy on every day: the whole map is made anew.
  const slider = field(page, "stand.facingDeg").locator("input[type=range]");
  await slider.focus();
  await page.waitForTimeout(1500);
  const busyMs: number[] = [];
  for (let move = 0; move < 12; move += 1) {
    const before = await processorMs();
    await page.keyboard.press("ArrowRight");
    // Shorter than the calm in which parts below the fold are made.
    await page.waitForTimeout(400);
    busyMs.push((await processorMs()) - before);
    await page.waitForTimeout(1500);
  }
  const tookMs = await page.evaluate(() =>
    performance.getEntriesByName("panel-season:repaint").map(({ duration }) => duration),
  );
  expect(tookMs.length).toBeGreaterThanOrEqual(10);
  // The first move warms the code up; what counts is the hand on the slider.
  const later = (values: readonly number[]): string => {
    const sorted = values.slice(1).sort((a, b) => a - b);
    return sorted[Math.floor(sorted.length / 2)].toFixed(0);
  };
  console.info(
    `tilt-by-date map follows a slider in ${later(tookMs)} ms, ${later(busyMs)} ms of it at work (medians of ${tookMs.length - 1} moves)`,
  );
  await close();
}, 120_000);
