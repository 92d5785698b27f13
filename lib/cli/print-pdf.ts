import { spawn } from "node:child_process";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { PlanError } from "../plan/problem.ts";
import { installedChromium, QUIET_CHROMIUM } from "./installed-chromium.ts";

const LONGEST_MS = 60_000;

const ran = (
  program: string,
  args: readonly string[],
): Promise<{ readonly code: number | null; readonly told: string }> =>
  new Promise((resolve, reject) => {
    const child = spawn(program, args, { stdio: ["ignore", "ignore", "pipe"], timeout: LONGEST_MS });
    let told = "";
    child.stderr.on("data", (text: Buffer) => {
      told = (told + text.toString()).slice(-2000);
    });
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, told }));
  });

const refuse = (allowed: string, hint: string): never => {
  throw new PlanError([{ path: "pdf", value: "page", allowed, hint }]);
};

/**
 * Prints a page to PDF by a headless Chromium, in a folder of its own with no profile and no network.
 *
 * @param html the whole page
 * @throws PlanError when no Chromium is installed, or it fails
 */
export const printPdf = async (html: string): Promise<Uint8Array> => {
  const program =
    installedChromium() ??
    refuse(
      "needs Chromium, Chrome or Edge, and none was found",
      "name one in CHROME_PATH, or write the page with --html and print it from any browser",
    );
  const folder = await mkdtemp(join(tmpdir(), "panel-season-"));
  try {
    const page = join(folder, "page.html");
    const pdf = join(folder, "page.pdf");
    await writeFile(page, html);
    const { code, told } = await ran(program, [
      ...QUIET_CHROMIUM,
      "--disable-gpu",
      `--user-data-dir=${join(folder, "profile")}`,
      "--no-pdf-header-footer",
      `--print-to-pdf=${pdf}`,
      pathToFileURL(page).href,
    ]);
    try {
      return await readFile(pdf);
    } catch {
      return refuse(
        `can't be made: the browser ended with ${code}: ${told.trim().split("\n").at(-1) ?? ""}`,
        "write the page with --html and print it from any browser",
      );
    }
  } finally {
    // The browser may still be letting go of its profile.
    await rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
};
