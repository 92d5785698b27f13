import { expect, test } from "vitest";
import { readPlan } from "../../lib/plan/index.ts";
import { seasonHeadline } from "../../lib/report/index.ts";
import { tiltShort } from "../../lib/report/words/words.ts";
import { panelUnits, seasonYield, settingsOf, standSeason, swapsAnswer } from "../../lib/season/index.ts";
import { swapRows } from "../../lib/season/legs/swap-rows.ts";
import { dateWords } from "../../lib/units/dates.ts";
import { DEMO, dataFile, skiesFor } from "./demo.ts";
import { expectFigures, field, figuresOf, notebookUnderTest } from "./notebook-under-test.ts";

const { opened } = notebookUnderTest("index.html");

/** What the front page must say of a plan: the figures of its sentence, and each stay of its calendar. */
const answerOf = (
  given: unknown,
): { readonly figures: readonly string[]; readonly stays: readonly string[] } => {
  const plan = readPlan(given);
  const { skies } = skiesFor(plan);
  const units = panelUnits(plan.panels);
  return {
    figures: figuresOf(seasonHeadline(seasonYield(skies, units, settingsOf(plan)))),
    stays: swapRows(swapsAnswer(standSeason(plan, skies, units))).map(
      ({ date, to }) => `${to.name} ${tiltShort(to.tiltDeg)}from ${dateWords(date).replace(/ \d{4}$/, "")}`,
    ),
  };
};

test("shows the library's answer and calendar for the demo, for a shorter season, and for another demo", async () => {
  const { page, complaints, close } = await opened();
  const shown = async (given: unknown): Promise<void> => {
    const { figures, stays } = answerOf(given);
    await expectFigures(page, figures);
    await expect.poll(() => page.locator(".swap-band li").allTextContents()).toEqual(stays);
  };
  await shown(DEMO);

  await field(page, "season.to").locator("input").fill("2027-08-31");
  await shown({ ...DEMO, season: { ...(DEMO.season as object), to: "2027-08-31" } });

  await page.getByLabel("Start from a demo plan").selectOption("mountain-cabin");
  await shown(JSON.parse(dataFile("plans/mountain-cabin.json")));
  expect(complaints).toEqual([]);
  await close();
}, 180_000);
