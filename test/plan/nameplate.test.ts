import { describe, expect, test } from "vitest";
import { checkPlan } from "../../lib/plan/index.ts";
import { completeNameplate, nameplateProblems } from "../../lib/plan/nameplate.ts";

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

  test("lets coefficients at the ends of their ranges pass and words what lies outside", () => {
    for (const ends of [
      { powerPctPerK: 0, vocPctPerK: 0, iscPctPerK: 0.3 },
      { powerPctPerK: -1, vocPctPerK: -1, iscPctPerK: -0.1 },
    ]) {
      expect(nameplateProblems({ ...sound, ...ends })).toEqual([]);
    }
    expect(nameplateProblems({ ...sound, vocPctPerK: -80, iscPctPerK: -0.2 })).toEqual([
      {
        path: "module.vocPctPerK",
        value: -80,
        allowed: "must be -1 to 0 % per K",
        hint: "per cent of the value at 25 degC for each kelvin, not volts or milliwatts",
      },
      {
        path: "module.iscPctPerK",
        value: -0.2,
        allowed: "must be -0.1 to 0.3 % per K",
        hint: "the current gains a little as the panel warms: about 0.05",
      },
    ]);
  });

  test("holds values that are equal to be exchanged, and names the one that was given", () => {
    // 60 W at 3.5 A is 17.14 V; 60 W at 17.1 V is 3.509 A.
    expect(nameplateProblems({ powerW: 59.85, vmpV: 17.1, impA: 3.5, vocV: 21.1, iscA: 3.5 })).toEqual([
      {
        path: "module.iscA",
        value: 3.5,
        allowed: "Isc must be above Imp (3.500 A)",
        hint: "the short-circuit current is the greater of the two; are they exchanged?",
      },
    ]);
    expect(nameplateProblems({ powerW: 59.85, vmpV: 17.1, impA: 3.5, vocV: 17.1, iscA: 3.8 })).toEqual([
      {
        path: "module.vocV",
        value: 17.1,
        allowed: "Voc must be above Vmp (17.10 V)",
        hint: "the open-circuit voltage is the greater of the two; are they exchanged?",
      },
    ]);
  });

  test("explains values that are no values", () => {
    expect(pathsOf({ ...sound, vmpV: 0, iscA: Number.NaN })).toEqual([
      "panels[0].module.vmpV",
      "panels[0].module.iscA",
    ]);
    expect(nameplateProblems({ ...sound, vmpV: 0 })[0]?.allowed).toBe("must be a number above 0");
  });

  test("explains a fill factor that no panel has", () => {
    const [problem] = nameplateProblems({ ...sound, iscA: 8 });
    expect(problem?.path).toBe("module");
    expect(problem?.value).toBe(0.355);
    expect(problem?.allowed).toBe("Vmp x Imp over Voc x Isc (the fill factor) must be 0.5 to 0.88");
    expect(problem?.hint).toBe("a voltage or a current is misread");
    // 64 W over 16 V x 8 A is just 0.5.
    const square = { powerW: 64, vmpV: 15, impA: 64 / 15 };
    expect(nameplateProblems({ ...square, vocV: 16, iscA: 8 })).toEqual([]);
    expect(nameplateProblems({ ...square, vocV: 16, iscA: 8.01 })).toHaveLength(1);
    // 59.85 W over 17.5 V x 3.6 A is 0.95.
    expect(nameplateProblems({ ...sound, vocV: 17.5, iscA: 3.6 })[0]?.value).toBe(0.95);
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
    expect(completeNameplate({ ...sound, powerPctPerK: -0.45 }).powerPctPerK).toBe(-0.45);
  });
});

describe("a plan's panels", () => {
  test("are held to their nameplates together with all that is wrong elsewhere", () => {
    const plan = {
      site: { latitudeDeg: 57.1, longitudeDeg: -5.6, timeZone: "Europe/London" },
      season: { from: "2027-04-01", to: "2027-09-30" },
      panels: [
        { name: "sound", module: { powerW: 100 } },
        { name: "misread", module: { powerW: 100, vmpV: 18, vocV: 17 } },
      ],
      stand: { pivotMm: 2400, legs: [{ name: "short", lengthMm: 300 }] },
    };
    const reading = checkPlan(plan);
    const paths = "problems" in reading ? reading.problems.map(({ path }) => path) : [];
    expect(paths).toContain("panels[1].module.vocV");
    expect(paths).toContain("stand.pivotMm");
    expect(paths.filter((path) => path.startsWith("panels[0]"))).toEqual([]);
  });
});
