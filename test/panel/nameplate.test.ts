import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { completeNameplate, diodePanel, nameplateProblems } from "../../lib/panel/index.ts";
import { PlanError } from "../../lib/plan/problem.ts";
import { anyNameplate } from "./any-curve.ts";

const sound = { powerW: 60, vmpV: 17.1, impA: 3.5, vocV: 21.1, iscA: 3.8 };
const pathsOf = (plate: Parameters<typeof nameplateProblems>[0]) =>
  nameplateProblems(plate, "panels[0].module").map(({ path }) => path);

describe("nameplateProblems", () => {
  test("has none with a sound nameplate, short or whole", () => {
    expect(nameplateProblems(sound)).toEqual([]);
    expect(nameplateProblems({ powerW: 100 })).toEqual([]);
    expect(nameplateProblems({ powerW: 100, vocV: 22 })).toEqual([]);
  });

  test("explains a power that is not Vmp x Imp", () => {
    const [problem] = nameplateProblems({ ...sound, powerW: 80 });
    expect(problem).toEqual({
      path: "module.powerW",
      value: 80,
      allowed: "must be Vmp x Imp = 59.85 W within 3 %",
      hint: "one of the three is misread, or belongs to another panel",
    });
  });

  test("lets a small panel's rounding pass", () => {
    expect(nameplateProblems({ powerW: 10, vmpV: 17.5, impA: 0.57 })).toEqual([]);
    expect(nameplateProblems({ powerW: 5, vmpV: 17.5, impA: 0.29 })).toEqual([]);
  });

  test("explains Voc below Vmp and Isc below Imp, both at once", () => {
    const problems = nameplateProblems({ ...sound, vocV: 16, iscA: 3.4 }, "panels[0].module");
    expect(problems.map(({ path }) => path)).toEqual(["panels[0].module.vocV", "panels[0].module.iscA"]);
    expect(problems[0]?.allowed).toBe("Voc must be above Vmp (17.10 V)");
    expect(problems[1]?.hint).toContain("exchanged");
  });

  test("points at the value that was given, not at one that was assumed", () => {
    expect(pathsOf({ powerW: 60, impA: 3.5, iscA: 3.4 })).toEqual(["panels[0].module.iscA"]);
    expect(pathsOf({ powerW: 60, vmpV: 17, vocV: 17 })).toEqual(["panels[0].module.vocV"]);
  });

  test("explains a gain where a loss is meant, and a coefficient in another unit", () => {
    const [gain] = nameplateProblems({ ...sound, vocPctPerK: 0.3 });
    expect(gain?.hint).toContain("a loss is negative");
    const [unit] = nameplateProblems({ ...sound, powerPctPerK: -80 });
    expect(unit?.hint).toContain("per cent");
    expect(pathsOf({ ...sound, iscPctPerK: 5 })).toEqual(["panels[0].module.iscPctPerK"]);
    expect(pathsOf({ ...sound, powerPctPerK: Number.NaN })).toEqual(["panels[0].module.powerPctPerK"]);
  });

  test("explains values that are no values", () => {
    expect(pathsOf({ ...sound, vmpV: 0, iscA: Number.NaN })).toEqual([
      "panels[0].module.vmpV",
      "panels[0].module.iscA",
    ]);
  });

  test("explains a fill factor that no panel has", () => {
    const [problem] = nameplateProblems({ ...sound, iscA: 8 });
    expect(problem?.path).toBe("module");
    expect(problem?.value).toBe(0.355);
  });
});

describe("completeNameplate", () => {
  test("fills what is left out from what is there, and says so", () => {
    expect(completeNameplate({ powerW: 90 })).toEqual({
      powerW: 90,
      vmpV: 18,
      impA: 5,
      vocV: 18 * 1.22,
      iscA: 5 * 1.065,
      powerPctPerK: -0.4,
      vocPctPerK: -0.3,
      iscPctPerK: 0.05,
      assumed: ["vmpV", "impA", "vocV", "iscA", "vocPctPerK", "iscPctPerK", "powerPctPerK"],
    });
    expect(completeNameplate({ powerW: 90, cellsInSeries: 72 }).vmpV).toBe(36);
    expect(completeNameplate({ powerW: 90, impA: 6 }).vmpV).toBe(15);
    expect(completeNameplate({ powerW: 90, vocV: 24.4 }).vmpV).toBeCloseTo(20, 12);
    expect(completeNameplate({ powerW: 90, vmpV: 20 }).impA).toBe(4.5);
  });

  test("leaves the coefficient of power to the curve where that of voltage is known", () => {
    const plate = completeNameplate({ ...sound, vocPctPerK: -0.38 });
    expect(plate.powerPctPerK).toBeUndefined();
    expect(plate.assumed).toEqual(["iscPctPerK"]);
  });
});

describe("diodePanel", () => {
  test("says every reason at once, in our own error", () => {
    expect(() => diodePanel({ ...sound, vocV: 16, iscA: 3.4 }, {}, "panels[2].module")).toThrow(PlanError);
    try {
      diodePanel({ ...sound, vocV: 16, iscA: 3.4 }, {}, "panels[2].module");
    } catch (error) {
      expect((error as PlanError).problems).toHaveLength(2);
      expect((error as PlanError).message).toContain("panels[2].module.vocV 16: Voc must be above Vmp");
    }
  });

  test("explains a nameplate that no curve fits", () => {
    expect(() => diodePanel({ ...sound, iscA: 3.53, vocV: 22 })).toThrow(
      "must lie on one current-voltage curve",
    );
  });

  test("makes a panel of any ordinary nameplate, or refuses it with a reason", () => {
    let made = 0;
    fc.assert(
      fc.property(anyNameplate, (plate) => {
        try {
          expect(diodePanel(plate).ratedW / plate.powerW).toBeCloseTo(1, 9);
          made += 1;
        } catch (error) {
          expect(error).toBeInstanceOf(PlanError);
        }
      }),
      { numRuns: 40 },
    );
    expect(made).toBeGreaterThan(36);
  });
});
