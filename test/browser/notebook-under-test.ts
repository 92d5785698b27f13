import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, expect } from "vitest";
import type { Headline } from "../../lib/report/words/headline.ts";
import { launchChromium } from "./chromium.ts";
import { type GuardedPage, guardedPage } from "./guarded-page.ts";
import { builtTakeAway, type TakeAway } from "./take-away.ts";

/** A notebook as its reader gets it, one file opened from disk, for the tests of one file. */
export interface NotebookUnderTest {
  /** Opens it in a fresh profile, on a desktop unless said otherwise, and waits for its first chart. */
  readonly opened: (options?: BrowserContextOptions) => Promise<GuardedPage>;
  /** Opens another address of the same file, such as one with a plan in it. */
  readonly openedAt: (url: string) => Promise<GuardedPage>;
}

const DESKTOP = { viewport: { width: 1280, height: 900 } } as const;

/** The first chart of a page. */
export const CHART = "main figure svg[aria-label]";

/**
 * Builds a notebook before a file's tests and clears it away after them.
 *
 * @param ready what is on the page once it can be used
 */
export const notebookUnderTest = (file: string, ready = CHART): NotebookUnderTest => {
  let browser: Browser;
  let takeAway: TakeAway;
  beforeAll(async () => {
    [browser, takeAway] = await Promise.all([launchChromium(), builtTakeAway(file)]);
  }, 180_000);
  afterAll(async () => {
    await browser.close();
    await takeAway.remove();
  });
  const openedAt = async (url: string, options: BrowserContextOptions = {}): Promise<GuardedPage> => {
    const guarded = await guardedPage(browser, url, { ...DESKTOP, ...options });
    await guarded.page.locator(ready).first().waitFor({ timeout: 60_000 });
    return guarded;
  };
  return { opened: (options) => openedAt(takeAway.url, options), openedAt };
};

/** The figures that a headline stresses. */
export const figuresOf = (headline: Headline): readonly string[] =>
  headline.flatMap((part) => (typeof part === "string" ? [] : [part.figure]));

/** Waits until the page's answer stresses just these figures. */
export const expectFigures = (page: Page, figures: readonly string[]): Promise<void> =>
  expect.poll(() => page.locator(".answer strong").allTextContents(), { timeout: 60_000 }).toEqual(figures);

/** One field of the plan panel. */
export const field = (page: Page, path: string) => page.locator(`.field[data-path="${path}"]`);

/** Opens a section of the plan panel that is folded. */
export const openSection = async (page: Page, id: string): Promise<void> => {
  const section = page.locator(`#plan-${id}`);
  if ((await section.getAttribute("open")) === null) await section.locator("> summary").click();
};
