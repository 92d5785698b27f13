import { rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { buildSite, buildTakeAway } from "./bundle.ts";
import { LARGEST_TAKE_AWAY_BYTES, NOTEBOOKS, notebookFiles, SITE, TAKE_AWAY } from "./notebook-files.ts";

const files = notebookFiles();
rmSync(join(NOTEBOOKS, "dist"), { recursive: true, force: true });
await buildSite(SITE, files);
console.log(`Static site, for any host: ${SITE}`);

console.log(`One file each, opens from disk with no network: ${TAKE_AWAY}`);
let heavy = 0;
for (const file of files) {
  await buildTakeAway(TAKE_AWAY, file);
  const bytes = statSync(join(TAKE_AWAY, file)).size;
  const tooHeavy = bytes > LARGEST_TAKE_AWAY_BYTES;
  heavy += Number(tooHeavy);
  console.log(
    `  ${file.padEnd(20)} ${(bytes / 1e6).toFixed(2).padStart(5)} MB${tooHeavy ? "  over 1.6 MB" : ""}`,
  );
}
if (heavy > 0) {
  console.error(`${heavy} of ${files.length} files are heavier than 1.6 MB.`);
  process.exitCode = 1;
}
