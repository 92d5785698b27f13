import { describe, expect, test } from "vitest";
import { type PlanInput, readPlan } from "../../../lib/plan/index.ts";
import { remarksOf } from "../../../lib/season/battery/set-up.ts";
import { type Choices, choicesOf, type Remedy } from "../../../lib/season/battery/set-ups.ts";
import { clearSkies } from "../random-plan.ts";
import { quickPlan } from "./battery-plan.ts";

const choicesFor = (changes: Partial<PlanInput>): Choices => {
  const plan = quickPlan({ battery: { chemistry: "LiFePO4", capacityAh: 100 }, ...changes });
  return choicesOf(plan, clearSkies(plan));
};
const named = ({ remedies }: Choices, name: string): Remedy => {
  const found = remedies.find(({ setUp }) => setUp.name === name);
  if (found === undefined) throw new Error(`no remedy ${name}`);
  return found;
};
const dangers = ({ setUp }: Remedy) => remarksOf(setUp).filter(({ kind }) => kind === "danger");

const TEN_AMPS: PlanInput["circuit"] = { controller: { kind: "pwm", maxCurrentA: 10 } };
const TALL = { powerW: 300, vmpV: 37, impA: 8.108, vocV: 45, iscA: 8.6 };

describe("every remedy passes the checks of a build", () => {
  test("a second panel on a 10 A PWM controller comes with a larger one, priced in", () => {
    const remedy = named(choicesFor({ circuit: TEN_AMPS }), "second panel on the roof");
    // 2 x 5.92 A x 1.25 = 14.8 A.
    expect(remedy.needs).toEqual([{ what: "a 15 A controller", price: 45 }]);
    expect(remedy.says).toBe("100 W more, flat on the roof, with a 15 A controller");
    expect(remedy.price).toBeCloseTo(100 * 0.9 + 40 + 45, 9);
    expect(dangers(remedy)).toEqual([]);
    expect(remedy.setUp.circuit.controller.maxCurrentA).toBe(15);
  });

  test("a 37 V panel beside 18 V ones comes with a controller of its own", () => {
    const remedy = named(
      choicesFor({ circuit: TEN_AMPS, worth: { secondPanel: TALL } }),
      "second panel on the roof",
    );
    expect(remedy.needs.map(({ what }) => what)).toEqual([
      "an MPPT controller of its own (30 A, 75 V)",
      "battery cable of 10 mm²",
    ]);
    expect(remedy.unsafe).toEqual([]);
    const [first, second] = remedy.setUp.panels;
    expect(first.unit.own).toBeUndefined();
    expect(second.unit.own).toMatchObject({ kind: "mppt", maxCurrentA: 30 });
    expect(remarksOf(remedy.setUp).map(({ about }) => about)).not.toContain("unlike volts");
  });

  test("a third branch brings a fuse for each", () => {
    const panels = [{ name: "pair", howMany: 2, module: { powerW: 50 } }];
    const remedy = named(choicesFor({ panels }), "second panel on the roof");
    expect(remedy.needs).toEqual([{ what: "a 5 A fuse in each of the 3 branches", price: 24 }]);
    expect(remedy.setUp.circuit.branchFuseA).toBe(5);
  });

  test("what no purchase makes safe is told, and is against it", () => {
    const fuse = { name: "pair", howMany: 2, module: { powerW: 100, maxSeriesFuseA: 8 } };
    const remedy = named(choicesFor({ panels: [fuse] }), "second panel on the roof");
    expect(remedy.unsafe.map(({ about }) => about)).toEqual(["branch fuses", "branch fuses"]);
  });

  test("on 24 V the second panel is as many in series as it takes", () => {
    const choices = choicesFor({
      battery: { chemistry: "LiFePO4", capacityAh: 50, systemV: 24 },
      panels: [{ name: "string", howMany: 2, inSeries: 2, module: { powerW: 60 } }],
      worth: { secondPanel: { powerW: 60 } },
    });
    const remedy = named(choices, "second panel on the roof");
    expect(remedy.says).toMatch(/^2 x 60 W in series more, flat on the roof/);
    expect(remedy.price).toBeGreaterThanOrEqual(120 * 0.9 + 40);
    expect(remedy.setUp.panels[1].unit).toMatchObject({ howMany: 2, inSeries: 2 });
  });

  test("what needs are named once, and no controller is bought to be replaced by the next", () => {
    const small: PlanInput["battery"] = { chemistry: "AGM", capacityAh: 60 };
    for (const changes of [
      { circuit: TEN_AMPS, battery: small },
      { circuit: TEN_AMPS, battery: small, worth: { secondPanel: TALL } },
      { circuit: TEN_AMPS, battery: small, panels: [{ name: "pair", howMany: 2, module: { powerW: 100 } }] },
    ]) {
      for (const { needs, unsafe } of choicesFor(changes).remedies) {
        const whats = needs.map(({ what }) => what);
        expect(new Set(whats).size).toBe(whats.length);
        expect(
          whats.filter((what) => /^a[n ].*controller/.test(what) && !what.includes("its own")).length,
        ).toBeLessThan(2);
        expect(unsafe).toEqual([]);
      }
    }
  });

  test("no remedy of any of these builds is left with a danger untold", () => {
    for (const changes of [
      { circuit: TEN_AMPS },
      { circuit: { ...TEN_AMPS, panelCable: { size: 0.75 } } },
      { worth: { secondPanel: TALL } },
      { circuit: { controller: { kind: "mppt" as const, maxInputV: 20 } } },
      { panels: [{ name: "trio", howMany: 3, module: { powerW: 100 } }] },
    ]) {
      for (const remedy of choicesFor(changes).remedies) {
        expect(dangers(remedy).map(({ about }) => about)).toEqual(
          remedy.unsafe.filter(({ kind }) => kind === "danger").map(({ about }) => about),
        );
      }
    }
  });
});

test("howMany must make whole strings", () => {
  expect(() =>
    readPlan({ ...quickPlan(), panels: [{ name: "odd", howMany: 3, inSeries: 2, module: { powerW: 50 } }] }),
  ).toThrow("panels[0].inSeries");
});
