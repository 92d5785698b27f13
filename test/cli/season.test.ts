import { readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { listen, ownFolder } from "./listen.ts";

const plan = {
  name: "test hut",
  site: { latitudeDeg: 60, longitudeDeg: 10, timeZone: "Europe/Oslo" },
  season: { from: "2027-06-01", to: "2027-06-10" },
  panels: [{ name: "p", module: { powerW: 50 } }],
  stand: { legs: [{ name: "leg", lengthMm: 400 }] },
};

const planIn = async (folder: string, given: unknown = plan): Promise<string> => {
  const file = join(folder, "plan.json");
  await writeFile(file, typeof given === "string" ? given : JSON.stringify(given));
  return file;
};

describe("season", () => {
  test("runs the demo plan when none is named", async () => {
    const { code, said } = await listen("season", "--from", "2027-06-01", "--to", "2027-06-05");
    expect(code).toBe(0);
    expect(said).toContain("the demo plan");
  });

  test("writes the table, its metadata and the chart", async () => {
    const folder = await ownFolder();
    const csv = join(folder, "s.csv");
    const chart = join(folder, "s.svg");
    const { code, remarked } = await listen("season", await planIn(folder), "--csv", csv, "--chart", chart);
    expect(code).toBe(0);
    expect(remarked).toContain(csv);
    const { data, errors } = Papa.parse<Record<string, string>>(await readFile(csv, "utf8"), {
      header: true,
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    expect(data).toHaveLength(20);
    expect(Object.keys(data[0]).slice(0, 7)).toEqual([
      "date",
      "setting",
      "tilt_deg",
      "bearing_deg",
      "sun_hours",
      "clear_Wh",
      "expected_Wh",
    ]);
    expect(data.filter(({ best }) => best === "true")).toHaveLength(10);
    expect(JSON.parse(await readFile(`${csv}-metadata.json`, "utf8"))).toMatchObject({ url: "s.csv" });
    expect(await readFile(chart, "utf8")).toMatch(/^<\?xml[\s\S]*<svg/);
    expect((await readdir(folder)).sort()).toEqual(["plan.json", "s.csv", "s.csv-metadata.json", "s.svg"]);
  });

  test("never overwrites unasked, and then writes none of the files", async () => {
    const folder = await ownFolder();
    const csv = join(folder, "s.csv");
    await writeFile(csv, "precious");
    const call = ["season", await planIn(folder), "--csv", csv, "--chart", join(folder, "s.svg")];
    expect(await listen(...call)).toMatchObject({ code: 1, remarked: expect.stringContaining("--force") });
    expect(await readFile(csv, "utf8")).toBe("precious");
    expect((await readdir(folder)).sort()).toEqual(["plan.json", "s.csv"]);
    expect((await listen(...call, "--force")).code).toBe(0);
    expect(await readFile(csv, "utf8")).toMatch(/^date,/);
  });

  test("answers programs in JSON, without NaN", async () => {
    const folder = await ownFolder();
    const { said } = await listen("season", await planIn(folder), "--json");
    const answer = JSON.parse(said);
    expect(answer.rows).toHaveLength(20);
    expect(said).not.toContain("NaN");
  });

  test.each([
    ["{ broken", "must be JSON"],
    [{ ...plan, panels: [] }, "panels"],
    [
      { ...plan, stand: { legStyle: "plumb", pivotMm: 500, legs: [{ name: "mast", lengthMm: 900 }] } },
      "stand.legs[0]",
    ],
  ])("refuses %j", async (given, said) => {
    const folder = await ownFolder();
    expect(await listen("season", await planIn(folder, given))).toMatchObject({
      code: 1,
      remarked: expect.stringContaining(said),
    });
  });

  test("says why a file can't be read", async () => {
    const folder = await ownFolder();
    expect((await listen("season", join(folder, "none.json"))).remarked).toContain("there is no such file");
    expect((await listen("season", folder)).remarked).toContain("it is a folder");
    await writeFile(join(folder, "photo.json"), Buffer.from([0x89, 0x50, 0, 1]));
    expect((await listen("season", join(folder, "photo.json"))).remarked).toContain("must be text");
    await writeFile(join(folder, "latin.json"), Buffer.from([0x7b, 0xe9, 0x7d]));
    expect((await listen("season", join(folder, "latin.json"))).remarked).toContain("UTF-8");
  });

  test("options that make no season are refused with the plan's words", async () => {
    const { code, remarked } = await listen("season", "--from", "2027-12-01", "--step", "7");
    expect(code).toBe(1);
    expect(remarked).toContain("season.stepMinutes 7");
    expect(remarked).toContain("season.to");
  });
});
