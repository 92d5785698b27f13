import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { observable } from "@observablehq/notebook-kit/vite";
import type { UserConfig } from "vite";
import manifest from "../../../package.json" with { type: "json" };
import { NOTEBOOKS } from "./notebook-files.ts";
import { offline } from "./offline.ts";
import { packed } from "./packed.ts";
import { filledTemplate } from "./template.ts";
import { workerCode } from "./worker-code.ts";

const KIT = dirname(fileURLToPath(import.meta.resolve("@observablehq/notebook-kit")));

/** Dependencies of the library that only its command line uses. */
const NODE_ONLY: ReadonlySet<string> = new Set(["linkedom", "tinypool"]);

const BROWSER_LIBRARIES = [
  "@photostructure/tz-lookup",
  ...Object.keys(manifest.dependencies).filter((name) => !NODE_ONLY.has(name)),
  "@observablehq/inputs",
  "htl",
  "observable:runtime",
];

/**
 * What the dev server, the static site and the take-away files have in common.
 *
 * @param names the names that cells use, when libraries that none of them uses are to be left out [all stay]
 */
export const notebookConfig = (names: ReadonlySet<string> | null = null): UserConfig => ({
  root: NOTEBOOKS,
  base: "./",
  appType: "mpa",
  // Only the kit's own `observable:` modules: a cell that imports from a registry by `npm:` or `jsr:` fails to build.
  resolve: { alias: [{ find: /^observable:(.*)$/, replacement: `${KIT}/$1` }] },
  plugins: [
    offline(names),
    packed(),
    workerCode(),
    observable({
      template: join(NOTEBOOKS, "kit", "template.html"),
      transformTemplate: filledTemplate,
      // Our own style sheet gives both schemes their colours; the kit's themes only fill what it leaves open.
      transformNotebook: (notebook) => ({ ...notebook, theme: { light: "air", dark: "near-midnight" } }),
    }),
  ],
  define: { "import.meta.env.PANEL_SEASON_VERSION": JSON.stringify(manifest.version) },
  // Named ahead: a dependency found only when a cell imports it makes the dev server bundle anew and reload the page.
  optimizeDeps: { include: BROWSER_LIBRARIES, rolldownOptions: { plugins: [offline()] } },
});
