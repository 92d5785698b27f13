import { readFileSync } from "node:fs";
import Papa from "papaparse";
import { expect, test } from "vitest";
import type { Checks } from "../../notebooks/kit/checks/outcomes.ts";
import { expectFigures, notebookUnderTest } from "./notebook-under-test.ts";

const checks: Checks = JSON.parse(
  readFileSync(new URL("../../notebooks/kit/checks/outcomes.json", import.meta.url), "utf8"),
);

const { opened } = notebookUnderTest("checks.html");

test("shows what the command wrote, lets any comparison be looked into, and hands its cases over", async () => {
  const { page, complaints, foreign, close } = await opened();
  const comparisons = checks.sections.flatMap((section) => section.comparisons);
  const cases = comparisons.reduce((sum, each) => sum + each.cases.length, 0);
  await expectFigures(page, [cases.toLocaleString("en"), `${comparisons.length} comparisons`]);

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
