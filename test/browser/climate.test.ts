import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { readPlan } from "../../lib/plan/index.ts";
import { seasonHeadline } from "../../lib/report/index.ts";
import { panelUnits, seasonYield, settingsOf } from "../../lib/season/index.ts";
import { DEMO, skiesFor } from "./demo.ts";
import { expectFigures, field, figuresOf, notebookUnderTest, openSection } from "./notebook-under-test.ts";

const { opened } = notebookUnderTest("season.html");

const choose = async (page: Page, label: string, option: string): Promise<void> => {
  await openSection(page, "sky");
  await page.getByLabel(label, { exact: true }).selectOption({ label: option });
};

test("a climate chosen under Sky answers offline with its source, its band and its uncertainty; an analogy is called rough", async () => {
  const { page, complaints, foreign, close } = await opened();
  const words = page.locator(".sky-words");
  await choose(page, "Where the light comes from", "the climate of the place, with cloud");
  await expect
    .poll(() => words.textContent(), { timeout: 30_000 })
    .toMatch(
      /Nine \w+ days in ten bring more than \d+ Wh.*Nine such seasons in ten.*Cloud from the climate of Bremerhaven/s,
    );
  expect(await words.textContent()).toMatch(/may be off by \d+ %/);
  await choose(page, "Whose climate", "by analogy (rough)");
  await expect
    .poll(() => words.textContent(), { timeout: 30_000 })
    .toContain("Every expected figure here is rough");
  const [metadata] = await Promise.all([
    page.waitForEvent("download"),
    page
      .getByRole("button", { name: "Save its metadata", includeHidden: true })
      .first()
      .dispatchEvent("click"),
  ]);
  expect(readFileSync(await metadata.path(), "utf8")).toContain("Every expected figure here is rough");
  await choose(page, "Whose climate", "a place by name");
  await page.getByLabel("Name of the place", { exact: true }).fill("Lhasa");
  await expect.poll(() => words.textContent(), { timeout: 30_000 }).toContain("Lhasa, China");
  expect(complaints).toEqual([]);
  expect(foreign).toEqual([]);
  await close();
}, 180_000);

// Global radiation on the level of a made-up coast, kWh/m2 a day, January first.
const MONTHS = [0.6, 1.2, 2.5, 3.9, 4.9, 5.3, 5, 4.3, 3, 1.7, 0.8, 0.5];
const LOWS = [-1, -1, 1, 4, 8, 11, 13, 13, 10, 7, 3, 0];
const HIGHS = [4, 5, 9, 13, 17, 20, 22, 22, 18, 13, 8, 5];

/** The figures of the season under a climate of twelve typed months. */
const figuresUnder = (from: object): readonly string[] => {
  const plan = readPlan({ ...DEMO, sky: { source: "climate", from: { kind: "months", ...from } } });
  return figuresOf(
    seasonHeadline(seasonYield(skiesFor(plan).skies, panelUnits(plan.panels), settingsOf(plan))),
  );
};

/** Pastes text into the January of a field, as a person does. */
const paste = (page: Page, path: string, text: string): Promise<void> =>
  field(page, path)
    .locator("input")
    .first()
    .evaluate((input, copied) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData("text", copied);
      input.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
    }, text);

test("twelve numbers pasted at once are the climate, and each that can't be is told at its month", async () => {
  const { page, complaints, foreign, close } = await opened();
  await choose(page, "Where the light comes from", "the climate of the place, with cloud");
  await choose(page, "Whose climate", "twelve numbers of your own");
  const light = field(page, "sky.from.globalKWhM2");
  await expect.poll(() => light.locator(".problem").textContent()).toContain("must have exactly 12 entries");

  await paste(page, "sky.from.globalKWhM2", MONTHS.join("\t").replaceAll(".", ","));
  await expect.poll(() => light.locator(".problem").isVisible()).toBe(false);
  expect(await light.locator(".said").textContent()).toBe("Took 12 numbers, from Jan on.");
  await expectFigures(page, figuresUnder({ globalKWhM2: MONTHS }));

  // More than reaches the top of the air: only the sky itself can tell, and it tells at the month.
  const june = light.getByLabel("Global radiation on the level, mean of a day, Jun");
  await june.fill("19");
  await expect
    .poll(() => light.locator(".problem").textContent())
    .toMatch(/^Jun: must be at most [\d.]+ kWh/);
  expect(await june.getAttribute("aria-invalid")).toBe("true");
  await june.fill("5.3");
  await expect.poll(() => light.locator(".problem").isVisible()).toBe(false);

  await choose(page, "The twelve numbers are", "mean light of a day, MJ/m²");
  expect(await field(page, "sky.from.globalMJM2").locator("input").nth(5).inputValue()).toBe("19.08");
  await page.getByRole("button", { name: "Undo", exact: true }).click();

  await choose(page, "Warmth of the air", "lows and highs of each month");
  await paste(page, "sky.from.airLowC", LOWS.join("\n"));
  await paste(page, "sky.from.airHighC", HIGHS.join("\n"));
  await expectFigures(page, figuresUnder({ globalKWhM2: MONTHS, airLowC: LOWS, airHighC: HIGHS }));
  await page.getByLabel("Units").selectOption("inch");
  await expect.poll(() => field(page, "sky.from.airLowC").locator("input").first().inputValue()).toBe("30.2");
  expect(complaints).toEqual([]);
  expect(foreign).toEqual([]);
  await close();
}, 180_000);

test("the time zone follows the place; one chosen against it is told, with the way back", async () => {
  const { page, complaints, close } = await opened();
  const zone = field(page, "site.timeZone").locator("select");
  const notice = page.getByRole("button", { name: "Go by the clocks of the place" });
  await field(page, "site.latitudeDeg").locator("input[type=text]").fill("60.1");
  await field(page, "site.longitudeDeg").locator("input[type=text]").fill("22.3");
  await expect.poll(() => zone.inputValue()).toBe("Europe/Helsinki");
  expect(await notice.isVisible()).toBe(false);
  await zone.selectOption("Asia/Tokyo");
  await expect.poll(() => notice.isVisible()).toBe(true);
  await field(page, "site.longitudeDeg").locator("input[type=text]").fill("8.6");
  expect(await zone.inputValue()).toBe("Asia/Tokyo");
  await notice.click();
  await expect.poll(() => zone.inputValue()).toBe("Europe/Oslo");
  expect(complaints).toEqual([]);
  await close();
}, 120_000);
