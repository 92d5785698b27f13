import { describe, expect, test } from "vitest";
import { listen } from "./listen.ts";

describe("places", () => {
  test("finds a place by name", async () => {
    const { code, said } = await listen("places", "punta arenas");
    expect(code).toBe(0);
    expect(said).toMatch(
      /^wmo-85934 +Punta Arenas Airport, Chile; -53\.00, -70\.85; 43 m; sunshine; \d+ kWh\/m2 a year$/m,
    );
    expect((await listen("places", "Nowhere-on-Sea")).said).toBe('No place is called "Nowhere-on-Sea".\n');
  });

  test("tells a site what it would be told", async () => {
    const { said } = await listen("places", "--near", "53.5,8.6");
    expect(said).toMatch(/^ *\d+ % {2}Bremerhaven, Germany \(\d+ km away/);
    expect(said).toMatch(/January to December, kWh\/m2: 0\.[4-7] /);
    const answer = JSON.parse((await listen("places", "--near", "53.5,8.6", "--json")).said);
    expect(answer.climate.globalKWhM2).toHaveLength(12);
    expect(answer.places[0].globalKWhM2Day).toHaveLength(12);
  });

  test.each([
    [[]],
    [["a", "--near", "1,2"]],
    [["--near", "91,0"]],
    [["--near", "north"]],
    [["a", "--most", "0"]],
  ])("is not called with %o", async (words) => {
    expect((await listen("places", ...words)).code).toBe(2);
  });
});
