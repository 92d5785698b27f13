import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { listen, ownFolder } from "./listen.ts";

const plan = {
  name: "a week by the lake",
  site: { latitudeDeg: 52, longitudeDeg: 6, timeZone: "Europe/Amsterdam" },
  season: { from: "2027-06-01", to: "2027-06-07", stepMinutes: 60 },
  panels: [{ name: "prop", module: { powerW: 100 } }],
  stand: { legs: [{ name: "long", lengthMm: 500 }] },
};

describe("sheet", () => {
  test("writes the page, says what it is, and replaces nothing unasked", async () => {
    const folder = await ownFolder();
    const [file, page] = [join(folder, "plan.json"), join(folder, "sheet.html")];
    await writeFile(file, JSON.stringify(plan));
    const first = await listen("sheet", file, "--html", page, "--paper", "letter");
    expect(first).toMatchObject({ code: 0, remarked: `wrote ${page}\n` });
    expect(first.said).toMatch(/^a week by the lake\n\nField sheet for Letter paper/);
    const html = await readFile(page, "utf8");
    expect(html).toContain("@page { size: Letter portrait");
    expect(await listen("sheet", file, "--html", page)).toMatchObject({
      code: 1,
      remarked: `One problem:\n  ${page}: can't be written: it is there already; --force replaces it\n`,
    });
    expect(await readFile(page, "utf8")).toBe(html);
    expect((await listen("sheet", file, "--html", page, "--force")).code).toBe(0);
    expect(await readFile(page, "utf8")).toContain("@page { size: A4 portrait");
  });

  test("tells programs what it says, without a page", async () => {
    const folder = await ownFolder();
    const file = join(folder, "plan.json");
    await writeFile(file, JSON.stringify(plan));
    const { code, said, remarked } = await listen("sheet", file, "--json", "--aims", "1");
    expect({ code, remarked }).toEqual({ code: 0, remarked: "" });
    const sheet = JSON.parse(said);
    expect(sheet.cutting.legs.map(({ name }: { name: string }) => name)).toEqual(["long"]);
    expect(sheet).toMatchObject({ turning: null, lastDate: "2027-06-07", facingDeg: 180 });
    expect(sheet.cautions[0]).toMatch(/^Wind: unstaked, the stand may move above .* bring it in above that/);
    expect(sheet.wind).toEqual([expect.stringMatching(/may move above \d m\/s \(Beaufort \d, /)]);
    expect(sheet.batteryDayWh).toBeLessThan(sheet.panelsDayWh);
  });
});
