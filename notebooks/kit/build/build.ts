import { rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { build, type InlineConfig, mergeConfig } from "vite";
import { viteSingleFile } from "vite-plugin-singlefile";
import { notebookConfig } from "./config.ts";
import { NOTEBOOKS, notebookFiles, SITE, TAKE_AWAY } from "./notebook-files.ts";

/** The most one take-away file may weigh: it has to cross a bad connection once, and a phone's memory often. */
const LARGEST_TAKE_AWAY_BYTES = 1.6e6;

const files = notebookFiles();
const pathOf = (name: string): string => join(NOTEBOOKS, name);

const buildOnce = (into: string, names: readonly string[], extra: InlineConfig = {}): Promise<unknown> =>
  build(
    mergeConfig<InlineConfig, InlineConfig>(
      {
        ...notebookConfig(),
        configFile: false,
        logLevel: "warn",
        build: { outDir: into, emptyOutDir: false, rolldownOptions: { input: names.map(pathOf) } },
      },
      extra,
    ),
  );

rmSync(join(NOTEBOOKS, "dist"), { recursive: true, force: true });
await buildOnce(SITE, files);
console.log(`Static site, for any host: ${SITE}`);

console.log(`One file each, opens from disk with no network: ${TAKE_AWAY}`);
let heavy = 0;
for (const name of files) {
  await buildOnce(TAKE_AWAY, [name], { plugins: [viteSingleFile()] });
  const bytes = statSync(join(TAKE_AWAY, name)).size;
  const tooHeavy = bytes > LARGEST_TAKE_AWAY_BYTES;
  heavy += Number(tooHeavy);
  console.log(
    `  ${name.padEnd(20)} ${(bytes / 1e6).toFixed(2).padStart(5)} MB${tooHeavy ? "  over 1.6 MB" : ""}`,
  );
}
if (heavy > 0) {
  console.error(`${heavy} of ${files.length} files are heavier than 1.6 MB.`);
  process.exitCode = 1;
}
