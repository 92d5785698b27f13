import { readFileSync } from "node:fs";
import Papa from "papaparse";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Checks } from "../../lib/report/index.ts";
import { launchChromium } from "./chromium.ts";
import { guardedPage } from "./guarded-page.ts";
import { builtTakeAway, type TakeAway } from "./take-away.ts";

const checks: Checks = JSON.parse(
  readFileSync(new URL("../../notebooks/kit/checks/outcomes.json", import.meta.url), "utf8"),
);

let browser: Browser;
let takeAway: TakeAway;
beforeAll(async () => {
  [browser, takeAway] = await Promise.all([launchChromium(), builtTakeAway("checks.html")]);
}, 180_000);
afterAll(async () => {
  await browser.close();
  await takeAway.remove();
});

test("shows what the command wrote, lets any comparison be looked into, and hands its cases over", async () => {
  const { page, complaints, foreign, close } = await guardedPage(browser, takeAway.url, {
    viewport: { width: 1280, height: 900 },
  });
  const comparisons = checks.sections.flatMap((section) => section.comparisons);
  const cases = comparisons.reduce((sum, each) => sum + each.cases.length, 0);
  await expect
    .poll(() => page.locator(".answer strong").allTextContents(), { timeout: 15_000 })
    .toEqual([cases.toLocaleString("en"), `${comparisons.length} comparisons`]);

  const panel = checks.sections.find(({ room }) => room === "panel")!;
  const wanted = panel.comparisons.at(-1)!;
  await page.getByLabel("Part of the library").selectOption("panel");
  await page.getByLabel("Quantity").selectOption({ index: panel.comparisons.length - 1 });
  const figure = page.locator("figure", {
    has: page.locator("figcaption", {
      hasText: new RegExp(`^${wanted.quantity.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&")}$`),
    }),
  });
  await figure.locator(`svg[aria-label^="Differences of"]`).waitFor();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    figure.getByRole("button", { name: "Save CSV" }).click(),
  ]);
  const { data } = Papa.parse<Record<string, string>>(readFileSync(await download.path(), "utf8"), {
    header: true,
    skipEmptyLines: true,
  });
  expect(data.map((row) => row.case)).toEqual(wanted.cases.map(([id]) => id));
  expect(complaints).toEqual([]);
  expect(foreign).toEqual([]);
  await close();
}, 60_000);
