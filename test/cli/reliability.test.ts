import { execFileSync, spawn } from "node:child_process";
import { mkdirSync } from "node:fs";
import { open, readdir, readFile, truncate, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { DOMParser } from "linkedom";
import Papa from "papaparse";
import { describe, expect, onTestFinished, test } from "vitest";
import { readTextFile } from "../../lib/cli/read-file.ts";
import { writeWholeFiles } from "../../lib/cli/write-file.ts";
import { listen, ownFolder } from "./listen.ts";

const program = fileURLToPath(new URL("../../lib/cli.ts", import.meta.url));

describe("killed at any moment", () => {
  test("under the name stands the old file or the new one, whole", async () => {
    const folder = await ownFolder();
    const csv = join(folder, "season.csv");
    const call = ["season", "--to", "2027-03-25", "--csv", csv, "--force"];
    expect((await listen(...call)).code).toBe(0);
    const whole = await readFile(csv, "utf8");
    await writeFile(csv, "the old file");
    // From before it has started to after it has ended, on this machine and on slower ones.
    for (const delayMs of [200, 700, 1000, 1300, 1800]) {
      const child = spawn(process.execPath, ["--import", "tsx", program, ...call], { stdio: "ignore" });
      const ended = new Promise((resolve) => child.once("exit", resolve));
      await wait(delayMs);
      child.kill("SIGKILL");
      await ended;
      expect(["the old file", whole]).toContain(await readFile(csv, "utf8"));
    }
  }, 60_000);
});

/** A disk of 16 kB, where this user may make one; `null` elsewhere. */
const tinyDisk = async (): Promise<string | null> => {
  const folder = join(await ownFolder(), "disk");
  mkdirSync(folder);
  try {
    execFileSync("mount", ["-t", "tmpfs", "-o", "size=16k", "tmpfs", folder], { stdio: "ignore" });
  } catch {
    return null;
  }
  onTestFinished(() => {
    execFileSync("umount", [folder]);
  });
  return folder;
};

describe("what a disk may do", () => {
  test("a full disk is told, and the old file stands", async ({ skip }) => {
    const disk = await tinyDisk();
    if (disk === null) skip("this user may not mount a small disk");
    const csv = join(disk ?? "", "season.csv");
    await writeFile(csv, "the old file");
    const { code, remarked } = await listen("season", "--csv", csv, "--force");
    expect(code).toBe(1);
    expect(remarked).toContain("the disk is full");
    expect(await readFile(csv, "utf8")).toBe("the old file");
    expect(await readdir(disk ?? "")).toEqual(["season.csv"]);
  });

  test("a file of 1 GB is refused without being read whole", async () => {
    const huge = join(await ownFolder(), "huge.json");
    await writeFile(huge, "");
    await truncate(huge, 1e9);
    const before = process.memoryUsage().arrayBuffers;
    expect((await listen("season", huge)).remarked).toContain("must be at most 1 MB");
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(50e6);
  });

  test.runIf(process.platform !== "win32")("a device that never ends is stopped at the bound", async () => {
    await expect(readTextFile("/dev/zero", 5e6)).rejects.toThrow("must be at most 5 MB");
    const urandom = await open("/dev/urandom", "r");
    await urandom.close();
    await expect(readTextFile("/dev/urandom", 2e6)).rejects.toThrow("must be at most 2 MB");
  });

  test("of several files, all that are in the way are named, and none is written", async () => {
    const folder = await ownFolder();
    await writeFile(join(folder, "a"), "old");
    await writeFile(join(folder, "b"), "old");
    const files = ["a", "b", "c"].map((name) => ({ path: join(folder, name), content: "new" }));
    await expect(writeWholeFiles(files, { force: false })).rejects.toMatchObject({ problems: { length: 2 } });
    expect((await readdir(folder)).sort()).toEqual(["a", "b"]);
    await writeWholeFiles(files, { force: true });
    expect(await Promise.all(files.map(({ path }) => readFile(path, "utf8")))).toEqual(["new", "new", "new"]);
  });
});

describe("text from a plan", () => {
  const HOSTILE = '"><script>alert(1)</script>&<img src=x onerror=1>';

  test("gets into charts and tables as text only", async () => {
    const folder = await ownFolder();
    const plan = {
      name: HOSTILE,
      site: { name: "=HYPERLINK(1)", latitudeDeg: 50, longitudeDeg: 8 },
      season: { from: "2027-05-01", to: "2027-05-20" },
      panels: [{ name: HOSTILE, module: { powerW: 50 } }],
      stand: {
        legs: [
          { name: HOSTILE, lengthMm: 300 },
          { name: "=1+2", lengthMm: 400 },
        ],
      },
    };
    await writeFile(join(folder, "plan.json"), JSON.stringify(plan));
    const [csv, chart] = [join(folder, "s.csv"), join(folder, "s.svg")];
    expect((await listen("season", join(folder, "plan.json"), "--csv", csv, "--chart", chart)).code).toBe(0);

    const svg = await readFile(chart, "utf8");
    const drawing = new DOMParser().parseFromString(svg, "image/svg+xml");
    expect(drawing.querySelectorAll("script, img, foreignObject")).toHaveLength(0);
    expect(svg).toContain("&lt;script&gt;");

    const { data } = Papa.parse<string[]>(await readFile(csv, "utf8"), { skipEmptyLines: true });
    expect(data.every((row) => row.length === data[0].length)).toBe(true);
    expect(data.flat().filter((cell) => /^[=+@]/.test(cell))).toEqual([]);
  });
});
