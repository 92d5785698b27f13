import { readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { listen, ownFolder } from "./listen.ts";

const plan = {
  name: "test hut",
  site: { latitudeDeg: 60, longitudeDeg: 10, timeZone: "Europe/Oslo" },
  season: { from: "2027-05-25", to: "2027-06-05", stepMinutes: 30 },
  panels: [{ name: "p", module: { powerW: 50 } }],
  stand: { legs: [{ name: "leg", lengthMm: 600 }] },
  aiming: { bearingStepDeg: 30 },
};

const planIn = async (folder: string, given: unknown = plan): Promise<string> => {
  const file = join(folder, "plan.json");
  await writeFile(file, JSON.stringify(given));
  return file;
};

describe("aims", () => {
  test("says what turning brings and how to turn", async () => {
    const { code, said } = await listen("aims", await planIn(await ownFolder()));
    expect(code).toBe(0);
    expect(said).toMatch(/2 aims \d+ Wh \(\d+ Wh more\)/);
    expect(said).toMatch(/where most light comes from would bring \d+ Wh/);
    expect(said).toMatch(/1\. set the evening before, or before sunrise: leg \(41°\) facing \d+°/);
    expect(said).toMatch(/2\. at \d\d:\d[05]: leg/);
    expect(said).toContain("by compass");
    expect(said).toContain("At solar noon (13:");
    expect(said).toContain("Never look into the sun.");
  });

  test("writes the table with its metadata, and the dial", async () => {
    const folder = await ownFolder();
    const [csv, dial] = [join(folder, "a.csv"), join(folder, "dial.svg")];
    const { code } = await listen("aims", await planIn(folder), "--csv", csv, "--dial", dial, "--aims", "3");
    expect(code).toBe(0);
    const { data, errors } = Papa.parse<Record<string, string>>(await readFile(csv, "utf8"), {
      header: true,
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    expect(new Set(data.map(({ period }) => period))).toEqual(new Set(["season", "2027-05", "2027-06"]));
    const limits = data.filter(({ routine }) => routine === "facing the sun");
    expect(limits).toHaveLength(3);
    for (const row of data) {
      expect(Object.values(row)).not.toContain("NaN");
      const limit = limits.find(({ period }) => period === row.period);
      expect(Number(row.clear_Wh_a_day)).toBeLessThanOrEqual(Number(limit?.clear_Wh_a_day));
    }
    expect(JSON.parse(await readFile(`${csv}-metadata.json`, "utf8"))).toMatchObject({ url: "a.csv" });
    const svg = await readFile(dial, "utf8");
    expect(svg).toContain('width="190mm"');
    expect(svg.match(/data-bearing-deg/g)?.length).toBe(4);
    expect((await readdir(folder)).sort()).toEqual(["a.csv", "a.csv-metadata.json", "dial.svg", "plan.json"]);
  });

  test("answers programs in JSON", async () => {
    const { said } = await listen("aims", await planIn(await ownFolder()), "--json");
    const answer = JSON.parse(said) as { rows: { routine: string; clearDayWh: number }[] };
    expect(answer.rows.map(({ routine }) => routine)).toContain("4 aims");
  });

  test("refuses a number of aims it does not know, and a season without a panel to aim", async () => {
    expect((await listen("aims", "--aims", "5")).code).toBe(2);
    const roof = { ...plan, panels: [{ ...plan.panels[0], mount: { kind: "fixed" } }] };
    const { code, remarked } = await listen("aims", await planIn(await ownFolder(), roof));
    expect(code).toBe(1);
    expect(remarked).toContain("must hold at least one panel on the stand");
  });
});
