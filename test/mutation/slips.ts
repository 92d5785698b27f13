/**
 * Slips put in by hand, one at a time, and whether the tests beside them notice: `npm run slips`, or `npm run slips -- report`
 * for those whose file's path holds the word. Works on a copy of the tree, so nothing is left behind when it is stopped.
 * Fails when fewer than 95 % are noticed, or when the code has moved from under a slip.
 */
import { execFile } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { SLIPS, type Slip } from "./slip-list.ts";

const ENOUGH = 0.95;

const root = fileURLToPath(new URL("../..", import.meta.url));
const run = promisify(execFile);

/** The tree without what is made or fetched; modules are borrowed. */
const copyOfTree = (): string => {
  const copy = mkdtempSync(join(tmpdir(), "panel-season-slips-"));
  for (const part of [
    "lib",
    "test",
    "notebooks",
    "data",
    "package.json",
    "tsconfig.json",
    "vitest.config.ts",
  ]) {
    cpSync(join(root, part), join(copy, part), {
      recursive: true,
      filter: (path) => !path.includes("/dist"),
    });
  }
  symlinkSync(join(root, "node_modules"), join(copy, "node_modules"));
  return copy;
};

/** A file's text with a slip in it. */
const slipped = (text: string, { file, from, to }: Slip): string => {
  const found = text.split(from).length - 1;
  if (found !== 1) throw new Error(`${file}: expected once, found ${found} times: ${from}`);
  return text.replace(from, () => to);
};

const isNoticed = async (copy: string, { tests }: Slip): Promise<boolean> => {
  try {
    await run("npx", ["vitest", "run", "--bail", "1", "--reporter", "dot", ...tests], {
      cwd: copy,
      maxBuffer: 1 << 26,
    });
    return false;
  } catch (failure) {
    const { stdout = "" } = failure as { readonly stdout?: string };
    if (/No test files found|Startup Error/.test(stdout)) throw failure;
    return true;
  }
};

const wanted = process.argv[2] ?? "";
const chosen = SLIPS.filter(({ file, says }) => `${file} ${says}`.includes(wanted));
for (const slip of chosen) slipped(readFileSync(join(root, slip.file), "utf8"), slip);

const copy = copyOfTree();
const missed: Slip[] = [];
try {
  for (const slip of chosen) {
    const path = join(copy, slip.file);
    const whole = readFileSync(path, "utf8");
    writeFileSync(path, slipped(whole, slip));
    const noticed = await isNoticed(copy, slip);
    writeFileSync(path, whole);
    if (!noticed) missed.push(slip);
    console.log(`${noticed ? "noticed" : "MISSED "}  ${slip.file}: ${slip.says}`);
  }
} finally {
  rmSync(copy, { recursive: true, force: true });
}
const share = 1 - missed.length / chosen.length;
console.log(`${chosen.length - missed.length} of ${chosen.length} noticed, ${(100 * share).toFixed(1)} %`);
if (share < ENOUGH) process.exitCode = 1;
