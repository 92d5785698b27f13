import { existsSync } from "node:fs";
import { basename, join } from "node:path";
import { themeCss } from "../../../lib/report/chart/theme.ts";
import { NOTEBOOK_ORDER } from "../notebook-order.ts";
import { NOTEBOOKS } from "./notebook-files.ts";

const links = (current: string): string =>
  NOTEBOOK_ORDER.filter(({ file }) => existsSync(join(NOTEBOOKS, file)))
    .map(
      ({ file, word }) => `<a href="./${file}"${file === current ? ' aria-current="page"' : ""}>${word}</a>`,
    )
    .join("");

/** Fills the page template: the charts' colours, stated once in the library, and the way between the notebooks. */
export const filledTemplate = (template: string, { filename }: { readonly filename: string }): string =>
  template
    .replace("<!-- theme -->", themeCss(":root"))
    .replace("<!-- notebooks -->", links(basename(filename)));
