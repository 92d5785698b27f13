import { describe, expect, test } from "vitest";
import { batteryModel, cableDrop, checkCurrent, circuitRemarks, restV } from "../../../lib/circuit/index.ts";
import type { PlanInput } from "../../../lib/plan/index.ts";
import { batterySeasons, meanOutcome } from "../../../lib/season/battery/battery-season.ts";
import type { SetUp } from "../../../lib/season/battery/set-up.ts";
import { todayOf } from "../../../lib/season/battery/today.ts";
import { wiringOf } from "../../../lib/season/battery/wiring.ts";
import type { SkySource } from "../../../lib/season/light/sky-source.ts";
import { clearSkies } from "../random-plan.ts";
import { quickPlan } from "./battery-plan.ts";

const skies = clearSkies(quickPlan());
const source: SkySource = { kind: "years", sun: skies.sun, skies: [skies.clear], cloudIn: false };
const options = { timeZone: "Etc/GMT-1", airC: 10 };

const STATED = { powerW: 100, vmpV: 18, impA: 5.56, vocV: 22, iscA: 5.95 };
const LARGE = { powerW: 280, vmpV: 31.5, impA: 8.89, vocV: 38.7, iscA: 9.45 };

const wiringFor = (changes: Partial<PlanInput> = {}) => {
  const plan = quickPlan({ panels: [{ name: "propped", module: STATED }], ...changes });
  const { asIs } = todayOf(plan, skies);
  const wiring = wiringOf(source, asIs, options);
  const [panelCable, batteryCable] = wiring.runs;
  return { plan, asIs, wiring, panelCable, batteryCable };
};

describe("wiringOf: what each run is rated and checked by", () => {
  test("with power tracking: the panel's Imp at its Vmp, and its watts at the battery's voltage", () => {
    const { plan, panelCable, batteryCable } = wiringFor();
    const batteryV = batteryModel(plan.battery).meanV;
    expect([panelCable.run, panelCable.ratedA, panelCable.atV]).toEqual(["panel cable", 5.56, 18]);
    expect(batteryCable.run).toBe("battery cable");
    expect(batteryCable.ratedA).toBeCloseTo((18 * 5.56) / batteryV, 9);
    expect(batteryCable.atV).toBe(batteryV);
    const { panelCable: run, strongLightFactor, continuousFactor, hottestC } = plan.circuit;
    expect(panelCable.check).toEqual(checkCurrent(run, 5.95 * strongLightFactor, continuousFactor, hottestC));
    // What the controller may give at most, not what the panels could: 15 A.
    expect(batteryCable.check).toEqual(
      checkCurrent(plan.circuit.batteryCable, 15, continuousFactor, hottestC),
    );
  });

  test("without it: the same current in both runs, at the battery's own voltage", () => {
    const { plan, panelCable, batteryCable } = wiringFor({ circuit: { controller: { kind: "pwm" } } });
    expect(panelCable.ratedA).toBe(5.56);
    expect(panelCable.atV).toBe(restV(plan.battery, 0.5));
    expect(batteryCable.ratedA).toBe(5.56);
  });

  test("of several kinds of panel: the strongest current and the lowest voltage; all together into the battery", () => {
    const panels = [
      { name: "small", howMany: 2, module: STATED },
      { name: "large", module: LARGE },
    ];
    const { plan, panelCable, batteryCable } = wiringFor({
      panels,
      circuit: { controller: { kind: "mppt", maxCurrentA: 100 } },
    });
    expect([panelCable.ratedA, panelCable.atV]).toEqual([8.89, 18]);
    expect(panelCable.check.worstCaseA).toBeCloseTo(9.45 * 1.25, 9);
    const batteryV = batteryModel(plan.battery).meanV;
    expect(batteryCable.ratedA).toBeCloseTo((2 * 18 * 5.56 + 31.5 * 8.89) / batteryV, 9);
    const limited = wiringFor({ panels, circuit: { controller: { kind: "mppt", maxCurrentA: 20 } } });
    expect(limited.batteryCable.ratedA).toBe(20);
    // Three panels with a controller of 20 A each.
    const each = wiringFor({
      panels,
      circuit: { controller: { kind: "mppt", maxCurrentA: 20 }, wiring: "own-controllers" },
    });
    expect(each.batteryCable.check.worstCaseA).toBe(60);
    expect(each.batteryCable.ratedA).toBeCloseTo((2 * 18 * 5.56 + 31.5 * 8.89) / batteryV, 9);
  });
});

describe("wiringOf: sizes to choose from", () => {
  const offeredBy = (setUp: SetUp, circuit: SetUp["circuit"]): number =>
    meanOutcome(batterySeasons(source, [{ ...setUp, circuit }], options)[0], "offeredWh");

  test("today's and the next three, each with what it drops, loses and returns", () => {
    const { plan, asIs, wiring, panelCable, batteryCable } = wiringFor({
      circuit: { panelCable: { size: 1.5, lengthM: 10 }, batteryCable: { size: 2.5, lengthM: 3 } },
    });
    expect(wiring.days).toBe(4);
    const { circuit } = plan;
    for (const [{ choices, ratedA, atV }, key, sizes] of [
      [panelCable, "panelCable", [1.5, 2.5, 4, 6]],
      [batteryCable, "batteryCable", [2.5, 4, 6, 10]],
    ] as const) {
      expect(choices.map(({ size }) => size)).toEqual(sizes.map((size) => `${size} mm²`));
      expect(choices.map(({ today }) => today)).toEqual([true, false, false, false]);
      const withSize = (change: object) =>
        offeredBy(asIs, { ...circuit, [key]: { ...circuit[key], ...change } });
      const today = withSize({});
      // A tenth of a millimetre of the thickest cable is as good as none.
      const ideal = withSize({ size: 300, lengthM: 1e-4, contactMilliohm: 0 });
      choices.forEach((choice, at) => {
        expect(choice).toMatchObject(cableDrop({ ...circuit[key], size: sizes[at] }, ratedA, atV));
        const offered = withSize({ size: sizes[at] });
        expect(choice.returnsWhASeason).toBeCloseTo(offered - today, 6);
        expect(choice.lostWhASeason).toBeCloseTo(ideal - offered, 3);
        expect(choice.lostWhADay).toBeCloseTo(choice.lostWhASeason / 4, 9);
      });
      expect(choices[0].lostWhASeason).toBeGreaterThan(1);
    }
  });

  test("says of the circuit what is to be said of it", () => {
    const { plan, asIs, wiring } = wiringFor({ circuit: { controller: { kind: "mppt", maxInputV: 20 } } });
    const [{ unit }] = asIs.panels;
    expect(wiring.remarks).toEqual(
      circuitRemarks(
        plan.circuit,
        [{ name: "propped", howMany: 1, nameplate: unit.model.nameplate }],
        plan.battery,
      ),
    );
    expect(wiring.remarks[0].words).toContain('"propped" can reach');
  });
});
