import { describe, expect, test } from "vitest";
import {
  checkPlan,
  PlanError,
  type PlanInput,
  problemLine,
  readPlan,
  readPlanText,
} from "../../lib/plan/index.ts";

const least: PlanInput = {
  site: { latitudeDeg: 53.5, longitudeDeg: 8.5 },
  season: { from: "2027-04-01", to: "2027-10-01" },
  panels: [{ name: "prop", module: { powerW: 100 } }],
};

const linesOf = (given: unknown): readonly string[] => {
  const reading = checkPlan(given);
  return reading.ok ? [] : reading.problems.map(problemLine);
};

describe("checkPlan", () => {
  test("the least plan is filled from stated defaults", () => {
    const plan = readPlan(least);
    expect(plan.season.stepMinutes).toBe(10);
    expect(plan.site.timeZone).toBe("Etc/GMT-1");
    expect(plan.sky).toEqual({ source: "clear", toPlane: "perez" });
    expect(plan.stand.legStyle).toBe("square");
    expect(plan.panels[0]?.mount).toEqual({ kind: "stand" });
  });

  test("says path, value, allowed range with unit, and a hint", () => {
    expect(linesOf({ ...least, site: { latitudeDeg: 53.5, longitudeDeg: 191.2 } })).toEqual([
      "site.longitudeDeg 191.2: must be -180 to 180 degrees; west is negative",
    ]);
  });

  test("reports every problem at once, in sections that are otherwise right or wrong", () => {
    const lines = linesOf({
      ...least,
      sitee: {},
      site: { latitudeDeg: 95, longitudeDeg: 8.5, lattitude: 3, timeZone: "Mars/Base" },
      season: { from: "2027-10-01", to: "2027-04-01", stepMinutes: 7 },
      stand: { legs: [{ name: "flat", lengthMm: 300 }], legStyle: "strap" },
    });
    expect(lines).toEqual([
      "site.latitudeDeg 95: must be -90 to 90 degrees; south is negative",
      'site.timeZone "Mars/Base": must be an IANA time zone; such as "Europe/Berlin"; left out, whole hours from the longitude',
      'site.lattitude 3: is not a key of a plan here; did you mean "latitudeDeg"?',
      "season.stepMinutes 7: must be one of 1, 2, 3, 5, 6, 10, 15, 20, 30, 60 minutes",
      'season.to "2027-04-01": must not come before season.from; a season over the new year ends in the next year',
      'sitee {}: is not a key of a plan here; did you mean "site"?',
      'stand.legs[0].name "flat": must differ from the other legs\' names; "flat" is the setting with no leg',
      "stand.strapMm missing: is needed for legs held by a strap, 50 to 3000 mm; the distance on the ground from the panel's bottom edge to the leg's foot",
    ]);
  });

  test.each([
    [{ legs: [{ name: "a", lengthMm: "21.5 inn" }] }, "stand.legs[0].lengthMm"],
    [{ legs: [{ name: "a", tiltDeg: 30 }] }, "stand.legs[0].readFrom"],
    [{ pivotMm: 2000 }, "stand.pivotMm"],
    [{ legs: "none" }, "stand.legs"],
  ])("a stand of %j is refused at %s", (stand, path) => {
    const reading = checkPlan({ ...least, stand });
    expect(reading.ok ? [] : reading.problems.map((problem) => problem.path)).toEqual([path]);
  });

  test.each([[3], [null], [[]], ["text"]])("%j is no plan", (given) => {
    expect(linesOf(given)).toEqual([expect.stringContaining("must be an object { }")]);
  });

  test("inches are accepted as tagged text", () => {
    const plan = readPlan({ ...least, stand: { legs: [{ name: "long", lengthMm: "21.5 in" }] } });
    expect(plan.stand.legs).toMatchObject([{ name: "long", lengthMm: 21.5 * 25.4 }]);
  });

  test("a season may wrap the new year but not be longer than a leap year", () => {
    expect(linesOf({ ...least, season: { from: "2027-10-01", to: "2028-03-31" } })).toEqual([]);
    expect(linesOf({ ...least, season: { from: "2027-01-01", to: "2028-01-02" } })).toHaveLength(1);
    expect(linesOf({ ...least, season: { from: "2027-02-29", to: "2027-03-31" } })).toHaveLength(1);
  });
});

describe("readPlan", () => {
  test("throws one error that carries every problem", () => {
    expect(() => readPlan({ ...least, season: {} })).toThrow(PlanError);
    try {
      readPlan({ ...least, season: {} });
    } catch (error) {
      expect(error instanceof PlanError && error.problems.map((problem) => problem.path)).toEqual([
        "season.from",
        "season.to",
      ]);
    }
  });

  test("text that is not JSON says so", () => {
    expect(() => readPlanText("{ nope")).toThrow(
      /^plan "\{ nope": must be JSON: .*; check the commas and quotes near that place$/,
    );
    // Of a long text the beginning is quoted.
    expect(() => readPlanText(`${"x".repeat(40)}beyond`)).toThrow(`plan "${"x".repeat(40)}": must be JSON`);
    expect(readPlanText(JSON.stringify(least))).toEqual(readPlan(least));
  });
});
