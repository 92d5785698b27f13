import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { parse } from "parse5";
import { SaxesParser } from "saxes";
import { describe, expect, test } from "vitest";
import { listen, ownFolder } from "./listen.ts";

/** Names that no plan should be able to break a file with: the letters of markup, entities, its own words, odd planes. */
const HOSTILE = [
  `Tom & Jerry's "<b>raft</b>"`,
  "a]]> --> <!-- <script>alert(1)</script>",
  "&lt; &copy; &#0; &nosuch; %s {x} `y`",
  "\u{FFFF} \u{200F} \u{1F6A3} \u{A0}x",
];

const planOf = (name: string) => ({
  name,
  site: { name, latitudeDeg: 52, longitudeDeg: 6, timeZone: "Europe/Amsterdam" },
  season: { from: "2027-06-01", to: "2027-06-20", stepMinutes: 60 },
  panels: [
    { name, module: { powerW: 100 } },
    { name: `${name.slice(0, 30)} 2`, module: { powerW: 50 }, mount: { kind: "fixed", tiltDeg: 5 } },
  ],
  stand: {
    legs: [
      { name, lengthMm: 500 },
      { name: `${name.slice(0, 30)} 3`, lengthMm: 260, owned: true },
    ],
  },
  loads: { appliances: [{ name, watts: 20, use: { kind: "for-hours", hours: 5 } }] },
});

/** Every file of markup that the verbs can write. */
const FILES: readonly (readonly [verb: string, option: string, ...more: string[]])[] = [
  ["season", "--chart"],
  ["legs", "--map"],
  ["legs", "--gauge"],
  ["legs", "--sheet"],
  ["aims", "--dial"],
  ["battery", "--chart"],
  ["worth", "--chart"],
  ["sheet", "--html"],
];

/** What an XML reader says against a text, and all that it shows or is named. */
const readXml = (
  text: string,
): { readonly problems: readonly string[]; readonly words: readonly string[] } => {
  const problems: string[] = [];
  const words: string[] = [];
  const parser = new SaxesParser({ xmlns: true });
  parser.on("error", ({ message }) => problems.push(message));
  parser.on("text", (shown) => words.push(shown));
  parser.on("opentag", ({ attributes }) =>
    words.push(...Object.values(attributes).map(({ value }) => value)),
  );
  parser.write(text).close();
  return { problems, words };
};

/** What an HTML reader says against a page. */
const htmlProblems = (text: string): readonly string[] => {
  const problems: string[] = [];
  // A slash that closes a void element is no fault of a page: "may be present" (HTML, 13.1.2.1).
  parse(text, { onParseError: ({ code }) => problems.push(code) });
  return problems;
};

describe.each(HOSTILE)("a plan whose names are %j", (name) => {
  test.each(FILES)("%s %s writes markup that strict readers take, the names in it", async (verb, option) => {
    const folder = await ownFolder();
    const plan = join(folder, "plan.json");
    const file = join(folder, "out.txt");
    await writeFile(plan, JSON.stringify(planOf(name)));
    const heard = await listen(verb, plan, option, file);
    expect(heard.code, heard.remarked).toBe(0);
    const text = await readFile(file, "utf8");
    const isPage = text.startsWith("<!doctype html>");
    expect(isPage).toBe(verb === "sheet" || option === "--sheet");
    const { problems, words } = readXml(text.replace(/^<!doctype html>\n/, ""));
    expect(problems).toEqual([]);
    if (isPage) expect(htmlProblems(text)).toEqual([]);
    // The letters that XML may not hold are told as unknown ones; everything else stands as it was named.
    const shown = name.replace(/[\u{FFFF}]/gu, "\u{FFFD}");
    const named = !["battery", "worth", "legs --map"].includes(option === "--map" ? "legs --map" : verb);
    if (named) expect(words.some((one) => one.includes(shown))).toBe(true);
  });
});
