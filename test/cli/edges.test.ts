import { spawn } from "node:child_process";
import { chmod, lstat, mkdir, readFile, readlink, stat, symlink, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { readPlan } from "../../lib/plan/read-plan.ts";
import { inchesText } from "../../lib/units/length.ts";
import { PlanError } from "../../lib/units/problem.ts";
import { listen, ownFolder } from "./listen.ts";

const PLAN = {
  site: { latitudeDeg: 52, longitudeDeg: 5, timeZone: "Europe/Amsterdam" },
  season: { from: "2027-06-01", to: "2027-06-03" },
  panels: [{ name: "one", module: { powerW: 60 } }],
};
const LINE = JSON.stringify(PLAN);
const CLI = fileURLToPath(new URL("../../lib/cli.ts", import.meta.url));
const TSX = fileURLToPath(new URL("../../node_modules/.bin/tsx", import.meta.url));

/** Runs the program itself through a shell, for what only a real pipe or device shows. */
const shell = (
  command: string,
): Promise<{ readonly code: number | null; readonly out: string; readonly err: string }> =>
  new Promise((done) => {
    const run = spawn("bash", ["-c", `set -o pipefail; ${command}`], { env: { ...process.env, CLI, TSX } });
    let [out, err] = ["", ""];
    run.stdout.on("data", (chunk) => {
      out += String(chunk);
    });
    run.stderr.on("data", (chunk) => {
      err += String(chunk);
    });
    run.on("close", (code) => done({ code, out, err }));
  });

const nested = (depth: number): string => `${'{"a":'.repeat(depth)}1${"}".repeat(depth)}`;

describe("a batch keeps what is not its own", () => {
  test("a foreign .part is refused and stays as it was", async () => {
    const folder = await ownFolder();
    const [plans, out] = [join(folder, "plans.ndjson"), join(folder, "out.ndjson")];
    await writeFile(plans, `${LINE}\n${LINE}\n`);
    await writeFile(`${out}.part`, "my diary\nday two\n");
    const { code, remarked } = await listen("batch", plans, "--out", out, "--resume");
    expect(code).toBe(1);
    expect(remarked).toMatch(/out\.ndjson\.part, line 1: holds no result/);
    expect(await readFile(`${out}.part`, "utf8")).toBe("my diary\nday two\n");
  });

  test("a .part with a broken line in the middle is told, and no result is thrown away", async () => {
    const folder = await ownFolder();
    const [plans, out] = [join(folder, "plans.ndjson"), join(folder, "out.ndjson")];
    await writeFile(plans, `${LINE}\n${LINE}\n`);
    const part =
      '{"line":1,"sha256":"aaaaaaaaaaaaaaaa"}\n{"line":2,"sh\n{"line":3,"sha256":"bbbbbbbbbbbbbbbb"}\n';
    await writeFile(`${out}.part`, part);
    const { code, remarked } = await listen("batch", plans, "--out", out, "--resume");
    expect(code).toBe(1);
    expect(remarked).toMatch(/line 2: holds no result/);
    expect(await readFile(`${out}.part`, "utf8")).toBe(part);
  });

  test("resuming with a shortened input writes nothing that the input does not hold", async () => {
    const folder = await ownFolder();
    const [plans, out] = [join(folder, "plans.ndjson"), join(folder, "out.ndjson")];
    await writeFile(plans, `${LINE}\n${LINE}\n${LINE}\n`);
    expect((await listen("batch", plans, "--out", out)).code).toBe(0);
    await writeFile(`${out}.part`, await readFile(out, "utf8"));
    await writeFile(plans, `${LINE}\n`);
    const { code, remarked } = await listen("batch", plans, "--out", out, "--resume", "--force");
    expect(code).toBe(1);
    expect(remarked).toMatch(/shorter than it was/);
  });

  test("two runs on one output: the second is refused while the first is at it", async () => {
    const folder = await ownFolder();
    const [plans, out] = [join(folder, "plans.ndjson"), join(folder, "out.ndjson")];
    await writeFile(plans, `${LINE}\n`);
    await writeFile(`${out}.part.lock`, String(process.pid));
    const { code, remarked } = await listen("batch", plans, "--out", out);
    expect(code).toBe(1);
    expect(remarked).toMatch(/being written by another run/);
    // A run that died leaves its lock behind; nobody has that number.
    await writeFile(`${out}.part.lock`, "2147483646");
    expect((await listen("batch", plans, "--out", out)).code).toBe(0);
  });
});

describe("hostile lines and plans", () => {
  test("a line nested without end, one in Latin-1 and one cut short are passed over, the others answered", async () => {
    const folder = await ownFolder();
    const plans = join(folder, "plans.ndjson");
    const bad = [
      `{"nonsense":${nested(20_000)}}`,
      JSON.stringify(PLAN).replace('"season":', `"season":${nested(50_000)},"s":`),
      LINE.slice(0, 40),
    ];
    await writeFile(
      plans,
      Buffer.concat([
        Buffer.from(`\ufeff${LINE}\n${bad.join("\n")}\n`),
        Buffer.from(
          `${JSON.stringify({ ...PLAN, name: "Hutte" }).replace("Hutte", "H\u00fctte")}\n`,
          "latin1",
        ),
        Buffer.from(`${LINE}\n`),
      ]),
    );
    const { code, said, remarked } = await listen("batch", plans);
    const results = said
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line) as { readonly problems?: readonly string[] });
    expect(code).toBe(0);
    expect(results.map(({ problems }) => problems === undefined)).toEqual([
      true,
      false,
      false,
      false,
      false,
      true,
    ]);
    expect(results[4].problems?.[0]).toMatch(/not UTF-8/);
    expect(remarked).not.toMatch(/\n\s+at /);
  });

  test("readPlan complains of what is no JSON at all, and never breaks on it", () => {
    const circle: Record<string, unknown> = {};
    circle.self = circle;
    for (const value of [10n, circle, Symbol("x"), () => 1]) {
      expect(() => readPlan({ ...PLAN, site: { ...PLAN.site, latitudeDeg: value } })).toThrow(PlanError);
      expect(() => readPlan({ ...PLAN, strange: value })).toThrow(PlanError);
    }
  });

  test("a length that is none is written out and not reckoned with for ever", () => {
    expect([Number.NaN, Number.POSITIVE_INFINITY].map(inchesText)).toEqual(["NaN in", "Infinity in"]);
  });

  test("control characters of a plan never reach the terminal", async () => {
    const folder = await ownFolder();
    const plan = join(folder, "plan.json");
    await writeFile(plan, JSON.stringify({ ...PLAN, "\u001b[2J\u202ehidden": 1 }));
    const { code, remarked } = await listen("season", plan);
    expect(code).toBe(1);
    for (const hidden of ["\u001b", "\u202e"]) expect(remarked).not.toContain(hidden);
    expect(remarked).toMatch(/\\u001b\[2J/);
  });
});

test("a key that stands twice in a plan is told: the second would win in silence", async () => {
  const folder = await ownFolder();
  const plan = join(folder, "plan.json");
  await writeFile(plan, LINE.replace('"latitudeDeg":52', '"latitudeDeg":52,"longitudeDeg":9'));
  const { code, remarked } = await listen("season", plan);
  expect(code).toBe(1);
  expect(remarked).toMatch(/site\.longitudeDeg: stands twice/);
});

describe("files are written whole, where they were meant, or not at all", () => {
  test("one path under two options is refused, and so is the plan itself as an output", async () => {
    const folder = await ownFolder();
    const [plan, out] = [join(folder, "plan.json"), join(folder, "out.csv")];
    await writeFile(plan, LINE);
    const twice = await listen(
      "season",
      plan,
      "--csv",
      out,
      "--chart",
      join(folder, ".", "out.csv"),
      "--force",
    );
    expect(twice.code).toBe(1);
    expect(twice.remarked).toMatch(/is asked for twice/);
    const itself = await listen("season", plan, "--csv", plan, "--force");
    expect(itself.code).toBe(1);
    expect(itself.remarked).toMatch(/never written over/);
    expect(await readFile(plan, "utf8")).toBe(LINE);
  });

  test("--force keeps the permissions of a file and follows a link; a link that leads nowhere and a folder are refused", async () => {
    const folder = await ownFolder();
    const plan = join(folder, "plan.json");
    await writeFile(plan, LINE);
    const [secret, link, dangling] = [
      join(folder, "secret.csv"),
      join(folder, "link.csv"),
      join(folder, "dangling.csv"),
    ];
    await writeFile(secret, "old");
    await chmod(secret, 0o600);
    await symlink(secret, link);
    await symlink(join(folder, "nowhere", "x"), dangling);
    await mkdir(join(folder, "folder.csv"));
    expect((await listen("season", plan, "--csv", link, "--force")).code).toBe(0);
    expect((await stat(secret)).mode & 0o777).toBe(0o600);
    expect(await readFile(secret, "utf8")).toMatch(/^date,/);
    expect((await lstat(link)).isSymbolicLink()).toBe(true);
    expect(await readlink(link)).toBe(secret);
    for (const [name, words] of [
      ["dangling.csv", /leads nowhere/],
      ["folder.csv", /it is a folder/],
    ] as const) {
      const { code, remarked } = await listen("season", plan, "--csv", join(folder, name), "--force");
      expect(code).toBe(1);
      expect(remarked).toMatch(words);
    }
  });

  test("a name of 300 letters and an existing folder for a batch's results are one sentence each", async () => {
    const folder = await ownFolder();
    const plans = join(folder, "plans.ndjson");
    await writeFile(plans, `${LINE}\n`);
    for (const out of [join(folder, "x".repeat(300)), folder]) {
      const { code, remarked } = await listen("batch", plans, "--out", out, "--force");
      expect(code).toBe(1);
      expect(remarked).toMatch(/can't be written: (the name is too long|it is a folder)/);
      expect(remarked).not.toMatch(/\n\s+at /);
    }
  });

  test("a pipe that nobody writes to is not waited for as a weather file", async () => {
    const folder = await ownFolder();
    const pipe = join(folder, "pipe.csv");
    expect((await shell(`mkfifo ${pipe}`)).code).toBe(0);
    const plan = join(folder, "plan.json");
    await writeFile(plan, JSON.stringify({ ...PLAN, sky: { source: "weather", file: "pipe.csv" } }));
    const { code, remarked } = await listen("season", plan);
    expect(code).toBe(1);
    expect(remarked).toMatch(/must be a plain file/);
  });
});

describe("the last metre of the output", () => {
  test("a full device is one sentence and exit 1", async () => {
    const { code, err } = await shell('"$TSX" "$CLI" help > /dev/full');
    expect(code).toBe(1);
    expect(err).toMatch(/the output can't be written: the disk is full/);
    expect(err).not.toMatch(/\n\s+at /);
  });

  test("a reader that has seen enough ends it quietly, complaints in the same pipe included", async () => {
    const { out, err } = await shell('"$TSX" "$CLI" plan 2>&1 | head -n 1');
    expect(out.split("\n").length).toBeLessThanOrEqual(2);
    expect(err).toBe("");
    const quiet = await shell('"$TSX" "$CLI" season --no-such 2>&1 | true');
    expect(quiet.err).toBe("");
  });
});
