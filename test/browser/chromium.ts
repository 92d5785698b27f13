import { type Browser, chromium } from "playwright-core";
import { installedChromium, QUIET_CHROMIUM } from "../../lib/cli/installed-chromium.ts";
import { type BrowserProgram, ownChromium } from "./own-chromium.ts";

/** The Chromium the browser tests drive: an installed one, else the one among the development packages. */
export const chromiumProgram = async (): Promise<BrowserProgram> => {
  // PANEL_SEASON_OWN_CHROMIUM=1 passes over an installed one, to show that the fallback works.
  const installed = process.env.PANEL_SEASON_OWN_CHROMIUM === "1" ? null : installedChromium();
  if (installed !== null) return { executablePath: installed, env: {}, args: [] };
  const own = await ownChromium();
  if (own !== null) return own;
  throw new Error(
    "The browser tests need Chromium, Chrome or Edge: none is installed in the usual places or on the PATH, and " +
      `the packaged one does not run on ${process.platform} ${process.arch}. Set CHROME_PATH to a browser program.`,
  );
};

/** Starts a headless Chromium; the caller closes it. */
export const launchChromium = async (): Promise<Browser> => {
  const { executablePath, env, args } = await chromiumProgram();
  return chromium.launch({
    executablePath,
    args: [...QUIET_CHROMIUM, ...args],
    env: { ...process.env, ...env } as Record<string, string>,
  });
};
