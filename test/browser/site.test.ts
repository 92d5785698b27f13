import { createReadStream, existsSync, readFileSync, statSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { createServer, type Server } from "node:http";
import { tmpdir } from "node:os";
import { extname, join, normalize } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { buildSite } from "../../notebooks/kit/build/bundle.ts";
import { notebookFiles } from "../../notebooks/kit/build/notebook-files.ts";
import { launchChromium } from "./chromium.ts";
import { guardedPage } from "./guarded-page.ts";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
};

/** The folder of some host that the site is put into: nothing in it may count on standing at the root. */
const FOLDER = "/people/warden/panels/";

const served = (root: string): Server =>
  createServer(({ url = "/" }, response) => {
    const { pathname } = new URL(url, "http://localhost");
    const path = normalize(join(root, pathname.slice(FOLDER.length - 1)));
    if (
      !pathname.startsWith(FOLDER) ||
      !path.startsWith(root) ||
      !existsSync(path) ||
      !statSync(path).isFile()
    ) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { "content-type": TYPES[extname(path)] ?? "application/octet-stream" });
    createReadStream(path).pipe(response);
  });

let browser: Browser;
let server: Server;
let folder: string;
let site: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "panel-season-"));
  [browser] = await Promise.all([launchChromium(), buildSite(folder, notebookFiles())]);
  server = served(folder);
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("the test's server has no port");
  site = `http://127.0.0.1:${address.port}${FOLDER}`;
}, 300_000);
afterAll(async () => {
  await browser.close();
  server.close();
  await rm(folder, { recursive: true, force: true });
});

test("a newcomer goes from the front page, with a place of their own, to a printed field sheet", async () => {
  const { page, complaints, foreign, close } = await guardedPage(browser, `${site}index.html`, {
    viewport: { width: 1280, height: 900 },
  });
  await page.locator("main figure svg[aria-label]").first().waitFor({ timeout: 60_000 });
  const demoAnswer = await page.locator(".answer").textContent();
  const field = (path: string) => page.locator(`.field[data-path="${path}"] input[type=text]`);
  await field("name").fill("My shed by the water");
  await field("site.name").fill("Kiln island");
  await field("site.latitudeDeg").fill("60.1");
  await field("site.longitudeDeg").fill("22.3");
  // The weather file, the height and the clocks were those of the demo's place: they go with it, and nothing complains.
  await expect.poll(() => page.locator(".answer").textContent(), { timeout: 60_000 }).not.toBe(demoAnswer);
  expect(await page.locator(".toolbar .problems").isVisible()).toBe(false);
  expect(await field("site.elevationM").inputValue()).toBe("");
  expect(await page.locator('.field[data-path="site.timeZone"] select').inputValue()).toBe("Europe/Helsinki");

  // Which legs to cut: the best two, made the plan's own.
  await page.locator(".questions").getByRole("link", { name: "Legs" }).click();
  await page.locator("main figure svg[aria-label]").first().waitFor({ timeout: 60_000 });
  await page.getByLabel("Legs", { exact: true }).selectOption({ label: "the best 2 to cut" });
  await page.getByRole("button", { name: "Put these legs into the plan" }).click();
  await page.getByText("The plan has these legs").waitFor();
  await expect
    .poll(() => page.locator('.field[data-path="stand.legs[0].name"] input').inputValue())
    .toMatch(/^leg \d+$/);
  const legs = await Promise.all(
    [0, 1].map((leg) => page.locator(`.field[data-path="stand.legs[${leg}].name"] input`).inputValue()),
  );

  await page.locator(".masthead").getByRole("link", { name: "Field sheet" }).click();
  await page.locator(".field-sheet header", { hasText: "Kiln island" }).waitFor({ timeout: 120_000 });
  expect(await page.locator(".field-sheet h1").textContent()).toBe("My shed by the water");
  expect(await page.locator(".field-sheet td strong").allTextContents()).toEqual(
    legs.map((name) => expect.stringContaining(`${name}: ${name.slice(4)} mm`)),
  );
  const pdf = Buffer.from(await page.pdf({ preferCSSPageSize: true })).toString("latin1");
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  expect(complaints).toEqual([]);
  expect(foreign).toEqual([]);
  await close();
}, 300_000);

test("every page of the site leads to every other, and none of its addresses is absolute", async () => {
  const { page, close } = await guardedPage(browser, `${site}index.html`);
  const words = await page.locator(".masthead nav a").allTextContents();
  expect(words).toHaveLength(notebookFiles().length - 1);
  for (const word of words) {
    await page.locator(".masthead nav a", { hasText: new RegExp(`^${word}$`) }).click();
    await page.locator("main h1").waitFor();
    expect(await page.locator(".masthead nav a[aria-current=page]").textContent()).toBe(word);
  }
  await close();
  for (const file of notebookFiles()) {
    const html = readFileSync(join(folder, file), "utf8");
    expect(html.match(/\s(?:src|href)="(?:\/|https?:)[^"]*"/g) ?? [], file).toEqual([]);
  }
}, 120_000);
