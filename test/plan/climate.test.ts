import { describe, expect, test } from "vitest";
import { checkPlan } from "../../lib/plan/read-plan.ts";
import { problemLine } from "../../lib/units/problem.ts";

const read = (sky: unknown) =>
  checkPlan({
    site: { latitudeDeg: 54, longitudeDeg: 8 },
    season: { from: "2027-04-01", to: "2027-10-31" },
    sky,
    panels: [{ name: "panel", module: { powerW: 100 } }],
  });

const problems = (sky: unknown): string => {
  const reading = read(sky);
  return reading.ok ? "" : reading.problems.map(problemLine).join("\n");
};

const twelve = [0.6, 1.2, 2.5, 3.9, 4.9, 5.3, 5.0, 4.3, 3.0, 1.7, 0.8, 0.5];

describe("a plan's climate", () => {
  test("is that of the nearest places unless it says otherwise", () => {
    const reading = read({ source: "climate" });
    expect(reading.ok && reading.plan.sky).toEqual({
      source: "climate",
      from: { kind: "nearest" },
      sunshine: "fitted",
      seasons: 200,
      seed: 1,
      toPlane: "perez",
    });
  });

  test.each([
    [{ kind: "place", name: "Denver" }],
    [{ kind: "analogy", like: "cool wet coast" }],
    [{ kind: "table", file: "mine.csv" }],
    [{ kind: "months", globalKWhM2: twelve, airLowC: twelve, airHighC: twelve, windMs: twelve }],
    [{ kind: "months", sunshineHours: twelve }],
  ])("may be %o", (from) => {
    expect(problems({ source: "climate", from })).toBe("");
  });

  test("eleven months are named as such", () => {
    expect(problems({ source: "climate", from: { kind: "months", globalKWhM2: twelve.slice(1) } })).toContain(
      "sky.from.globalKWhM2 [1.2,2.5,3.9,4.9,5.3,5,4.3,3,1.7,0.8,0.5]: must have exactly 12 entries",
    );
  });

  test("the light comes in one form only, the air as low and high", () => {
    expect(problems({ source: "climate", from: { kind: "months" } })).toContain("exactly one form");
    expect(
      problems({ source: "climate", from: { kind: "months", globalKWhM2: twelve, clearness: twelve } }),
    ).toContain("exactly one form: globalKWhM2, globalMJM2, clearness, sunshineHours");
    expect(
      problems({ source: "climate", from: { kind: "months", globalKWhM2: twelve, airLowC: twelve } }),
    ).toContain("must come with airLowC");
  });

  test("day-to-day memory comes with its years, and both in their ranges", () => {
    const months = { kind: "months", globalKWhM2: twelve };
    const told = (more: object): string => problems({ source: "climate", from: { ...months, ...more } });
    expect(told({ dayMemory: 0.4, dayMemoryYears: 3 })).toBe("");
    expect(told({ dayMemory: 0.4 })).toContain("sky.from.dayMemoryYears missing: must come with dayMemory");
    expect(told({ dayMemoryYears: 3 })).toContain("must come with dayMemory");
    const both = told({ dayMemory: 25, dayMemoryYears: 0 });
    expect(both).toContain("sky.from.dayMemory 25: must be -0.2 to 0.8 (correlation of a day's clearness");
    expect(both).toContain("sky.from.dayMemoryYears 0: must be 0.2 to 150 years of days");
  });

  test("unknown kinds and analogies are listed", () => {
    expect(problems({ source: "climate", from: { kind: "near" } })).toContain('"nearest"');
    expect(problems({ source: "climate", from: { kind: "analogy", like: "wet" } })).toContain(
      '"tropical wet and dry"',
    );
    expect(problems({ source: "climate", seasons: 3 })).toContain("must be 10 to 2000 seasons");
  });
});

describe("a climate that cannot be is told", () => {
  const climate = (more: object) =>
    checkPlan({
      site: { latitudeDeg: 52, longitudeDeg: 5 },
      season: { from: "2027-06-01", to: "2027-06-30" },
      panels: [{ name: "panel", module: { powerW: 60 } }],
      sky: { source: "climate", from: { kind: "months", clearness: new Array(12).fill(0.4), ...more } },
    });

  test("a month whose low stands above its high passed in silence", () => {
    const airHighC = [5, 6, 9, 13, 17, 20, 22, 22, 18, 14, 9, 6];
    const reading = climate({
      airLowC: airHighC.map((high, month) => (month === 3 ? high + 1 : high - 7)),
      airHighC,
    });
    expect(reading.ok ? [] : reading.problems.map(problemLine)).toEqual([
      expect.stringMatching(/airLowC\[3\] 14: must not be above that month's high, 13 degC/),
    ]);
  });

  test("a name that is known elsewhere is not offered to itself", () => {
    const reading = checkPlan({
      site: { latitudeDeg: 52, longitudeDeg: 5, powerW: 3 },
      season: {},
      panels: [],
    });
    const lines = reading.ok ? [] : reading.problems.map(problemLine);
    for (const line of lines) expect(line).not.toMatch(/\b(\w+)\b.*did you mean "\1"/);
  });
});
