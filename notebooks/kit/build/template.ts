import { existsSync } from "node:fs";
import { basename, join } from "node:path";
import { themeCss } from "../../../lib/report/theme.ts";
import { NOTEBOOKS } from "./notebook-files.ts";

/** The notebooks in the order of the decisions, each under the word it has in the navigation. */
const ORDER: readonly { readonly file: string; readonly word: string }[] = [
  { file: "season.html", word: "Season" },
  { file: "legs.html", word: "Legs" },
  { file: "aiming.html", word: "Aiming" },
  { file: "wiring.html", word: "Wiring" },
  { file: "second-panel.html", word: "Second panel" },
  { file: "sheet.html", word: "Field sheet" },
  { file: "checks.html", word: "Checks" },
];

const links = (current: string): string =>
  ORDER.filter(({ file }) => existsSync(join(NOTEBOOKS, file)))
    .map(
      ({ file, word }) => `<a href="./${file}"${file === current ? ' aria-current="page"' : ""}>${word}</a>`,
    )
    .join("");

/** Fills the page template: the charts' colours, stated once in the library, and the way between the notebooks. */
export const filledTemplate = (template: string, { filename }: { readonly filename: string }): string =>
  template
    .replace("<!-- theme -->", themeCss(":root"))
    .replace("<!-- notebooks -->", links(basename(filename)));
