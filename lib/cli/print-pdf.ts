import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { PlanError } from "../units/problem.ts";
import { browserPipe } from "./browser-pipe.ts";
import { installedChromium, QUIET_CHROMIUM } from "./installed-chromium.ts";

const LONGEST_MS = 60_000;

const ANY_BROWSER = "write the page with --html and print it from any browser";

const refusal = (allowed: string, hint: string): PlanError => new PlanError([{ path: "pdf", allowed, hint }]);

/** Has a browser open a page and print it on the paper that its own style sheet asks for. */
const printed = async (program: string, folder: string, url: string): Promise<Uint8Array> => {
  const browser = browserPipe(
    program,
    [...QUIET_CHROMIUM, "--no-zygote", "--disable-gpu", `--user-data-dir=${join(folder, "profile")}`],
    LONGEST_MS,
  );
  try {
    const { targetId } = await browser.ask("Target.createTarget", { url: "about:blank" });
    const { sessionId } = await browser.ask("Target.attachToTarget", { targetId, flatten: true });
    const session = String(sessionId);
    await browser.ask("Page.enable", {}, session);
    const loaded = browser.told("Page.loadEventFired");
    await browser.ask("Page.navigate", { url }, session);
    await loaded;
    const how = { preferCSSPageSize: true, printBackground: true };
    const { data } = await browser.ask("Page.printToPDF", how, session);
    return Buffer.from(String(data), "base64");
  } finally {
    browser.close();
  }
};

/**
 * Prints a page to PDF by a headless Chromium, in a folder of its own with no profile and no network.
 *
 * @param html the whole page
 * @throws PlanError when no Chromium is installed, or it fails
 */
export const printPdf = async (html: string): Promise<Uint8Array> => {
  const program = installedChromium();
  if (program === null) {
    throw refusal(
      "needs Chromium, Chrome or Edge, and none was found",
      `name one in CHROME_PATH, or ${ANY_BROWSER}`,
    );
  }
  const folder = await mkdtemp(join(tmpdir(), "panel-season-"));
  try {
    const page = join(folder, "page.html");
    await writeFile(page, html);
    return await printed(program, folder, pathToFileURL(page).href);
  } catch (cause) {
    throw refusal(`can't be made: ${cause instanceof Error ? cause.message : String(cause)}`, ANY_BROWSER);
  } finally {
    // The browser may still be letting go of its profile.
    await rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
};
