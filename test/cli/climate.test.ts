import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { listen, ownFolder } from "./listen.ts";

const twelve = [0.6, 1.2, 2.5, 3.9, 4.9, 5.3, 5.0, 4.3, 3.0, 1.7, 0.8, 0.5];

const planIn = async (folder: string, sky: object, site: object = {}): Promise<string> => {
  const file = join(folder, "plan.json");
  await writeFile(
    file,
    JSON.stringify({
      name: "test hut",
      site: { latitudeDeg: 54, longitudeDeg: 9, timeZone: "Europe/Berlin", ...site },
      season: { from: "2027-06-01", to: "2027-06-30", stepMinutes: 30 },
      sky: { source: "climate", seasons: 20, ...sky },
      panels: [{ name: "p", module: { powerW: 50 } }],
      stand: { legs: [{ name: "leg", lengthMm: 400 }] },
    }),
  );
  return file;
};

describe("season under a climate", () => {
  test("a latitude and a longitude are enough", async () => {
    const folder = await ownFolder();
    const { code, said } = await listen("season", await planIn(folder, {}));
    expect(code).toBe(0);
    expect(said).toContain("Figures are expected values, with cloud in them.");
    expect(said).toMatch(/Nine June days in ten bring more than \d+ Wh/);
    expect(said).toMatch(/Nine such seasons in ten bring more than/);
    expect(said).toMatch(/Cloud from the climate of .*\(\d+ km away/);
  });

  test("the table has its band", async () => {
    const folder = await ownFolder();
    const { said } = await listen("season", await planIn(folder, {}), "--json");
    const answer = JSON.parse(said);
    expect(answer.rows).toHaveLength(60);
    expect(answer.totals).toHaveLength(2);
    for (const { clearWh, expectedWh, band } of answer.rows) {
      expect(expectedWh).toBeLessThan(clearWh);
      expect(band.p10Wh).toBeLessThan(band.p90Wh);
    }
    expect(said).not.toContain("NaN");
    expect((await listen("season", await planIn(folder, {}), "--json")).said).toBe(said);
  });

  test.each(["season", "legs", "swaps", "aims", "battery", "worth"])(
    "what %s writes carries beside it where its cloud is from, how sure and what to beware of",
    async (verb) => {
      const folder = await ownFolder();
      const out = join(folder, "t.csv");
      const plan = await planIn(folder, { from: { kind: "analogy", like: "polar coast" }, seasons: 10 });
      const { code, remarked } = await listen(verb, plan, "--csv", out, "--to", "2027-06-05");
      expect([code, remarked]).toEqual([0, expect.stringContaining("wrote")]);
      const metadata = JSON.parse(await readFile(`${out}-metadata.json`, "utf8"));
      const comment = metadata["rdfs:comment"].join("\n");
      expect(comment).toContain("Cloud from the climate of a polar coast");
      expect(comment).toContain("Every expected figure here is rough");
    },
  );

  test("takes a table of one's own, beside the plan", async () => {
    const folder = await ownFolder();
    const row: Record<string, string | number> = { place: "my hut", latitude_deg: 54, longitude_deg: 9 };
    for (const [month, value] of twelve.entries()) {
      row[`global_${String(month + 1).padStart(2, "0")}_kWh_m2_day`] = value;
    }
    await writeFile(join(folder, "mine.csv"), Papa.unparse([row]));
    const file = await planIn(folder, { from: { kind: "table", file: "mine.csv" } });
    const { code, said } = await listen("season", file);
    expect(code).toBe(0);
    expect(said).toContain("my hut (0 km away");
    expect(said).not.toContain("may be off by");
  });

  test.each([
    [{ from: { kind: "place", name: "Nowhere-on-Sea" } }, {}, "must be a place of the climate tables"],
    [{ from: { kind: "table", file: "none.csv" } }, {}, "there is no such file"],
    [
      { from: { kind: "months", globalKWhM2: twelve.map((value) => 3.6 * value) } },
      {},
      "these look like MJ/m2 a day",
    ],
    // With the published constants the nearest places speak alone.
    [
      { sunshine: "fao56" },
      { latitudeDeg: -50, longitudeDeg: -130, timeZone: "Etc/GMT+9" },
      "name a climate by analogy",
    ],
  ])("refuses %o", async (sky, site, words) => {
    const folder = await ownFolder();
    const { code, remarked } = await listen("season", await planIn(folder, sky, site));
    expect(code).toBe(1);
    expect(remarked).toContain(words);
  });

  test("an analogy answers where no place is near, and is called rough", async () => {
    const folder = await ownFolder();
    const site = { latitudeDeg: -50, longitudeDeg: -130, timeZone: "Etc/GMT+9" };
    const file = await planIn(folder, { from: { kind: "analogy", like: "cool wet coast" } }, site);
    const { code, said } = await listen("season", file);
    expect(code).toBe(0);
    expect(said).toContain("Figures are rough expected values, with cloud in them.");
    expect(said).toMatch(/Every expected figure here is rough: a month's light may be off by \d+ %/);
    expect(said).toContain("Rough: the light of a cool wet coast elsewhere, not of this place.");
  });
});

describe("--climate", () => {
  const clearPlan = async (): Promise<string> =>
    planIn(await ownFolder(), { source: "clear", seasons: undefined });

  test("a clear-sky answer says how to have cloud in it", async () => {
    expect((await listen("season", await clearPlan())).said).toContain("--climate nearest");
  });

  test.each([
    ["nearest", /Cloud from the climate of .*\(\d+ km away.*; and a world grid/],
    ["Punta Arenas", /Cloud from the climate of Punta Arenas Airport, Chile/],
    ["hot desert", /Cloud from the climate of a hot desert, like /],
  ])("%s", async (where, words) => {
    const { code, said } = await listen("season", await clearPlan(), "--climate", where);
    expect(code).toBe(0);
    expect(said).toMatch(words);
    expect(said).not.toContain("--climate nearest");
  });
});
