import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { fragmentOf } from "../../notebooks/kit/plan/link.ts";
import { DEMO } from "./demo.ts";
import { field, notebookUnderTest } from "./notebook-under-test.ts";

/** Nothing that a user typed, opened or was sent may be lost in silence. */

const { opened } = notebookUnderTest("season.html");

const NAME = ".plan-name";
const MINE = { ...DEMO, name: "My own camp" };
const THEIRS = { ...DEMO, name: "A friend's boat" };

const openFile = async (page: Page, name: string, text: string): Promise<void> =>
  page
    .getByLabel("Plan file")
    .setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });

const nameIs = (page: Page, name: string): Promise<void> =>
  expect.poll(() => page.locator(NAME).textContent(), { timeout: 20_000 }).toBe(`Plan: ${name}`);

const said = (page: Page, text: RegExp): Promise<void> =>
  expect.poll(() => page.locator(".toolbar .said").textContent(), { timeout: 20_000 }).toMatch(text);

/** Reloads, or follows a link: on a page opened from disk only the part behind # changes then, so it is loaded anew. */
const arrive = async (page: Page, fragment = ""): Promise<void> => {
  const base = page.url().split("#")[0] ?? "";
  await page.goto("about:blank");
  await page.goto(`${base}${fragment}`);
  await page.locator(NAME).waitFor({ timeout: 60_000 });
};

test("a field left empty never brings the demo's numbers: the page says what it shows, dims it, and after a reload still shows the last plan that could be used", async () => {
  const { page, close } = await opened();
  await openFile(
    page,
    "mine.json",
    JSON.stringify({ ...MINE, season: { from: "2027-06-01", to: "2027-06-30" } }),
  );
  await nameIs(page, "My own camp");
  await expect
    .poll(() => page.locator(".plan-words").textContent(), { timeout: 60_000 })
    .toMatch(/1 June 2027 to 30 June 2027/);
  const figures = await page.locator(".answer strong").allTextContents();

  await page
    .locator("#plan-season > summary, #plan-site > summary")
    .first()
    .click()
    .catch(() => undefined);
  const latitude = field(page, "site.latitudeDeg").locator("input[type=text]");
  await latitude.evaluate((input: HTMLInputElement) => {
    input.value = "";
    input.dispatchEvent(new Event("input", { bubbles: true }));
  });
  const stale = page.locator(".stale");
  await stale.waitFor({ state: "visible" });
  expect(await stale.textContent()).toMatch(/plan before its last changes/);
  expect(await stale.textContent()).toMatch(/latitude, left empty/i);
  expect(await stale.textContent()).not.toMatch(/site\.latitudeDeg|an object|ISO 8601/);
  expect(
    await page
      .locator(".answer")
      .first()
      .evaluate((answer) => Number(getComputedStyle(answer).opacity)),
  ).toBeLessThan(0.6);
  // On paper it stands too.
  await page.emulateMedia({ media: "print" });
  expect(await stale.isVisible()).toBe(true);
  await page.emulateMedia({ media: "screen" });

  await arrive(page);
  await stale.waitFor({ state: "visible", timeout: 60_000 });
  await expect
    .poll(() => page.locator(".answer strong").allTextContents(), { timeout: 60_000 })
    .toEqual(figures);
  await page.getByRole("button", { name: "Undo" }).click();
  await stale.waitFor({ state: "hidden" });
  await close();
}, 180_000);

test("a file that is no plan does not overwrite the plan, and says so; one with faults asks first", async () => {
  const { page, close } = await opened();
  await openFile(page, "mine.json", JSON.stringify(MINE));
  await nameIs(page, "My own camp");
  await openFile(page, "shopping.json", JSON.stringify({ milk: 2 }));
  await said(page, /shopping\.json is no plan.*unchanged/);
  await openFile(page, "broken.json", '{ "site": ');
  await said(page, /broken\.json is no plan.*cut short.*unchanged/);
  await openFile(
    page,
    "faulty.json",
    JSON.stringify({ ...THEIRS, season: { from: "2027-06-01", to: "2027-05-01" } }),
  );
  await said(page, /one thing to mend.*unchanged so far/);
  await nameIs(page, "My own camp");
  await arrive(page);
  await nameIs(page, "My own camp");
  await close();
}, 180_000);

test("a link that was cut short is told; a good one asks before it replaces a plan of one's own, and undo holds after a reload", async () => {
  const { page, close } = await opened();
  await openFile(page, "mine.json", JSON.stringify(MINE));
  await nameIs(page, "My own camp");
  const link = await fragmentOf(THEIRS);

  await arrive(page, link.slice(0, -40));
  await said(page, /can't be read.*cut short.*unchanged/);
  await nameIs(page, "My own camp");

  await arrive(page, link);
  await said(page, /brings a plan of its own/);
  await nameIs(page, "My own camp");
  await page.getByRole("button", { name: "Use the plan of the link" }).click();
  await nameIs(page, "A friend's boat");

  await arrive(page);
  await nameIs(page, "A friend's boat");
  await page.getByRole("button", { name: "Undo" }).click();
  await nameIs(page, "My own camp");
  await close();
}, 180_000);

test("names of plan and place follow coordinates that were moved, and the coordinates are told", async () => {
  const { page, close } = await opened();
  const latitude = field(page, "site.latitudeDeg").locator("input[type=text]");
  const type = (text: string): Promise<void> =>
    latitude.evaluate((input: HTMLInputElement, value) => {
      input.value = value;
      input.dispatchEvent(new Event("input", { bubbles: true }));
    }, text);
  await type("57.48");
  await nameIs(page, "my plan");
  await expect
    .poll(() => page.locator(".plan-words").textContent(), { timeout: 60_000 })
    .toMatch(/^57\.48° N/);
  await close();
}, 120_000);

test("whose data it is stands at the foot of the page, under which licence, on paper too", async () => {
  const { page, close } = await opened();
  const foot = page.locator(".credits");
  await foot.locator("summary").click();
  expect(await foot.textContent()).toMatch(/CC BY 4\.0/);
  expect(await foot.textContent()).toMatch(/CC BY-SA 4\.0/);
  const onPaper = page.locator(".credit-on-paper");
  expect(await onPaper.isVisible()).toBe(false);
  await page.emulateMedia({ media: "print" });
  expect(await foot.isVisible()).toBe(false);
  expect(await onPaper.isVisible()).toBe(true);
  expect(await onPaper.textContent()).toMatch(/CC BY 4\.0.*CC BY-SA 4\.0|CC BY-SA 4\.0.*CC BY 4\.0/);
  await close();
}, 120_000);
