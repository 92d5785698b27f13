import type { Browser, BrowserContextOptions, Page } from "playwright-core";

/** A page that writes down all that a notebook must never do. */
export interface GuardedPage {
  readonly page: Page;
  /** Errors and warnings of the console, and errors that nothing caught. */
  readonly complaints: string[];
  /** Requests that left for another host; each was refused. */
  readonly foreign: string[];
  readonly close: () => Promise<void>;
}

const STAYS_HERE = /^(file|data|blob|about):/;

/** Opens an address in a fresh profile of the browser, with every way to another host shut. */
export const guardedPage = async (
  browser: Browser,
  url: string,
  options: BrowserContextOptions = {},
): Promise<GuardedPage> => {
  const context = await browser.newContext({ acceptDownloads: true, ...options });
  const page = await context.newPage();
  const complaints: string[] = [];
  const foreign: string[] = [];
  await context.route(
    (address) => !STAYS_HERE.test(address.href) && address.origin !== new URL(url).origin,
    (route) => {
      foreign.push(route.request().url());
      return route.abort();
    },
  );
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  await page.goto(url);
  return { page, complaints, foreign, close: () => context.close() };
};

/** How far a page can be pushed sideways, px; 0 when it fits. */
export const sidewaysPx = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
