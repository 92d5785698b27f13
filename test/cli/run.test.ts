import { describe, expect, test } from "vitest";
import { VERBS } from "../../lib/cli/verbs.ts";
import { listen } from "./listen.ts";

describe("runCli", () => {
  test("without a word it teaches", async () => {
    const { code, said } = await listen();
    expect(code).toBe(0);
    for (const { name, says } of VERBS)
      expect(said).toMatch(new RegExp(`^  ${name} +${says.slice(0, 20)}`, "m"));
  });

  test.each(VERBS.map(({ name }) => name))("help %s names every option of the verb", async (name) => {
    const { code, said } = await listen("help", name);
    expect(code).toBe(0);
    const verb = VERBS.find((candidate) => candidate.name === name);
    for (const option of Object.keys(verb?.options ?? {})) expect(said).toContain(`--${option}`);
    expect((await listen(name, "--help")).said).toBe(said);
  });

  test("a mistyped verb or option is named, with the nearest known one, and exits 2", async () => {
    expect(await listen("sesaon")).toMatchObject({ code: 2, remarked: expect.stringContaining('"season"') });
    expect(await listen("season", "--stpe", "5")).toMatchObject({
      code: 2,
      remarked: expect.stringContaining("--step"),
    });
    expect(await listen("season", "one.json", "two.json")).toMatchObject({
      code: 2,
      remarked: expect.stringContaining("two.json"),
    });
    expect((await listen("season", "--csv")).code).toBe(2);
  });

  test("a value that begins with a minus sign needs no sign of equality", async () => {
    const { code, said } = await listen("places", "--near", "-43.2,147.3");
    expect(code).toBe(0);
    expect(said).toContain("Australia");
    expect(await listen("places", "--near", "-91,147.3")).toMatchObject({
      code: 2,
      remarked: expect.stringContaining("--near -91,147.3: must be a latitude"),
    });
  });

  test.each([
    [["legs", "--most", "2.5"], "--most 2.5: must be a whole number, 0 to 4 legs"],
    [["legs", "--set", "1.5"], "--set 1.5: must be a whole number, 1 to 4 legs"],
    [["swaps", "--set", "2.5"], "--set 2.5: must be a whole number, 1 to 4 legs"],
    [["aims", "--aims", "1.5"], "--aims 1.5: must be a whole number, 1 to 4 aims a day"],
    [["sheet", "--aims", "1.5"], "--aims 1.5: must be a whole number, 1 to 4 aims a day"],
    [["places", "ulm", "--most", "2.5"], "--most 2.5: must be a whole number, 1 to 100 places"],
    [["batch", "--workers", "1.5"], "--workers 1.5: must be a whole number, 1 to 256 workers"],
    [["aims", "--aims", "5"], "--aims 5: must be 1 to 4 aims a day"],
  ])("%s counts whole things", async (words, said) => {
    expect(await listen(...words)).toMatchObject({ code: 2, remarked: expect.stringContaining(said) });
  });

  test("a file that can't be read or written is named without a value", async () => {
    expect((await listen("season", "/no/such/plan.json")).remarked).toBe(
      "One problem:\n  /no/such/plan.json: can't be read: there is no such file or folder\n",
    );
    expect((await listen("season", "--csv", "/no/such/season.csv")).remarked).toContain(
      "  /no/such/season.csv: can't be written: its folder does not exist\n",
    );
  });

  test("tells its version", async () => {
    expect((await listen("--version")).said).toMatch(/^\d+\.\d+\.\d+/);
  });
});
