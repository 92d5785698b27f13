import ts from "typescript";
import { inDependencyOrder, type NotebookCell, type ReadNotebook } from "./read-notebook.ts";

/** A notebook's cells as one TypeScript module, and where each of its lines came from. */
export interface JoinedModule {
  readonly text: string;
  /** For each line of `text`, the line of the notebook's file, or `null` for lines of our own. */
  readonly lines: readonly (number | null)[];
}

/** What the runtime gives every cell, typed: the names of `build/libraries.ts` and the kit's own. */
const PRELUDE = `
declare const Plot: typeof import("@observablehq/plot");
declare const d3: typeof import("d3");
declare const Inputs: typeof import("@observablehq/inputs");
declare const htl: typeof import("htl");
declare const html: typeof import("htl").html;
declare const svg: typeof import("htl").svg;
declare const md: typeof import("observable:runtime/stdlib/md.js").md;
declare const width: number;
declare const dark: boolean;
declare const display: <Value>(value: Value) => Value;
declare const view: <Viewed extends Element & { readonly value: unknown }>(element: Viewed) => AsyncGenerator<Viewed["value"]>;
type Seen<Value> = Value extends AsyncGenerator<infer Each> ? Each : Value extends Generator<infer Each> ? Each : Awaited<Value>;
declare const seen: <Names extends object>(names: Names) => { [Name in keyof Names]: Seen<Names[Name]> };
`;

const PARAMETERS = /^(?:async )?\([^)]*\) => \{\n/;

/** The code between the braces that the kit puts round a cell which is a template, such as Markdown with expressions. */
const templateBody = (body: string): string => body.replace(PARAMETERS, "").replace(/\n\}$/, "");

/** A cell's imports, which go to the head of the module, and the rest with its lines where they were. */
const parted = (code: string): { readonly imports: readonly string[]; readonly rest: string } => {
  const file = ts.createSourceFile("cell.ts", code, ts.ScriptTarget.ESNext);
  let rest = code;
  const imports = file.statements.filter(ts.isImportDeclaration).map((statement) => {
    const text = code.slice(statement.pos, statement.end);
    rest = rest.slice(0, statement.pos) + text.replaceAll(/[^\n]/g, " ") + rest.slice(statement.end);
    return text.trim();
  });
  return { imports, rest };
};

const isScript = ({ mode }: NotebookCell): boolean => mode === "ts" || mode === "js";

/**
 * Joins a notebook's cells, each after those it needs. A cell is a function whose named values others see as the
 * runtime hands them on: the value of a promise, what a view yields.
 */
export const joinedModule = (notebook: ReadNotebook): JoinedModule => {
  const text: string[] = [];
  const lines: (number | null)[] = [];
  const add = (code: string, from: number | null, moves: boolean): void => {
    code.split("\n").forEach((line, index) => {
      text.push(line);
      lines.push(from === null ? null : moves ? from + index : from);
    });
  };
  const cells = inDependencyOrder(notebook.cells).map((cell) => {
    const code = isScript(cell) ? cell.source : templateBody(cell.transpiled.body);
    return { cell, ...parted(code) };
  });
  for (const { cell, imports } of cells) for (const one of imports) add(one, cell.firstLine, false);
  add(PRELUDE, null, false);
  for (const { cell, imports, rest } of cells) {
    const imported = new Set(imports.flatMap((one) => one.match(/[\w$]+/g) ?? []));
    const names = (cell.transpiled.outputs ?? []).filter((name) => !imported.has(name));
    add(`const cell${cell.id} = async () => {`, null, false);
    add(rest, cell.firstLine, isScript(cell));
    add(`return { ${names.join(", ")} };\n};`, cell.firstLine, false);
    add(
      names.length === 0
        ? `await cell${cell.id}();`
        : `const { ${names.join(", ")} } = seen(await cell${cell.id}());`,
      cell.firstLine,
      false,
    );
  }
  add("export {};", null, false);
  return { text: text.join("\n"), lines };
};
