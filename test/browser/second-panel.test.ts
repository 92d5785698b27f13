import { expect, test } from "vitest";
import type { Plan } from "../../lib/plan/index.ts";
import { worthHeadline } from "../../lib/report/index.ts";
import { worthOfPlan } from "../../lib/season/index.ts";
import { livedPlan, skiesFor } from "./demo.ts";
import { expectFigures, figuresOf, notebookUnderTest, openSection } from "./notebook-under-test.ts";

const { opened } = notebookUnderTest("second-panel.html");

test("shows the library's answer, and fewer appliances change it", async () => {
  const { page, complaints, close } = await opened();
  const plan = livedPlan();
  const worth = (of: Plan) => figuresOf(worthHeadline(worthOfPlan(of, skiesFor(of)).answer, of.worth));
  await expectFigures(page, worth(plan));
  expect(await page.locator(".caution").getByText("Cover the panel").count()).toBe(1);

  const frugal = livedPlan({
    loads: { ...plan.loads, appliances: plan.loads.appliances.filter(({ name }) => name !== "cool box") },
  });
  await openSection(page, "loads");
  await page.locator("#plan-loads").getByRole("button", { name: "Take this appliance out" }).last().click();
  await expectFigures(page, worth(frugal));
  expect(complaints).toEqual([]);
  await close();
}, 180_000);
