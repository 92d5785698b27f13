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

  test("tells its version", async () => {
    expect((await listen("--version")).said).toMatch(/^\d+\.\d+\.\d+/);
  });
});
