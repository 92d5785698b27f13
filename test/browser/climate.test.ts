import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launchChromium } from "./chromium.ts";
import { guardedPage } from "./guarded-page.ts";
import { builtTakeAway, type TakeAway } from "./take-away.ts";

let browser: Browser;
let takeAway: TakeAway;
beforeAll(async () => {
  [browser, takeAway] = await Promise.all([launchChromium(), builtTakeAway("season.html")]);
}, 180_000);
afterAll(async () => {
  await browser.close();
  await takeAway.remove();
});

test("a climate chosen under Sky answers offline with its source, its band and its doubt; an analogy is called rough", async () => {
  const { page, complaints, foreign, close } = await guardedPage(browser, takeAway.url, {
    viewport: { width: 1280, height: 900 },
  });
  await page.locator("main figure svg[aria-label]").first().waitFor();
  const choose = async (label: string, option: string): Promise<void> => {
    const select = page.getByLabel(label, { exact: true });
    if (!(await select.isVisible())) await page.getByText("Sky", { exact: true }).first().click();
    await select.selectOption({ label: option });
  };
  const words = page.locator(".sky-words");
  await choose("Where the light comes from", "the climate of the place, cloud and all");
  await expect
    .poll(() => words.textContent(), { timeout: 30_000 })
    .toMatch(
      /Nine \w+ days in ten bring more than \d+ Wh.*Nine such seasons in ten.*Cloud from the climate of Bremerhaven/s,
    );
  expect(await words.textContent()).toMatch(/may be off by \d+ %/);
  await choose("Whose climate", "by analogy (rough)");
  await expect
    .poll(() => words.textContent(), { timeout: 30_000 })
    .toContain("Every expected figure here is rough");
  await choose("Whose climate", "a place by name");
  await page.getByLabel("Name of the place", { exact: true }).fill("Lhasa");
  await expect.poll(() => words.textContent(), { timeout: 30_000 }).toContain("Lhasa, China");
  expect(complaints).toEqual([]);
  expect(foreign).toEqual([]);
  await close();
}, 180_000);
