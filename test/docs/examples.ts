import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";

/** One `@example` of a doc comment: the code, and the value that its last comment promises. */
export interface DocExample {
  readonly file: string;
  readonly line: number;
  readonly code: string;
  /** `null` when the example promises nothing: it must then only run. */
  readonly promised: string | null;
}

const lib = fileURLToPath(new URL("../../lib", import.meta.url));

/** The code before the last `//`, and what stands after it and on the comment lines that follow. */
const taken = (text: string): { readonly code: string; readonly promised: string | null } => {
  const lines = text
    .replace(/^<caption>.*<\/caption>/, "")
    .trim()
    .split("\n");
  const codeLines: string[] = [];
  const promised: string[] = [];
  for (const line of lines) {
    const found = /^(.*?)(?:^|\s)\/\/\s?(.*)$/.exec(line);
    if (found === null) {
      if (promised.length > 0) promised.splice(0);
      codeLines.push(line);
    } else {
      if (found[1].trim() !== "") codeLines.push(found[1]);
      promised.push(found[2]);
    }
  }
  return {
    code: codeLines.join("\n").trim(),
    promised: promised.length === 0 ? null : promised.join("\n").trim(),
  };
};

/** Every `@example` in the library's doc comments. */
export const docExamples = (): readonly DocExample[] =>
  readdirSync(lib, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".ts"))
    .flatMap((path) => {
      const text = readFileSync(join(lib, path), "utf8");
      const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
      const found: DocExample[] = [];
      const visit = (node: ts.Node): void => {
        for (const tag of ts.getJSDocTags(node)) {
          // A tag is seen from the statement and again from what it declares.
          if (tag.tagName.text !== "example" || tag.parent.parent !== node) continue;
          const line = source.getLineAndCharacterOfPosition(tag.pos).line + 1;
          found.push({ file: path, line, ...taken(ts.getTextOfJSDocComment(tag.comment) ?? "") });
        }
        ts.forEachChild(node, visit);
      };
      visit(source);
      return found;
    });
