import { expect, test } from "vitest";
import { readNotebook } from "../../notebooks/kit/check/read-notebook.ts";
import { typeProblems } from "../../notebooks/kit/check/typed-cells.ts";

const notebookOf = (cells: readonly string[]) =>
  readNotebook(
    "made-up.html",
    `<!doctype html>\n<notebook>\n<title>Made up</title>\n${cells.join("\n")}\n</notebook>\n`,
  );

const ts = (id: number, code: string): string =>
  `<script id="${id}" type="text/x-typescript">\n${code}\n</script>`;

const markdown = (id: number, ...expressions: readonly string[]): string =>
  `<script id="${id}" type="text/markdown">\n${expressions.map((code) => `\${${code}}`).join(" and ")}\n</script>`;

const picker = ts(1, 'const many = view(Inputs.range([1, 9], { label: "many" }));');

test("finds the cells of a sound notebook sound, in whatever order they stand", () => {
  const sound = notebookOf([
    ts(9, "const twice: number = many * 2;\nconst later: Promise<string> = Promise.resolve(String(twice));"),
    picker,
    ts(3, "const length: number = later.length;"),
    markdown(4, "twice", "later.toUpperCase()"),
    ts(5, 'import { wrapBearing } from "../lib/units/angle.ts";'),
    ts(6, "display(wrapBearing(many));"),
  ]);
  expect(typeProblems([sound])).toEqual([]);
}, 120_000);

test("tells file, line and reason of what is not", () => {
  const broken = notebookOf([
    picker,
    ts(2, "// first\nconst word: string = many;"),
    ts(3, "display(nowhere);"),
    markdown(4, "many.toUpperCase()"),
  ]);
  const problems = typeProblems([broken]);
  expect(problems).toHaveLength(3);
  expect(problems).toEqual(
    expect.arrayContaining([
      expect.stringMatching(/^notebooks\/made-up\.html:9 TS2322: .*'number'.*'string'/),
      expect.stringMatching(/^notebooks\/made-up\.html:12 TS2304: .*'nowhere'/),
      expect.stringMatching(/^notebooks\/made-up\.html:15 TS2\d+: .*'toUpperCase'/),
    ]),
  );
}, 120_000);
