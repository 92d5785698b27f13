import { dirname, join } from "node:path";
import ts from "typescript";
import { NOTEBOOKS } from "../build/notebook-files.ts";
import { type JoinedModule, joinedModule } from "./joined-module.ts";
import type { ReadNotebook } from "./read-notebook.ts";

const ROOT = join(NOTEBOOKS, "..");

const compilerOptions = (): ts.CompilerOptions => {
  const { config } = ts.readConfigFile(join(ROOT, "tsconfig.json"), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, ROOT);
  // A cell's names are there for other cells and for the reader.
  return { ...options, noEmit: true, noUnusedLocals: false, noUnusedParameters: false };
};

/**
 * Runs the TypeScript compiler over the cells of notebooks, joined in the order in which they depend on each other.
 *
 * @returns one line for each complaint: file, line, code and the compiler's words; empty when every cell is sound
 */
export const typeProblems = (notebooks: readonly ReadNotebook[]): readonly string[] => {
  const options = compilerOptions();
  const joined = new Map<string, { readonly notebook: ReadNotebook; readonly module: JoinedModule }>(
    notebooks.map((notebook) => [
      join(NOTEBOOKS, `${notebook.file}.cells.ts`),
      { notebook, module: joinedModule(notebook) },
    ]),
  );
  const host = ts.createCompilerHost(options);
  const { getSourceFile, fileExists, readFile } = host;
  host.fileExists = (path) => joined.has(path) || fileExists(path);
  host.readFile = (path) => joined.get(path)?.module.text ?? readFile(path);
  host.getSourceFile = (path, ...rest) => {
    const own = joined.get(path);
    return own === undefined
      ? getSourceFile(path, ...rest)
      : ts.createSourceFile(path, own.module.text, ts.ScriptTarget.ES2022, true);
  };
  host.getCurrentDirectory = () => dirname(NOTEBOOKS);
  const program = ts.createProgram([...joined.keys(), join(NOTEBOOKS, "kit", "ambient.d.ts")], options, host);
  return [...joined].flatMap(([path, { notebook, module }]) => {
    const file = program.getSourceFile(path);
    if (file === undefined) throw new Error(`typeProblems: the compiler lost ${path}`);
    return [...program.getSyntacticDiagnostics(file), ...program.getSemanticDiagnostics(file)].map(
      ({ start = 0, code, messageText }) => {
        const { line } = file.getLineAndCharacterOfPosition(start);
        const where = module.lines[line] ?? 1;
        return `notebooks/${notebook.file}:${where} TS${code}: ${ts.flattenDiagnosticMessageText(messageText, "\n  ")}`;
      },
    );
  });
};
