import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import puppeteer, { type Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { notebookFiles } from "../../notebooks/kit/build/notebook-files.ts";
import { builtTakeAway } from "./take-away.ts";

/** A stock Firefox: FIREFOX_PATH, the usual places, or the PATH. */
const installedFirefox = (): string | null => {
  const onPath = (process.env.PATH ?? "")
    .split(delimiter)
    .flatMap((folder) => [join(folder, "firefox"), join(folder, "firefox-esr")]);
  const places = [
    ...(process.env.FIREFOX_PATH === undefined ? [] : [process.env.FIREFOX_PATH]),
    "/usr/bin/firefox",
    "/usr/bin/firefox-esr",
    "/Applications/Firefox.app/Contents/MacOS/firefox",
    "C:\\Program Files\\Mozilla Firefox\\firefox.exe",
    ...onPath,
  ];
  return places.find((path) => existsSync(path)) ?? null;
};

const program = installedFirefox();
if (program === null) {
  console.warn(
    "No Firefox found (FIREFOX_PATH, usual places, PATH): the notebooks are not tried in it here.",
  );
}

describe.skipIf(program === null)("in a stock Firefox, over WebDriver BiDi", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await puppeteer.launch({ browser: "firefox", executablePath: program ?? "", headless: true });
  }, 120_000);
  afterAll(() => browser.close());

  test.each(notebookFiles())(
    "%s opens from disk and shows its chart without an error",
    async (file) => {
      const takeAway = await builtTakeAway(file);
      const page = await browser.newPage();
      const errors: string[] = [];
      page.on("pageerror", (error) => errors.push(String(error)));
      page.on("console", (message) => {
        if (message.type() === "error") errors.push(message.text());
      });
      await page.setViewport({ width: 1280, height: 900 });
      await page.goto(takeAway.url);
      await page.waitForSelector("main svg[aria-label]", { timeout: 60_000 });
      expect(
        await page.$$eval(".observablehq--error", (found) => found.map((one) => one.textContent)),
      ).toEqual([]);
      // Firefox may lay out a formula while its last parts are still being read, and complain of those; whole it must be.
      const wrongFormulas = await page.$$eval("msub, msup, mfrac, munder, mover", (found) =>
        found.filter((one) => one.childElementCount !== 2).map((one) => one.outerHTML),
      );
      expect(wrongFormulas).toEqual([]);
      expect(errors.filter((error) => !error.includes("Incorrect number of children"))).toEqual([]);
      await page.close();
      await takeAway.remove();
    },
    180_000,
  );

  test("season.html: a leg's slider changes the answer and the chart", async () => {
    const takeAway = await builtTakeAway("season.html");
    const page = await browser.newPage();
    await page.setViewport({ width: 1280, height: 900 });
    await page.goto(takeAway.url);
    await page.waitForSelector("main figure svg[aria-label]", { timeout: 60_000 });
    const shown = () =>
      page.evaluate(() => [
        document.querySelector(".answer")?.textContent,
        document.querySelector("main figure svg")?.innerHTML,
      ]);
    const before = await shown();
    await page.focus('.field[data-path="stand.legs[0].lengthMm"] input[type=range]');
    for (let press = 0; press < 10; press += 1) await page.keyboard.press("ArrowRight");
    await expect.poll(shown, { timeout: 30_000 }).not.toEqual(before);
    const [answer, chart] = await shown();
    expect(answer).not.toBe(before[0]);
    expect(chart).not.toBe(before[1]);
    await page.close();
    await takeAway.remove();
  }, 180_000);
});
