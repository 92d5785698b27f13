import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseHTML } from "linkedom";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { printPdf } from "../../lib/cli/print-pdf.ts";
import { shippedSidecars } from "../../lib/cli/sidecars.ts";
import { PlanError, readPlan } from "../../lib/plan/index.ts";
import { PAPERS } from "../../lib/report/paper/field-sheet-css.ts";
import { fieldSheetArticle } from "../../lib/report/paper/field-sheet-page.ts";
import { shortCredit } from "../../lib/report/words/credits.ts";
import { fieldSheetHeadline } from "../../lib/report/words/field-sheet-headline.ts";
import { panelUnits } from "../../lib/season/index.ts";
import { fieldSheet } from "../../lib/season/sheet/field-sheet.ts";
import { chromiumProgram } from "./chromium.ts";
import { DEMO, skiesFor } from "./demo.ts";
import { expectFigures, field, figuresOf, notebookUnderTest } from "./notebook-under-test.ts";

/** Paper sizes in points: ISO 216 A4 is 210 x 297 mm, US Letter 8.5 x 11 in. */
const SIZES = { A4: [595, 842], Letter: [612, 792] } as const;

const pagesOf = (pdf: Uint8Array): number =>
  (
    Buffer.from(pdf)
      .toString("latin1")
      .match(/\/Type\s*\/Page\b/g) ?? []
  ).length;

const sizeOf = (pdf: Uint8Array): readonly number[] => {
  const [, width, height] =
    /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(Buffer.from(pdf).toString("latin1")) ?? [];
  return [Math.round(Number(width)), Math.round(Number(height))];
};

/** A plan with as much to say as a field sheet has to hold: a year, four legs. */
const CROWDED = {
  name: "Weather post on the ridge, all the year round",
  site: { name: "the ridge", latitudeDeg: 44, longitudeDeg: 7, elevationM: 1500, timeZone: "Europe/Rome" },
  season: { from: "2027-01-01", to: "2027-12-31", stepMinutes: 30 },
  panels: [{ name: "the panel", module: { powerW: 100 } }],
  stand: {
    pivotMm: 760,
    legs: [150, 380, 700, 1100].map((lengthMm, index) => ({ name: `leg number ${index + 1}`, lengthMm })),
  },
  battery: { chemistry: "flooded" },
};

let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "panel-season-"));
  // The command line looks for an installed browser; tests lend it theirs where there is none.
  const { executablePath, env } = await chromiumProgram();
  Object.assign(process.env, { CHROME_PATH: executablePath, ...env });
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe.each(PAPERS)("on %s", (paper) => {
  test.each(["demo", "crowded"] as const)(
    "the %s plan's field sheet is one page",
    (which) => {
      const plan = join(folder, "crowded.json");
      writeFileSync(plan, JSON.stringify(CROWDED));
      const pdf = join(folder, `${which}-${paper}.pdf`);
      const words = ["--import", "tsx", "lib/cli.ts", "sheet", ...(which === "crowded" ? [plan] : [])];
      execFileSync(process.execPath, [...words, "--paper", paper, "--pdf", pdf, "--aims", "4"], {
        cwd: new URL("../..", import.meta.url),
        stdio: "pipe",
      });
      const bytes = readFileSync(pdf);
      expect(pagesOf(bytes)).toBe(1);
      expect(sizeOf(bytes)).toEqual([...SIZES[paper]]);
    },
    180_000,
  );
});

test("without a browser the PDF is refused, with what to do instead", async () => {
  const before = process.env.CHROME_PATH;
  process.env.CHROME_PATH = join(folder, "nowhere");
  await expect(printPdf("<p>x</p>")).rejects.toThrow(/there is no such file/);
  process.env.CHROME_PATH = process.execPath; // a program that is no browser
  await expect(printPdf("<p>x</p>")).rejects.toThrow(PlanError);
  await expect(printPdf("<p>x</p>")).rejects.toThrow(/print it from any browser/);
  if (before !== undefined) process.env.CHROME_PATH = before;
}, 120_000);

describe("the notebook", () => {
  const { opened } = notebookUnderTest("sheet.html", ".work, .field-sheet");

  test("shows the library's figures: legs, calendar, bearings and months, and follows the plan", async () => {
    const { page, complaints, close } = await opened();
    const shown = async (given: unknown, aims: number): Promise<void> => {
      const plan = readPlan(given);
      const sheet = fieldSheet(plan, skiesFor(plan).skies, panelUnits(plan.panels), aims);
      await expectFigures(page, figuresOf(fieldSheetHeadline(sheet)));
      const { document } = parseHTML("<!doctype html><html><body></body></html>");
      const { notes } = skiesFor(plan);
      const foot = [...notes, shortCredit(await shippedSidecars())];
      const article = fieldSheetArticle(document as unknown as Document, sheet, foot);
      expect(await page.locator(".field-sheet").textContent()).toBe(article.textContent);
    };
    await shown(DEMO, 2);
    await page.getByLabel("Turning it in the course of the day").selectOption({ label: "3 aims a day" });
    await expect
      .poll(() => page.locator(".field-sheet .columns ol").first().locator("li").count(), { timeout: 60_000 })
      .toBe(3);
    await shown(DEMO, 3);
    const stand = DEMO.stand as { legs: readonly object[] };
    await field(page, "stand.legs[0].lengthMm").locator("input[type=text]").fill("340");
    await shown({ ...DEMO, stand: { ...stand, legs: [{ name: "short", lengthMm: 340 }, stand.legs[1]] } }, 3);
    expect(complaints).toEqual([]);
    await close();
  }, 180_000);

  test("works the sheet out beside the page, prints it alone on one page, and saves it", async () => {
    const { page, complaints, close } = await opened();
    await page.locator(".field-sheet h1").waitFor({ timeout: 60_000 });
    expect(await page.locator(".field-sheet h1").textContent()).toBe("Bird warden's hut on the mudflats");
    expect(pagesOf(await page.pdf({ preferCSSPageSize: true }))).toBe(1);
    await page.getByLabel("Paper").selectOption({ label: "Letter" });
    await expect
      .poll(async () => sizeOf(await page.pdf({ preferCSSPageSize: true })))
      .toEqual([...SIZES.Letter]);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save as a page" }).click(),
    ]);
    expect(readFileSync(await download.path(), "utf8")).toMatch(
      /^<!doctype html>[\s\S]*size: Letter portrait/,
    );
    expect(complaints).toEqual([]);
    await close();
  }, 120_000);

  test("the work can be stopped, and started again", async () => {
    const { page, close } = await opened();
    // Four aims a day take long enough to be caught at it.
    await page.getByLabel("Turning it in the course of the day").selectOption({ label: "4 aims a day" });
    await page.getByRole("button", { name: "Stop" }).click();
    expect(await page.locator(".work [role=status]").textContent()).toBe("Trying the day's aims: stopped.");
    expect(await page.locator(".field-sheet").count()).toBe(0);
    await page.getByRole("button", { name: "Start again" }).click();
    await page.locator(".field-sheet h1").waitFor({ timeout: 60_000 });
    expect(await page.locator(".work").isVisible()).toBe(false);
    await close();
  }, 120_000);
});
