import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { diodePanel } from "../../lib/panel/index.ts";
import { PlanError } from "../../lib/plan/problem.ts";
import { anyNameplate } from "./any-curve.ts";

const sound = { powerW: 60, vmpV: 17.1, impA: 3.5, vocV: 21.1, iscA: 3.8 };

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
    let tried = 0;
    let made = 0;
    fc.assert(
      fc.property(anyNameplate, (plate) => {
        tried += 1;
        try {
          expect(diodePanel(plate).ratedW / plate.powerW).toBeCloseTo(1, 9);
          made += 1;
        } catch (error) {
          expect(error).toBeInstanceOf(PlanError);
        }
      }),
      { numRuns: 40 },
    );
    expect(made).toBeGreaterThan(0.9 * tried);
  });
});
