import { join } from "node:path";
import { build, type InlineConfig, mergeConfig } from "vite";
import { viteSingleFile } from "vite-plugin-singlefile";
import { notebookConfig } from "./config.ts";
import { NOTEBOOKS } from "./notebook-files.ts";

const bundle = async (into: string, files: readonly string[], extra: InlineConfig = {}): Promise<void> => {
  await build(
    mergeConfig<InlineConfig, InlineConfig>(
      {
        ...notebookConfig(),
        configFile: false,
        logLevel: "warn",
        build: {
          outDir: into,
          emptyOutDir: false,
          rolldownOptions: { input: files.map((file) => join(NOTEBOOKS, file)) },
        },
      },
      extra,
    ),
  );
};

/** Builds the static site: relative addresses only, so that any host and any folder will do. */
export const buildSite = (into: string, files: readonly string[]): Promise<void> => bundle(into, files);

/** Builds one notebook as a single file that opens from disk with no network. */
export const buildTakeAway = (into: string, file: string): Promise<void> =>
  bundle(into, [file], { plugins: [viteSingleFile()] });
