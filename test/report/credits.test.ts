import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { creditOf, type DataSidecar, shortCredit } from "../../lib/report/words/credits.ts";
import { filledTemplate } from "../../notebooks/kit/build/template.ts";
import { listen } from "../cli/listen.ts";

const DATA = new URL("../../data/", import.meta.url);

const tables = ["climates", "weather"].flatMap((folder) =>
  readdirSync(new URL(`${folder}/`, DATA))
    .filter((name) => /\.(csv|gz|bin)$/.test(name))
    .map((name) => [folder, name] as const),
);

const sidecarOf = (folder: string, name: string): DataSidecar =>
  JSON.parse(
    readFileSync(new URL(`${folder}/${name.replace(/\.(csv|gz|bin)$/, "")}.json`, DATA), "utf8"),
  ) as DataSidecar;

describe("data that travels names its makers and licences", () => {
  test("there is data to name", () => expect(tables.length).toBeGreaterThanOrEqual(5));

  test.each(tables)(
    "%s/%s: in its sidecar, on every page, in the command line's credits",
    async (folder, name) => {
      expect(existsSync(new URL(`${folder}/${name.replace(/\.(csv|gz|bin)$/, "")}.json`, DATA))).toBe(true);
      const sidecar = sidecarOf(folder, name);
      const licences = [sidecar.licence, ...(sidecar.sources ?? []).map(({ licence }) => licence)].filter(
        (licence) => licence !== undefined,
      );
      expect(licences.length).toBeGreaterThan(0);
      const page = filledTemplate("<!-- credits -->", { filename: "season.html" });
      const { code, said } = await listen("credits");
      expect(code).toBe(0);
      for (const licence of licences) {
        expect(creditOf(sidecar)).toContain(licence.replace(/[.]$/, ""));
        expect(said).toContain(licence.replace(/[.]$/, ""));
      }
      expect(said).toContain(sidecar.file);
      expect(page).toContain(`<li>${sidecar.file}`);
    },
  );

  test("on paper every maker stands once, with the licence", () => {
    const line = shortCredit(tables.map(([folder, name]) => sidecarOf(folder, name)));
    expect(line).toMatch(/Deutscher Wetterdienst/);
    expect(line).toMatch(/CC BY-SA 4\.0/);
    expect(line.match(/Wikipedia contributors/g)).toHaveLength(1);
  });
});
