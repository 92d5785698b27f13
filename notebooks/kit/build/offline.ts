import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";

const here = (file: string): string => fileURLToPath(new URL(file, import.meta.url));

/** Modules of the kit that would reach for another host, and what stands in for each. */
const STAND_INS: ReadonlyMap<string, string> = new Map([
  ["recommendedLibraries.js", here("libraries.ts")],
  ["sampleDatasets.js", here("nothing.ts")],
  ["highlight.js", here("nothing.ts")], // pinned code is coloured when the page is built
  ["xlsx.js", here("nothing.ts")],
  ["zip.js", here("nothing.ts")],
]);

const LIBRARIES = here("libraries.ts");

/** Leaves out the libraries that no cell names: a single file would carry all of them whole. */
const onlyExported = (code: string, names: ReadonlySet<string>): string =>
  code.replaceAll(/^export const (\w+) = .*;$/gm, (line, name: string) => (names.has(name) ? line : ""));

const KIT_RUNTIME = /[\\/]notebook-kit[\\/]dist[\\/]src[\\/]runtime[\\/]/;
const FOREIGN_IMPORT = /import\("https:\/\/[^"]+"\)/g;
const FOREIGN_ADDRESS = /"https:\/\/[^"]+"/g;

/** What a call that the kit would answer from another host does here instead: it says what to do. */
const REFUSAL =
  'Promise.reject(new Error("This notebook works without a network: read the file as text and parse it with a library from node_modules"))';

/**
 * Keeps a notebook from asking any other host for anything: the kit's optional libraries are replaced by those
 * in `libraries.ts`, its sample data sets left out, and what is left of its addresses refused with a hint.
 * The dev server bundles dependencies ahead of time with plugins of their own, so the same plugin must
 * also be given to `optimizeDeps.rolldownOptions.plugins`.
 *
 * @param names the names that cells use, when libraries that none of them uses are to be left out [all stay]
 */
export const offline = (names: ReadonlySet<string> | null = null): Plugin => ({
  name: "panel-season:offline",
  enforce: "pre",
  resolveId(source, importer) {
    if (importer === undefined || !KIT_RUNTIME.test(importer)) return null;
    return STAND_INS.get(source.slice(source.lastIndexOf("/") + 1)) ?? null;
  },
  transform(code, id) {
    if (names !== null && id === LIBRARIES) return onlyExported(code, names);
    if (!KIT_RUNTIME.test(id) || !code.includes("https://")) return null;
    return code.replaceAll(FOREIGN_IMPORT, REFUSAL).replaceAll(FOREIGN_ADDRESS, '"about:blank"');
  },
});
