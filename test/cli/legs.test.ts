import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { listen, ownFolder } from "./listen.ts";

const plan = {
  name: "test hut",
  site: { latitudeDeg: 52, longitudeDeg: 5, timeZone: "Europe/Amsterdam" },
  season: { from: "2027-04-01", to: "2027-09-30", stepMinutes: 60 },
  panels: [{ name: "p", module: { powerW: 50 } }],
  stand: {
    pivotMm: 600,
    legs: [
      { name: "low", lengthMm: 200 },
      { name: "high", lengthMm: 500 },
    ],
  },
};

const planIn = async (folder: string, given: unknown = plan): Promise<string> => {
  const file = join(folder, "plan.json");
  await writeFile(file, JSON.stringify(given));
  return file;
};

describe("legs", () => {
  test("says which to cut, with the cautions beside", async () => {
    const folder = await ownFolder();
    const { code, said } = await listen("legs", await planIn(folder), "--most", "2");
    expect(code).toBe(0);
    expect(said).toMatch(/Best two legs to cut: \d+ mm/);
    expect(said).toContain("from the ground (");
    expect(said).toContain("Drill no new hole");
    expect(said).toContain("keep both hands clear of the blade");
    expect(said).toMatch(
      /unstaked, it may move above a forecast wind of \d m\/s \(Beaufort \d, .* would hold 10 m\/s/,
    );
    expect(said).not.toMatch(/before a gale|no permit/);
  });

  test("writes every file that is asked for", async () => {
    const folder = await ownFolder();
    const tables = ["csv", "settings", "tolerance", "bands", "rules", "pieces"];
    const drawings = ["sheet", "gauge", "map"];
    const asked = [...tables, ...drawings].flatMap((name) => [`--${name}`, join(folder, name)]);
    const { code } = await listen("legs", await planIn(folder), ...asked, "--set", "2");
    expect(code).toBe(0);
    for (const name of tables) {
      expect(JSON.parse(await readFile(join(folder, `${name}-metadata.json`), "utf8"))).toMatchObject({
        url: name,
      });
      expect((await readFile(join(folder, name), "utf8")).split("\r\n").length).toBeGreaterThan(2);
    }
    expect(await readFile(join(folder, "sheet"), "utf8")).toMatch(/^<!doctype html>/);
    expect(await readFile(join(folder, "gauge"), "utf8")).toContain('width="190mm"');
    expect(await readFile(join(folder, "map"), "utf8")).toContain("<svg");
  });

  test("an owned leg is kept, the rest of the set goes with it", async () => {
    const folder = await ownFolder();
    const owned = { ...plan, stand: { ...plan.stand, legs: [{ name: "mine", lengthMm: 300, owned: true }] } };
    const { said } = await listen("legs", await planIn(folder, owned), "--json", "--set", "1");
    const answer = JSON.parse(said);
    expect(answer.sheet.legs.map(({ owned: kept }: { owned: boolean }) => kept).sort()).toEqual([
      false,
      true,
    ]);
    expect(answer.sets[0].totalWh).toBeGreaterThan(answer.settings[0].totalWh);
  });

  test("tells what to cut off, and refuses a leg that is too short", async () => {
    const folder = await ownFolder();
    const file = await planIn(folder);
    const trim = async (measured: string, wanted: string, from: string) =>
      listen("legs", file, "--measured", measured, "--wanted", wanted, "--read-from", from);
    // 600 (tan 40 - tan 35) = 600 x (0.839100 - 0.700208) = 83.3 mm.
    // Half a degree there is 600 x 0.5 pi / 180 / cos(35)^2 = 7.8 mm: the first cut stays short of 83 by that.
    const cut = (await trim("40", "35", "ground")).said;
    expect(cut).toMatch(/ Cut about 80 mm \(3 1\/8 in\) off the foot, stand it up, measure again/);
    expect(cut).toContain("Half a degree of reading error is 8 mm of leg.");
    expect(cut).toMatch(/^(It hardly pays to cut|Cutting brings|Kept all season)/);
    expect((await trim("50", "55", "post")).said).toMatch(/ Cut about 80 mm/);
    expect((await trim("35", "40", "ground")).said).toMatch(/^Don't cut: the leg is already about 83 mm/);
    // A tilt of 0 was answered with a cut to 0.0 mm.
    expect((await trim("10", "0", "ground")).said).toMatch(
      /^Don't cut: .* Use no leg, and lay the panel flat\./,
    );
    expect((await trim("40", "35", "ground")).said).toContain("Before cutting: Measure the stand itself");
    const json = ["--measured", "40", "--wanted", "35", "--read-from", "ground", "--json"];
    expect(JSON.parse((await listen("legs", file, ...json)).said).cutMm).toBeCloseTo(83.3, 1);
    expect(await trim("90", "35", "ground")).toMatchObject({
      code: 1,
      remarked: expect.stringContaining("measured tilt"),
    });
    expect(await listen("legs", file, "--measured", "40", "--wanted", "35")).toMatchObject({
      code: 2,
      remarked: expect.stringContaining("--read-from: must be ground or post"),
    });
    expect((await listen("legs", file, "--wanted", "35")).code).toBe(2);
  });

  test("refuses what can't be, with the reason", async () => {
    const folder = await ownFolder();
    const bad = {
      ...plan,
      stand: { legStyle: "plumb", pivotMm: 600, legs: [{ name: "mast", lengthMm: 900 }] },
    };
    const refused = await listen("legs", await planIn(folder, bad));
    expect(refused.code).toBe(1);
    expect(refused.remarked).toMatch(
      /stand\.legs\[0\]\.lengthMm .*must be 0\.0 to 600\.0 mm; it is longer than the pivot can rise/,
    );
    const fixed = { ...plan, panels: [{ name: "roof", module: { powerW: 50 }, mount: { kind: "fixed" } }] };
    expect((await listen("legs", await planIn(folder, fixed))).remarked).toContain(
      "at least one panel on the stand",
    );
    expect((await listen("legs", "--for", "luck")).code).toBe(2);
    expect((await listen("legs", "--most", "5")).code).toBe(2);
  });
});

describe("swaps", () => {
  test("tells when to change, and what it is worth", async () => {
    const folder = await ownFolder();
    const csv = join(folder, "swaps.csv");
    const { code, said } = await listen("swaps", await planIn(folder), "--csv", csv);
    expect(code).toBe(0);
    expect(said).toMatch(/: change to (low|high), \d+° from the ground .* worth [\d,]+ Wh/);
    const rows = (await readFile(csv, "utf8")).trim().split("\r\n");
    expect(rows[0]).toBe("date,setting,instead_of,leg_mm,tilt_deg,from_post_deg,worth_Wh,earliest,latest");
    expect(rows.length).toBe(1 + 1 + (said.match(/: change to/g) ?? []).length);
  });

  test("keeps what it is told to, and needs fewer swaps for less", async () => {
    const folder = await ownFolder();
    const file = await planIn(folder);
    const answers = await Promise.all(
      ["50", "99", "100"].map(async (keep) =>
        JSON.parse((await listen("swaps", file, "--keep", keep, "--json")).said),
      ),
    );
    answers.forEach(({ keptShare }, index) => {
      expect(keptShare).toBeGreaterThanOrEqual([0.5, 0.99, 1][index] - 1e-9);
    });
    const counts = answers.map(({ swaps }) => swaps.length);
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
  });

  test("a plan without legs gets the best ones", async () => {
    const folder = await ownFolder();
    const { said } = await listen("swaps", await planIn(folder, { ...plan, stand: { pivotMm: 600 } }));
    expect(said).toMatch(/leg \d+, \d+° from the ground/);
  });
});
