import { readFileSync } from "node:fs";
import Papa from "papaparse";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { readPlan } from "../../lib/plan/index.ts";
import { energyWords, gainWords, seasonCsv, tiltShort } from "../../lib/report/index.ts";
import {
  bestSingle,
  judgedWh,
  panelUnits,
  type SeasonYield,
  seasonYield,
  settingsOf,
  totalWh,
} from "../../lib/season/index.ts";
import { DEMO, dataFile, skiesFor } from "./demo.ts";
import { CHART, field, notebookUnderTest } from "./notebook-under-test.ts";

/** The season as the library has it, outside any browser. */
const yieldsOf = (given: unknown): SeasonYield => {
  const plan = readPlan(given);
  return seasonYield(skiesFor(plan).skies, panelUnits(plan.panels), settingsOf(plan));
};

/** The figures that the notebook's answer must show for a season. */
const figuresOf = (yields: SeasonYield): readonly string[] => {
  const single = yields.settings[bestSingle(yields)]!;
  const wh = totalWh(judgedWh(single));
  const flatWh = totalWh(judgedWh(yields.settings[0]!));
  return [
    `${single.setting.name} (${tiltShort(single.setting.tiltDeg)})`,
    `${energyWords(wh / yields.days.length)} a day`,
    gainWords(wh, flatWh) ?? "",
  ];
};

const shownFigures = (page: Page) => page.locator(".answer strong").allTextContents();
const chartPicture = (page: Page) => page.locator(CHART).first().innerHTML();

/** Waits until the answer shows a season's figures. */
const expectFigures = async (page: Page, yields: SeasonYield): Promise<void> => {
  await expect
    .poll(async () => (await shownFigures(page)).slice(0, 3), { timeout: 15_000 })
    .toEqual(figuresOf(yields));
};

const { opened, openedAt } = notebookUnderTest("season.html");

test("shows the library's figures for the demo, and a leg's slider changes figures and chart alike", async () => {
  const { page, complaints, close } = await opened();
  await expectFigures(page, yieldsOf(DEMO));
  const before = await chartPicture(page);
  const slider = field(page, "stand.legs[0].lengthMm").locator("input[type=range]");
  await slider.focus();
  for (let press = 0; press < 6; press += 1) await page.keyboard.press("ArrowRight");
  const lengthMm = Number(await slider.inputValue());
  expect(lengthMm).toBe(330);
  const stand = DEMO.stand as { legs: readonly object[] };
  const changed = { ...DEMO, stand: { ...stand, legs: [{ name: "short", lengthMm }, stand.legs[1]] } };
  await expectFigures(page, yieldsOf(changed));
  await expect.poll(() => chartPicture(page), { timeout: 30_000 }).not.toBe(before);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await expectFigures(page, yieldsOf(DEMO));
  expect(complaints).toEqual([]);
  await close();
}, 120_000);

test("a broken field is told in the library's words next to it, and the figures stay", async () => {
  const { page, close } = await opened();
  const latitude = field(page, "site.latitudeDeg");
  await latitude.locator("input[type=text]").fill("191.2");
  await expect
    .poll(() => latitude.locator(".problem").textContent())
    .toMatch(/must be -90 to 90 degrees; south is negative/);
  expect(await latitude.locator("input[type=text]").getAttribute("aria-invalid")).toBe("true");
  await expectFigures(page, yieldsOf(DEMO));
  expect(await page.locator(".toolbar .problems").textContent()).toContain("latitude, 191.2");
  await latitude.locator("input[type=text]").fill("47");
  await expect.poll(() => latitude.locator(".problem").isVisible()).toBe(false);
  await close();
}, 120_000);

test("the table downloads as the CSV the library writes, and parses", async () => {
  const { page, close } = await opened();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.locator(".data-table").getByRole("button", { name: "Save CSV" }).last().click(),
  ]);
  expect(download.suggestedFilename()).toBe("season.csv");
  const text = readFileSync(await download.path(), "utf8");
  expect(text).toBe(seasonCsv(yieldsOf(DEMO)));
  const { data, errors, meta } = Papa.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
  });
  expect(errors).toEqual([]);
  expect(meta.fields).toEqual(
    "date,setting,tilt_deg,bearing_deg,sun_hours,clear_Wh,expected_Wh,best".split(","),
  );
  expect(data).toHaveLength(215 * 3);
  await close();
}, 120_000);

test("the chart is saved as SVG with its colours, and as PNG at twice its size", async () => {
  const { page, close } = await opened();
  const picture = page.locator("main figure").first();
  const saved = async (name: string): Promise<Buffer> => {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      picture.getByRole("button", { name }).click(),
    ]);
    return readFileSync(await download.path());
  };
  const svg = (await saved("Save SVG")).toString("utf8");
  expect(svg).toMatch(/^<\?xml[^>]*\?>\n<svg/);
  expect(svg).toContain("--season-setting-1:");
  const png = await saved("Save PNG");
  // The PNG specification: eight bytes of signature, then IHDR with width and height as big-endian numbers at 16 and 20.
  expect([...png.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const width = await page.locator(CHART).first().getAttribute("width");
  expect(png.readUInt32BE(16)).toBe(2 * Number(width));
  expect(png.length).toBeGreaterThan(20_000);
  // The chart on the page is still the one that answers, not the copy made for the file.
  expect(await page.locator(CHART).first().locator("style").count()).toBeLessThanOrEqual(1);
  await close();
}, 120_000);

test("a plan is saved, opened again, carried in a link, and kept by the browser", async () => {
  const { page, close } = await opened();
  const [saved] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save", exact: true }).click(),
  ]);
  expect(JSON.parse(readFileSync(await saved.path(), "utf8"))).toEqual(DEMO);

  const cabin: Record<string, unknown> = JSON.parse(dataFile("plans/mountain-cabin.json"));
  const mine = { ...cabin, name: "A place of my own" };
  await page.locator("input[type=file][aria-label='Plan file']").setInputFiles({
    name: "mine.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(mine)),
  });
  await expect.poll(() => page.locator(".plan-name").textContent()).toBe("Plan: A place of my own");
  await expectFigures(page, yieldsOf(mine));

  await page.reload();
  await expect.poll(() => page.locator(".plan-name").textContent()).toBe("Plan: A place of my own");

  // Where the clipboard is shut to a page, the address line holds the link.
  await page.evaluate(() => {
    navigator.clipboard.writeText = () => Promise.reject(new Error("shut"));
  });
  await page.getByRole("button", { name: "Copy link" }).click();
  await page.locator(".said", { hasText: "link" }).waitFor();
  const link = page.url();
  expect(link).toContain("#plan=");
  const elsewhere = await openedAt(link);
  await expect.poll(() => elsewhere.page.locator(".plan-name").textContent()).toBe("Plan: A place of my own");
  expect(elsewhere.page.url()).not.toContain("#plan=");
  await elsewhere.close();
  await close();
}, 120_000);

test("inches are shown and read everywhere at once, and the plan stays the same", async () => {
  const { page, close } = await opened();
  await page.getByLabel("Units").selectOption("inch");
  const leg = field(page, "stand.legs[0].lengthMm");
  await expect.poll(() => leg.locator("input[type=text]").inputValue()).toBe("11 13/16");
  expect(await leg.locator(".unit").textContent()).toBe("in");
  await expectFigures(page, yieldsOf(DEMO));
  await leg.locator("input[type=text]").fill("12 1/2");
  const stand = DEMO.stand as { legs: readonly object[] };
  await expectFigures(
    page,
    yieldsOf({ ...DEMO, stand: { ...stand, legs: [{ name: "short", lengthMm: 317.5 }, stand.legs[1]] } }),
  );
  await close();
}, 120_000);

test("the day's charts follow the day that is picked, and Escape lets a tip go", async () => {
  const { page, close } = await opened();
  const day = page.locator(".day-picker input");
  await day.focus();
  await page.keyboard.press("Home");
  await expect.poll(() => page.locator(".day-picker output").textContent()).toMatch(/^15 March 2027/);
  const chart = page.locator(CHART).first();
  await chart.scrollIntoViewIfNeeded();
  const box = (await chart.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  const tip = chart.locator("[aria-label=tip], [data-marks=tip]").locator("text");
  await tip.first().waitFor();
  await page.keyboard.press("Escape");
  await expect.poll(() => tip.count()).toBe(0);
  await close();
}, 120_000);
