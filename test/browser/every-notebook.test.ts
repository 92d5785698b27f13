import { readFileSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { LARGEST_TAKE_AWAY_BYTES, notebookFiles } from "../../notebooks/kit/build/notebook-files.ts";
import { launchChromium } from "./chromium.ts";
import { guardedPage, sidewaysPx } from "./guarded-page.ts";
import { builtTakeAway, type TakeAway } from "./take-away.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

const LOOKS = [
  { width: 1280, height: 900, colorScheme: "light" },
  { width: 1280, height: 900, colorScheme: "dark" },
  { width: 390, height: 844, colorScheme: "light" },
  { width: 390, height: 844, colorScheme: "dark" },
] as const;

/** What A4 leaves between margins of 14 mm, px at 96 to the inch. */
const PAPER = { width: 688, height: 1017 } as const;

/** A break of the accessibility rules as the checker tells it, short enough to read in a test's output. */
interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

declare const axe: { readonly run: () => Promise<{ readonly violations: readonly Violation[] }> };

/** All notebooks; or, while working on one, those named in PANEL_SEASON_NOTEBOOKS. */
const notebooksAsked = (): readonly string[] => {
  const asked = process.env.PANEL_SEASON_NOTEBOOKS?.split(",");
  return notebookFiles().filter((file) => asked === undefined || asked.includes(file));
};

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
}, 120_000);
afterAll(() => browser.close());

describe.each(notebooksAsked())("%s, one file opened from disk", (file) => {
  let takeAway: TakeAway;
  beforeAll(async () => {
    takeAway = await builtTakeAway(file);
  }, 180_000);
  afterAll(() => takeAway.remove());

  test("weighs no more than a bad connection can bear", () => {
    expect(statSync(takeAway.path).size).toBeLessThanOrEqual(LARGEST_TAKE_AWAY_BYTES);
  });

  test.each(LOOKS)(
    "at $width px, $colorScheme: no error, no request, no sideways scroll, no axe violation",
    async ({ width, height, colorScheme }) => {
      const { page, complaints, foreign, close } = await guardedPage(browser, takeAway.url, {
        viewport: { width, height },
        colorScheme,
        reducedMotion: "reduce",
      });
      await page.locator("main svg[aria-label]").first().waitFor();
      await page.waitForLoadState("networkidle");
      expect(await page.locator(".observablehq--error").allTextContents()).toEqual([]);
      expect(await sidewaysPx(page)).toBe(0);
      await page.evaluate(AXE);
      const { violations } = await page.evaluate(() => axe.run());
      expect(
        violations.map(({ id, nodes }) => [
          id,
          nodes.slice(0, 3).map(({ html, failureSummary }) => `${html.slice(0, 160)} ${failureSummary}`),
        ]),
      ).toEqual([]);
      expect(complaints).toEqual([]);
      expect(foreign).toEqual([]);
      await close();
    },
    120_000,
  );

  test("on paper: the answer, its first picture and what the plan comes down to; nothing to press, nothing cut off", async () => {
    const { page, close } = await guardedPage(browser, takeAway.url, {
      viewport: PAPER,
      reducedMotion: "reduce",
    });
    await page.locator("main svg[aria-label]").first().waitFor({ timeout: 60_000 });
    await page.locator(".answer").waitFor({ timeout: 60_000 });
    await page.emulateMedia({ media: "print" });
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    expect(await page.locator("main svg[aria-label]").first().isVisible()).toBe(true);
    const isSheet = (await page.locator(".paper").count()) > 0;
    // The field sheet is printed alone; every other notebook with its answer and, where it has one, its plan in a line.
    expect(await page.locator(".answer").isVisible()).toBe(!isSheet);
    if ((await page.locator(".plan").count()) > 0) {
      expect(await page.locator(".plan-words").isVisible()).toBe(!isSheet);
    }
    // What is drawn late, a chart or a table below the fold, may be laid out while we look.
    await expect
      .poll(
        () =>
          page.locator("button:visible, input:visible, nav:visible, summary:visible:not(.plan-name)").count(),
        { timeout: 20_000 },
      )
      .toBe(0);
    await expect.poll(() => sidewaysPx(page), { timeout: 20_000 }).toBe(0);
    await close();
  }, 120_000);
});
