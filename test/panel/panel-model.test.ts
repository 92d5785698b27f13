import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { diodePanel, HEAT_LOSS } from "../../lib/panel/index.ts";
import { PlanError } from "../../lib/units/problem.ts";
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
    const misread = { ...sound, iscA: 3.53, vocV: 22 };
    try {
      diodePanel(misread);
      expect.unreachable("no curve fits");
    } catch (error) {
      expect((error as PlanError).problems).toEqual([
        {
          path: "module",
          value: { vmpV: 17.1, impA: 3.5, vocV: 22, iscA: 3.53 },
          allowed: "must lie on one current-voltage curve that has its most power at Vmp",
          hint: "a voltage or a current is misread",
        },
      ]);
    }
    expect(() => diodePanel(misread, {}, "panels[1].module")).toThrow("panels[1].module");
    expect(() => diodePanel({ ...sound, vocV: 16 })).toThrow("module.vocV 16");
  });

  test("keeps what it was made of: nameplate, mount, losses", () => {
    const panel = diodePanel(sound, {
      mount: "flat-on-roof",
      losses: { dust: 0.1, other: 0 },
    });
    expect(panel.kind).toBe("diode");
    expect(panel.ratedW).toBeCloseTo(59.85, 12);
    expect(panel.nameplate).toMatchObject(sound);
    expect(panel.heatLoss).toBe(HEAT_LOSS["flat-on-roof"]);
    expect(panel.shareLeft).toBe(0.9);
    expect(diodePanel(sound).shareLeft).toBe(1);
    expect(diodePanel(sound).heatLoss).toBe(HEAT_LOSS["open-rack"]);
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
