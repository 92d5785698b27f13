import { readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder that holds the notebooks. */
export const NOTEBOOKS = fileURLToPath(new URL("../..", import.meta.url));

/** Where `npm run notebooks:build` puts the static site, and the files that open from disk. */
export const SITE = join(NOTEBOOKS, "dist", "site");
export const TAKE_AWAY = join(NOTEBOOKS, "dist", "take-away");

/** File names of all notebooks, the front page first. */
export const notebookFiles = (): readonly string[] =>
  readdirSync(NOTEBOOKS)
    .filter((name) => name.endsWith(".html"))
    .sort((a, b) => Number(b === "index.html") - Number(a === "index.html") || a.localeCompare(b));

/** The most one take-away file may weigh: it has to cross a bad connection once, and a phone's memory often. */
export const LARGEST_TAKE_AWAY_BYTES = 1.6e6;
