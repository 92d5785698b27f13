import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Plan, readPlan } from "../../lib/plan/index.ts";
import { wiringHeadline, worthHeadline } from "../../lib/report/index.ts";
import { batteryOfPlan, skiesOfPlan, worthOfPlan } from "../../lib/season/index.ts";
import { launchChromium } from "./chromium.ts";
import { guardedPage } from "./guarded-page.ts";
import { builtTakeAway, type TakeAway } from "./take-away.ts";

const dataFile = (name: string): string =>
  readFileSync(new URL(`../../data/${name}`, import.meta.url), "utf8");

const DEMO: Record<string, unknown> = JSON.parse(dataFile("plans/warden-hut.json"));

/** The demo as the notebooks run it: at the step of its battery. */
const lived = (changes: object = {}): Plan => {
  const plan = readPlan({ ...DEMO, ...changes });
  return { ...plan, season: { ...plan.season, stepMinutes: plan.worth.stepMinutes } };
};

const skiesFor = (plan: Plan) =>
  skiesOfPlan(
    plan,
    plan.sky.source === "weather" ? dataFile(`weather/${plan.sky.file.split("/").at(-1)}`) : null,
  );

const figuresOf = (headline: ReturnType<typeof worthHeadline>): readonly string[] =>
  headline.flatMap((part) => (typeof part === "string" ? [] : [part.figure]));

const shownFigures = (page: Page) => page.locator(".answer strong").allTextContents();

let browser: Browser;
let wiring: TakeAway;
let second: TakeAway;
beforeAll(async () => {
  browser = await launchChromium();
  wiring = await builtTakeAway("wiring.html");
  second = await builtTakeAway("second-panel.html");
}, 300_000);
afterAll(async () => {
  await browser.close();
  await wiring.remove();
  await second.remove();
});

const opened = async (takeAway: TakeAway) => {
  const guarded = await guardedPage(browser, takeAway.url, { viewport: { width: 1280, height: 900 } });
  await guarded.page.locator("main figure svg[aria-label]").first().waitFor();
  return guarded;
};

test("second-panel shows the library's answer, and fewer appliances change it", async () => {
  const { page, complaints, close } = await opened(second);
  const plan = lived();
  const worth = (of: Plan) => figuresOf(worthHeadline(worthOfPlan(of, skiesFor(of)).answer, of.worth));
  await expect.poll(() => shownFigures(page), { timeout: 60_000 }).toEqual(worth(plan));
  expect(await page.locator(".caution").getByText("Cover the panel").count()).toBe(1);

  const frugal = lived({
    loads: { ...plan.loads, appliances: plan.loads.appliances.filter(({ name }) => name !== "cool box") },
  });
  const section = page.locator("#plan-loads");
  if ((await section.getAttribute("open")) === null) await section.locator("summary").click();
  await section.getByRole("button", { name: "Take this appliance out" }).last().click();
  await expect.poll(() => shownFigures(page), { timeout: 60_000 }).toEqual(worth(frugal));
  expect(complaints).toEqual([]);
  await close();
}, 180_000);

test("wiring shows the library's answer, and a warmer panel moves the operating points", async () => {
  const { page, complaints, close } = await opened(wiring);
  const plan = lived();
  const { wiring: answer } = batteryOfPlan(plan, skiesFor(plan));
  await expect.poll(() => shownFigures(page), { timeout: 60_000 }).toEqual(figuresOf(wiringHeadline(answer)));

  const points = () =>
    page.locator('svg[aria-label^="Current against voltage"]').getAttribute("aria-description");
  const before = await points();
  expect(before).toContain("MPPT");
  await page.getByLabel("Cells at").selectOption({ label: "75 °C" });
  await expect.poll(points, { timeout: 10_000 }).not.toBe(before);
  expect(complaints).toEqual([]);
  await close();
}, 180_000);
