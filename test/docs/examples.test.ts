import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { type DocExample, docExamples } from "./examples.ts";

const examples = docExamples();

/** Names that an example may use beside its own file's: everything the library exports. */
const everything: Readonly<Record<string, unknown>> = await import("../../lib/index.ts");

const run = async ({ file, code }: DocExample, expression: string): Promise<unknown> => {
  const own: Readonly<Record<string, unknown>> = await import(
    fileURLToPath(new URL(`../../lib/${file}`, import.meta.url))
  );
  const scope = { ...everything, ...own };
  const names = Object.keys(scope);
  const statements = code.split(";\n");
  const last = statements.pop() ?? "";
  const body = `${statements.map((statement) => `${statement};`).join("\n")}\nreturn [(${last.replace(/;$/, "")}), (${expression})];`;
  return new Function(...names, body)(...names.map((name) => scope[name]));
};

/** A printed number promises as many digits as it shows, rounded or cut off. */
const unit = (printed: string): number => {
  const decimals = /\.(\d+)/.exec(printed)?.[1].length ?? 0;
  return 10 ** -decimals;
};

const agree = (got: unknown, promised: unknown, printed: string): void => {
  if (typeof promised === "number" && typeof got === "number") {
    expect(Math.abs(got - promised)).toBeLessThanOrEqual(
      Number.isInteger(promised) && Math.abs(promised) < 1e15 && !printed.includes(".") ? 0.5 : unit(printed),
    );
    return;
  }
  if (typeof promised === "object" && promised !== null && typeof got === "object" && got !== null) {
    for (const [key, value] of Object.entries(promised)) {
      const printedValue = new RegExp(`${key}:\\s*(-?[\\d.e+-]+)`).exec(printed)?.[1] ?? printed;
      agree(got[key as keyof typeof got], value, printedValue);
    }
    return;
  }
  expect(got).toEqual(promised);
};

describe("examples in the doc comments", () => {
  test("there are some in every room", () => {
    const rooms = new Set(examples.map(({ file }) => file.split("/")[0]));
    for (const room of ["plan", "sun", "sky", "plane", "panel", "stand", "circuit", "season", "report"])
      expect(rooms).toContain(room);
  });

  test.each(examples.map((example) => [`${example.file}:${example.line}`, example] as const))(
    "%s",
    async (_, example) => {
      const { promised } = example;
      expect(promised, `${example.code}: an example says its value, as // value`).not.toBeNull();
      // A remark may follow the value: `// 0.246, of which ...`.
      const printed = promised ?? "";
      const value = /^(-?[\d.]+(?:e[+-]?\d+)?)(?=$|[,;\s])/.exec(printed)?.[1] ?? printed;
      const [got, wanted] = (await run(example, value)) as [unknown, unknown];
      agree(got, wanted, value);
    },
  );
});
