import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { field, notebookUnderTest } from "./notebook-under-test.ts";

/** A place is one thing to a person: written in one field, or found by the browser when it is asked. */

const { opened } = notebookUnderTest("season.html");

const shows = async (page: Page, path: string, value: string): Promise<void> =>
  expect
    .poll(() => field(page, path).locator("input[type=text]").inputValue(), { timeout: 20_000 })
    .toBe(value);

test("a place is read as people write it; what can't be read is told with an example and changes nothing", async () => {
  const { page, close } = await opened();
  const where = page.getByLabel("Where it is");
  await where.fill("57°30'N 4°15'W");
  await where.press("Enter");
  await shows(page, "site.latitudeDeg", "57.5");
  await shows(page, "site.longitudeDeg", "-4.25");
  await where.fill("somewhere north");
  await where.press("Enter");
  await expect.poll(() => page.getByText(/Not read as a place/).textContent()).toMatch(/57\.4778, -4\.2247/);
  await shows(page, "site.latitudeDeg", "57.5");
  await close();
}, 120_000);

test("the browser is asked where it is on a tap only, and what it says is told with its uncertainty", async () => {
  const { page, close } = await opened();
  await page.evaluate(() => {
    Object.defineProperty(navigator, "geolocation", {
      value: {
        getCurrentPosition: (found: (position: unknown) => void): void => {
          document.body.setAttribute("data-asked", "yes");
          found({ coords: { latitude: -42.153_219, longitude: 146.7, accuracy: 34.2 } });
        },
      },
    });
  });
  expect(await page.evaluate(() => document.body.getAttribute("data-asked"))).toBeNull();
  await page.getByRole("button", { name: "Where I am" }).click();
  await shows(page, "site.latitudeDeg", "-42.1532");
  await shows(page, "site.longitudeDeg", "146.7");
  await expect.poll(() => page.getByText("Found to within 35 m.").count()).toBe(1);
  await close();
}, 120_000);
