import { readFileSync } from "node:fs";
import { parseHTML } from "linkedom";
import Papa from "papaparse";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readPlan } from "../../lib/plan/index.ts";
import { csvText, legsHeadline, swapsTable } from "../../lib/report/index.ts";
import {
  bestLegsOfPlan,
  chosenLegs,
  legsAsSettings,
  panelUnits,
  type SwapsAnswer,
  skiesOfPlan,
  standSeason,
  swapsAnswer,
} from "../../lib/season/index.ts";
import { launchChromium } from "./chromium.ts";
import { guardedPage } from "./guarded-page.ts";
import { builtTakeAway, type TakeAway } from "./take-away.ts";

const dataFile = (name: string): string =>
  readFileSync(new URL(`../../data/${name}`, import.meta.url), "utf8");

const DEMO: Record<string, unknown> = JSON.parse(dataFile("plans/warden-hut.json"));

/** The calendar as the library has it, outside any browser: for the plan's own legs, or the best so many. */
const swapsOf = (given: unknown, best?: number): SwapsAnswer => {
  const plan = readPlan(given);
  const weather =
    plan.sky.source === "weather" ? dataFile(`weather/${plan.sky.file.split("/").at(-1)}`) : null;
  const season = standSeason(plan, skiesOfPlan(plan, weather).skies, panelUnits(plan.panels));
  const sets = bestLegsOfPlan(season, { most: 4 });
  return swapsAnswer(season, { keep: 0.99 }, legsAsSettings(plan, chosenLegs(plan, sets, best)));
};

const figuresOf = (swaps: SwapsAnswer): readonly string[] =>
  legsHeadline(swaps).flatMap((part) => (typeof part === "string" ? [] : [part.figure]));

const MAP = "main figure svg[aria-label]";
const field = (page: Page, path: string) => page.locator(`.field[data-path="${path}"]`);
const expectFigures = (page: Page, swaps: SwapsAnswer): Promise<void> =>
  expect
    .poll(() => page.locator(".answer strong").allTextContents(), { timeout: 20_000 })
    .toEqual(figuresOf(swaps));

/** Parts below the fold are made when a reader comes near, or prints. */
const madeAll = (page: Page): Promise<unknown> =>
  page.evaluate(() => dispatchEvent(new Event("beforeprint")));

let browser: Browser;
let takeAway: TakeAway;
beforeAll(async () => {
  [browser, takeAway] = await Promise.all([launchChromium(), builtTakeAway("legs.html")]);
}, 180_000);
afterAll(async () => {
  await browser.close();
  await takeAway.remove();
});

const opened = async (options: Parameters<typeof guardedPage>[2] = {}) => {
  const guarded = await guardedPage(browser, takeAway.url, {
    viewport: { width: 1280, height: 900 },
    ...options,
  });
  await guarded.page.locator(MAP).first().waitFor();
  return guarded;
};

test("the drawing follows the slider, and answer and map with it", async () => {
  const { page, complaints, close } = await opened();
  await expectFigures(page, swapsOf(DEMO));
  const drawing = page.locator(".drawing svg").nth(1);
  const before = [await drawing.innerHTML(), await page.locator(MAP).first().innerHTML()];
  const slider = field(page, "stand.legs[0].lengthMm").locator("input[type=range]");
  await slider.focus();
  for (let press = 0; press < 8; press += 1) await page.keyboard.press("ArrowRight");
  const lengthMm = Number(await slider.inputValue());
  expect(lengthMm).toBe(340);
  const stand = DEMO.stand as { legs: readonly object[] };
  await expectFigures(
    page,
    swapsOf({ ...DEMO, stand: { ...stand, legs: [{ name: "short", lengthMm }, stand.legs[1]] } }),
  );
  expect(await drawing.getAttribute("aria-label")).toContain("340 mm = 13 3/8 in");
  expect([await drawing.innerHTML(), await page.locator(MAP).first().innerHTML()]).not.toContain(before[0]);
  expect(complaints).toEqual([]);
  await close();
}, 120_000);

test("the best two legs can be shown instead, and everything is for them", async () => {
  const { page, complaints, close } = await opened();
  await page.getByLabel("Legs", { exact: true }).selectOption({ label: "the best 2 to cut" });
  const swaps = swapsOf(DEMO, 2);
  await expectFigures(page, swaps);
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
  await expect.poll(() => page.locator(".trimmed").textContent()).toMatch(/^Cut [\d.]+ mm/);
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
