/**
 * How long the hand waits in a notebook opened from disk: from loading to the first chart, and from a slider's move to
 * the repainted chart, by the browser's own performance marks. Printed, never a test: a busy machine is no fault.
 */
import { median } from "d3";
import type { Browser } from "playwright-core";
import { launchChromium } from "../browser/chromium.ts";
import { builtTakeAway } from "../browser/take-away.ts";

const MOVES = 40;
const LOADS = 5;

/** Each notebook with the slider that is moved, and how far each move goes. */
const TRIED = [
  { file: "season.html", slider: "stand.legs[0].lengthMm", from: 300, by: 5 },
  { file: "legs.html", slider: "stand.legs[0].lengthMm", from: 300, by: 5 },
] as const;

/** From the start of loading to the first chart on the page, ms. */
const firstChartMs = async (browser: Browser, url: string): Promise<number> => {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await page.goto(url);
  await page.waitForFunction("performance.getEntriesByName('panel-season:chart').length > 0");
  const ms = await page.evaluate(
    () => performance.getEntriesByName("panel-season:chart")[0]?.startTime ?? Number.NaN,
  );
  await page.close();
  return ms;
};

/** One move of a slider, and how long until the chart shows it, ms. Text, since a bundler's helpers do not travel. */
const MOVE = `async ({ path, value }) => {
  const slider = document.querySelector('[data-path="' + path + '"] input[type=range]');
  const name = "panel-season:repaint";
  const before = performance.getEntriesByName(name).length;
  slider.value = String(value);
  slider.dispatchEvent(new Event("input", { bubbles: true }));
  while (performance.getEntriesByName(name).length === before) await new Promise((done) => setTimeout(done, 1));
  await new Promise((done) => setTimeout(done, 60));
  return performance.getEntriesByName(name)[before].duration;
}`;

const repaintMs = async (
  browser: Browser,
  url: string,
  path: string,
  from: number,
  by: number,
): Promise<number[]> => {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await page.goto(url);
  await page.waitForFunction("performance.getEntriesByName('panel-season:repaint').length > 0");
  await page.waitForTimeout(1500);
  const times: number[] = [];
  for (let move = 1; move <= MOVES; move += 1) {
    times.push(
      await page.evaluate<number>(`(${MOVE})(${JSON.stringify({ path, value: from + move * by })})`),
    );
  }
  await page.close();
  return times;
};

const browser = await launchChromium();
for (const { file, slider, from, by } of TRIED) {
  const takeAway = await builtTakeAway(file);
  const loads: number[] = [];
  for (let load = 0; load < LOADS; load += 1) loads.push(await firstChartMs(browser, takeAway.url));
  const moves = await repaintMs(browser, takeAway.url, slider, from, by);
  console.log(
    `${file.padEnd(14)} first chart ${median(loads)?.toFixed(0)} ms (least ${Math.min(...loads).toFixed(0)}; asked: under 1000), ` +
      `slider to chart ${median(moves)?.toFixed(0)} ms (least ${Math.min(...moves).toFixed(0)}; asked: under 50), ${MOVES} moves`,
  );
  await takeAway.remove();
}
await browser.close();
