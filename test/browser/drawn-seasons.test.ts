import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { build } from "vite";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launchChromium } from "./chromium.ts";
import { type Drawn, drawnSeasons } from "./drawn-seasons.ts";

/** The module as one script that sets `drawn.drawnSeasons`. */
const script = async (): Promise<string> => {
  const built = await build({
    configFile: false,
    logLevel: "error",
    build: {
      write: false,
      minify: false,
      lib: {
        entry: fileURLToPath(new URL("./drawn-seasons.ts", import.meta.url)),
        formats: ["iife"],
        name: "drawn",
      },
    },
  });
  const [bundle] = [built].flat();
  if (!("output" in bundle)) throw new Error("vite gave no output");
  return bundle.output[0].code;
};

declare const drawn: { readonly drawnSeasons: () => Drawn };

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
}, 120_000);
afterAll(() => browser.close());

test("the same seed draws the same bytes in Node and in Chromium", async () => {
  const page = await browser.newPage();
  await page.addScriptTag({ content: await script() });
  const there = await page.evaluate(() => drawn.drawnSeasons());
  const here = drawnSeasons();
  expect(here.ratios.length).toBe(200 * 61 * 16);
  expect(there.ratios === here.ratios).toBe(true);
  expect(there.csv).toBe(here.csv);
  expect(there.totals).toEqual(here.totals);
}, 120_000);
