import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { readFile, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { linesOf } from "../../lib/cli/batch/lines.ts";
import { inShard } from "../../lib/cli/batch/shard.ts";
import { listen, ownFolder } from "./listen.ts";

const planLine = (index: number): string =>
  JSON.stringify({
    name: `site ${index}`,
    site: { latitudeDeg: -60 + ((index * 37) % 121), longitudeDeg: -180 + ((index * 53) % 361) },
    season: { from: "2027-04-01", to: "2027-04-20", stepMinutes: 30 },
    panels: [{ name: "p", module: { powerW: 100 } }],
    stand: { legs: [{ name: "a", lengthMm: 300 }] },
  });

const plansIn = async (folder: string, lines: readonly string[]): Promise<string> => {
  const file = join(folder, "plans.ndjson");
  await writeFile(file, `${lines.join("\n")}\n`);
  return file;
};

const everyPlan = (count: number): readonly string[] =>
  Array.from({ length: count }, (_, index) => planLine(index));

describe("batch", () => {
  test("answers every line in order, whatever the workers, and tells bad lines by number", async () => {
    const folder = await ownFolder();
    const lines = [
      ...everyPlan(6),
      "{ oops",
      planLine(7).replace(/"latitudeDeg":-?\d+/, '"latitudeDeg":99'),
      planLine(8),
    ];
    const input = await plansIn(folder, lines);
    const one = await listen("batch", input, "--workers", "1");
    const two = await listen("batch", input, "--workers", "2");
    expect(one.code).toBe(0);
    expect(two.said).toBe(one.said);
    const results = one.said
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(results.map(({ line }) => line)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(results.flatMap(({ line, problems }) => (problems ? [line] : []))).toEqual([7, 8]);
    expect(one.remarked).toContain("line 7: plan");
    expect(one.remarked).toContain("line 8: site.latitudeDeg");
  });

  test("writes one CSV table", async () => {
    const folder = await ownFolder();
    const out = join(folder, "t.csv");
    const { code } = await listen(
      "batch",
      await plansIn(folder, [...everyPlan(2), "{"]),
      "--out",
      out,
      "--csv",
    );
    expect(code).toBe(0);
    const { data, errors } = Papa.parse<Record<string, string>>(await readFile(out, "utf8"), {
      header: true,
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    expect(data.map(({ line, setting }) => `${line} ${setting}`)).toEqual([
      "1 flat",
      "1 a",
      "2 flat",
      "2 a",
      "3 ",
    ]);
    expect(data[4].problem).toContain("must be JSON");
    // No blank line anywhere: five rows below the header.
    expect((await readFile(out, "utf8")).split("\r\n")).toHaveLength(1 + 5 + 1);
    expect(existsSync(`${out}.part`)).toBe(false);
  });

  test("shards share a file out, none lost and none doubled", async () => {
    const folder = await ownFolder();
    const input = await plansIn(folder, everyPlan(7));
    const whole = (await listen("batch", input)).said.trim().split("\n");
    const parts = await Promise.all([1, 2, 3].map((part) => listen("batch", input, "--shard", `${part}/3`)));
    expect(parts.flatMap(({ said }) => said.trim().split("\n")).sort()).toEqual([...whole].sort());
    expect((await listen("batch", input, "--shard", "4/3")).code).toBe(2);
  });

  test("killed and resumed, it gives the same bytes as a run left alone", async () => {
    const folder = await ownFolder();
    const input = await plansIn(folder, everyPlan(400));
    const out = join(folder, "killed.ndjson");
    const program = fileURLToPath(new URL("../../lib/cli.ts", import.meta.url));
    const child = spawn(process.execPath, ["--import", "tsx", program, "batch", input, "--out", out], {
      stdio: "ignore",
    });
    const ended = new Promise((resolve) => child.once("exit", resolve));
    // Killed as soon as some results are on disk, wherever that is.
    for (let tries = 0; tries < 2000 && child.exitCode === null; tries += 1) {
      if (existsSync(`${out}.part`) && (await stat(`${out}.part`)).size > 3000) break;
      await wait(10);
    }
    child.kill("SIGKILL");
    await ended;
    expect(existsSync(out)).toBe(false);
    // As a kill in the middle of a write would leave it.
    const left = await readFile(`${out}.part`);
    await writeFile(`${out}.part`, left.subarray(0, left.length - 5));

    expect((await listen("batch", input, "--out", out)).remarked).toContain("--resume");
    expect((await listen("batch", input, "--out", out, "--resume")).code).toBe(0);
    const alone = join(folder, "alone.ndjson");
    await listen("batch", input, "--out", alone);
    expect(await readFile(out, "utf8")).toBe(await readFile(alone, "utf8"));
  }, 60_000);

  test("a climate asked for is every plan's: bands, its places, and the same figures as season gives", async () => {
    const folder = await ownFolder();
    const input = await plansIn(folder, [planLine(3), "{", planLine(4)]);
    const one = await listen("batch", input, "--climate", "Denver, CO", "--workers", "1");
    const two = await listen("batch", input, "--climate", "Denver, CO", "--workers", "2");
    expect(two.said).toBe(one.said);
    const [first] = one.said.split("\n").map((line) => JSON.parse(line || "null"));
    expect(first).toMatchObject({
      sky: "climate",
      climate: expect.stringMatching(/^rough: Denver, CO.*typical year/),
    });
    const file = join(folder, "plan.json");
    await writeFile(file, planLine(3));
    const season = JSON.parse((await listen("season", file, "--climate", "Denver, CO", "--json")).said);
    expect(first.settings).toHaveLength(season.totals.length);
    for (const [index, setting] of first.settings.entries()) {
      const { p10Wh, p50Wh, p90Wh } = season.totals[index];
      expect([setting.p10_Wh, setting.p50_Wh, setting.p90_Wh]).toEqual([p10Wh, p50Wh, p90Wh].map(Math.round));
      expect(setting.p10_Wh).toBeLessThan(setting.p50_Wh);
      expect(setting.p50_Wh).toBeLessThan(setting.p90_Wh);
      expect(setting.expected_Wh).toBeLessThan(setting.clear_Wh);
    }
    expect(first.notes).toEqual(season.notes);
  });

  test("under a clear sky the band's columns are there and empty", async () => {
    const folder = await ownFolder();
    const { said } = await listen("batch", await plansIn(folder, everyPlan(1)), "--csv");
    const { data } = Papa.parse<Record<string, string>>(said, { header: true, skipEmptyLines: true });
    expect(data[0]).toMatchObject({
      sky: "clear",
      climate: "",
      expected_Wh: "",
      p10_Wh: "",
      p50_Wh: "",
      p90_Wh: "",
    });
    expect(Number(data[0].clear_Wh)).toBeGreaterThan(0);
  });

  test("a season asked for that a plan can't have is told line by line, with everything wrong", async () => {
    const folder = await ownFolder();
    const input = await plansIn(folder, everyPlan(2));
    const { remarked } = await listen("batch", input, "--from", "2027-13-01", "--climate", "");
    expect(remarked).toContain('line 1: season.from "2027-13-01": must be a date');
    expect(remarked).toContain('line 2: sky.from.name "": must not be empty');
  });

  test("does not resume what was asked with other options", async () => {
    const folder = await ownFolder();
    const input = await plansIn(folder, everyPlan(2));
    const out = join(folder, "r.ndjson");
    const { said } = await listen("batch", input, "--step", "60");
    await writeFile(`${out}.part`, `${said.split("\n")[0]}\n`);
    const other = await listen("batch", input, "--out", out, "--resume");
    expect([other.code, other.remarked]).toEqual([1, expect.stringContaining("an option has changed")]);
    expect((await listen("batch", input, "--step", "60", "--out", out, "--resume")).code).toBe(0);
    expect(await readFile(out, "utf8")).toBe(said);
  });

  test("does not resume on a changed input", async () => {
    const folder = await ownFolder();
    const input = await plansIn(folder, everyPlan(2));
    const out = join(folder, "r.ndjson");
    await writeFile(`${out}.part`, `${JSON.stringify({ line: 1, sha256: "0000" })}\n`);
    const { code, remarked } = await listen("batch", input, "--out", out, "--resume");
    expect(code).toBe(1);
    expect(remarked).toContain("has changed");
  });

  test("does not replace results unasked, nor read a folder or nothing", async () => {
    const folder = await ownFolder();
    const input = await plansIn(folder, everyPlan(1));
    expect(await listen("batch", input, "--out", input)).toMatchObject({
      code: 1,
      remarked: expect.stringContaining("--force"),
    });
    expect((await listen("batch", folder)).remarked).toContain("it is a folder");
    expect((await listen("batch", join(folder, "none"))).remarked).toContain("there is no such file");
    expect((await listen("batch", input, "--resume")).code).toBe(2);
  });
});

describe("linesOf", () => {
  async function* inChunks(text: string, size: number): AsyncGenerator<Uint8Array> {
    const bytes = Buffer.from(text);
    for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
  }

  const collect = async (text: string, size: number, longest: number): Promise<(string | null)[]> => {
    const found: (string | null)[] = [];
    for await (const line of linesOf(inChunks(text, size), longest)) found.push(line.text);
    return found;
  };

  test("finds the same lines however the bytes arrive, letters of several bytes included", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(
          fc.string({ unit: "grapheme" }).map((text) => text.replace(/[\r\n]/g, "")),
          { maxLength: 8 },
        ),
        fc.integer({ min: 1, max: 9 }),
        async (lines, size) => {
          expect(await collect(lines.map((line) => `${line}\n`).join(""), size, 1e6)).toEqual(lines);
        },
      ),
    );
  });

  test("passes over a line that is too long and goes on after it", async () => {
    expect(await collect(`ab\n${"x".repeat(50)}\ncd`, 7, 10)).toEqual(["ab", null, "cd"]);
  });

  test("gives up on what has no lines", async () => {
    await expect(collect("x".repeat(1000), 10, 10)).rejects.toThrow(/must end/);
  });
});

test("every line belongs to exactly one shard", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 50 }), (line, of) => {
      const parts = Array.from({ length: of }, (_, index) => index + 1);
      expect(parts.filter((part) => inShard(line, { part, of }))).toHaveLength(1);
    }),
  );
});
