import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { themeCss } from "../../../lib/report/chart/theme.ts";
import { creditOf, type DataSidecar, shortCredit } from "../../../lib/report/words/credits.ts";
import { NOTEBOOK_ORDER } from "../notebook-order.ts";
import { NOTEBOOKS } from "./notebook-files.ts";

const links = (current: string): string =>
  NOTEBOOK_ORDER.filter(({ file }) => existsSync(join(NOTEBOOKS, file)))
    .map(
      ({ file, word }) => `<a href="./${file}"${file === current ? ' aria-current="page"' : ""}>${word}</a>`,
    )
    .join("");

const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

/** The sidecars of the data that travels in the page. */
const sidecars = (): readonly DataSidecar[] =>
  ["climates", "weather"].flatMap((folder) => {
    const at = join(NOTEBOOKS, "..", "data", folder);
    return readdirSync(at)
      .filter((name) => name.endsWith(".json"))
      .sort()
      .map((name) => JSON.parse(readFileSync(join(at, name), "utf8")) as DataSidecar);
  });

/** Whose data it is, a line for each file. */
const credits = (): string =>
  sidecars()
    .map((sidecar) => `<li>${escaped(creditOf(sidecar))}</li>`)
    .join("");

/** Fills the page template: the charts' colours, stated once in the library, and the way between the notebooks. */
export const filledTemplate = (template: string, { filename }: { readonly filename: string }): string =>
  template
    .replace("<!-- theme -->", themeCss(":root"))
    .replace("<!-- notebooks -->", links(basename(filename)))
    .replace("<!-- credits -->", credits())
    .replace("<!-- credit in a line -->", escaped(shortCredit(sidecars())));
