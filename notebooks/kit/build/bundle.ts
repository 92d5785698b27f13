import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parseTemplate } from "@observablehq/notebook-kit";
import { build, type InlineConfig, mergeConfig } from "vite";
import { viteSingleFile } from "vite-plugin-singlefile";
import { type NotebookCell, readNotebook } from "../check/read-notebook.ts";
import { notebookConfig } from "./config.ts";
import { NOTEBOOKS } from "./notebook-files.ts";

const bundle = async (
  into: string,
  files: readonly string[],
  names: ReadonlySet<string> | null,
  extra: InlineConfig = {},
): Promise<void> => {
  await build(
    mergeConfig<InlineConfig, InlineConfig>(
      {
        ...notebookConfig(names),
        configFile: false,
        logLevel: "warn",
        build: {
          outDir: into,
          emptyOutDir: false,
          rolldownOptions: {
            input: files.map((file) => join(NOTEBOOKS, file)),
            checks: { pluginTimings: false },
          },
        },
      },
      extra,
    ),
  );
};

/** Text without an expression in it is written into the page when it is built, and needs no library when it opens. */
const isFixedText = ({ mode, source }: NotebookCell): boolean =>
  (mode === "md" || mode === "html") && parseTemplate(source).expressions.length === 0;

/** The names that a notebook's cells use without defining them. */
const namesUsed = (file: string): ReadonlySet<string> => {
  const { cells } = readNotebook(file, readFileSync(join(NOTEBOOKS, file), "utf8"));
  return new Set(cells.flatMap((cell) => (isFixedText(cell) ? [] : (cell.transpiled.inputs ?? []))));
};

/** Builds the static site: relative addresses only, so that any host and any folder will do. */
export const buildSite = (into: string, files: readonly string[]): Promise<void> => bundle(into, files, null);

/** Builds one notebook as a single file that opens from disk with no network, with only the libraries it uses. */
export const buildTakeAway = (into: string, file: string): Promise<void> =>
  bundle(into, [file], namesUsed(file), { plugins: [viteSingleFile()] });
