/**
 * Writes the accuracy statement from the tests' own comparisons: the whole of it into a page beside them, a digest into the
 * README between its markers, and the numbers behind `notebooks/checks.html`. Fails when a case is out of tolerance or has been dropped. `npm run accuracy`;
 * with `--check` nothing is written, and a page that is not up to date fails too.
 */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { accuracyDigest, accuracyJson, accuracyMarkdown, failures, runSections } from "./accuracy-table.ts";
import { sections } from "./comparisons/all.ts";
import { leftOut } from "./comparisons/full-chain.ts";
import { stationDays } from "./comparisons/station-days.ts";

const PAGE = new URL("ACCURACY.md", import.meta.url);
const README = new URL("../../README.md", import.meta.url);
const OUTCOMES = new URL("../../notebooks/kit/checks/outcomes.json", import.meta.url);
const [BEGIN, END] = ["<!-- accuracy: made by npm run accuracy -->", "<!-- accuracy: end -->"];

const withTable = (readme: string, table: string): string => {
  const [from, to] = [readme.indexOf(BEGIN), readme.indexOf(END)];
  if (from < 0 || to < from) throw new Error(`README.md: expected the lines "${BEGIN}" and "${END}"`);
  return `${readme.slice(0, from + BEGIN.length)}\n\n${table}\n\n${readme.slice(to)}`;
};

const { values } = parseArgs({ options: { check: { type: "boolean", default: false } } });
const outcomes = runSections(sections);
const page = accuracyMarkdown(outcomes);
console.log(page);
for (const each of leftOut) console.log(`\n${each}`);

const wrong = [...failures(outcomes)];
const readme = readFileSync(README, "utf8");
const updated = withTable(readme, accuracyDigest(outcomes));
if (values.check) {
  const kept = existsSync(PAGE) ? readFileSync(PAGE, "utf8") : "";
  if (updated !== readme || kept !== page) {
    wrong.push("README.md, ACCURACY.md: not up to date; run npm run accuracy");
  }
} else {
  writeFileSync(README, updated);
  writeFileSync(PAGE, page);
  writeFileSync(
    OUTCOMES,
    `${JSON.stringify({ sections: accuracyJson(outcomes), stations: stationDays() })}\n`,
  );
}
for (const each of wrong) console.error(each);
process.exitCode = wrong.length === 0 ? 0 : 1;
