import { describe, expect, test } from "vitest";
import { diodePanel } from "../../../lib/panel/index.ts";
import type { PlanInput } from "../../../lib/plan/index.ts";
import { turnedAfterSun } from "../../../lib/season/aiming/aims-of-plan.ts";
import { branchesOf } from "../../../lib/season/battery/set-up.ts";
import { type Choices, choicesOf } from "../../../lib/season/battery/set-ups.ts";
import { panelUnits } from "../../../lib/season/light/panel-unit.ts";
import { clearSkies } from "../random-plan.ts";
import { quickPlan } from "./battery-plan.ts";

const skies = clearSkies(quickPlan());

const choicesFor = (changes: Partial<PlanInput> = {}): Choices => choicesOf(quickPlan(changes), skies);

const remedyOf = ({ remedies }: Choices, name: string) => {
  const found = remedies.find(({ setUp }) => setUp.name === name);
  if (found === undefined) throw new Error(`no remedy ${name}`);
  return found;
};

const names = ({ remedies }: Choices): readonly string[] => remedies.map(({ setUp }) => setUp.name);

const PWM: PlanInput["circuit"] = { controller: { kind: "pwm", maxCurrentA: 20 } };

/** Takes the 20 A that the controller gives. */
const ROOMY: PlanInput["battery"] = { chemistry: "LiFePO4", capacityAh: 40 };

const PRICES = {
  legs: 11,
  panelPerW: 2,
  roofMount: 13,
  secondStand: 17,
  thickerCable: 19,
  betterController: 23,
  biggerBattery: 29,
  fewerLoads: 31,
};

describe("choicesOf", () => {
  test("says of each remedy what it is and what it costs", () => {
    const choices = choicesFor({ circuit: PWM, battery: ROOMY, worth: { prices: PRICES } });
    expect(choices.remedies.map(({ setUp, says, price }) => [setUp.name, says, price])).toEqual([
      ["legs used", "the stand's legs, changed by the calendar", 11],
      ["re-aimed", "legs, and turned after the sun: 3 aims a day, each a walk out", 11],
      ["second panel on the roof", "100 W more, flat on the roof", 2 * 100 + 13],
      ["second panel on legs", "100 W more, on legs of its own", 2 * 100 + 17],
      ["thicker cable", "panel cable 10 mm²", 19],
      ["better controller", "MPPT, 20 A", 23],
      [
        "battery kept warm",
        "insulated, with a 20 W heating mat that runs on spare light while it is too cold to charge",
        45,
      ],
      ["bigger battery", "80 Ah LiFePO4", 29],
      ["fewer loads", "75 % of every load", 31],
    ]);
    expect(choices.asIs.name).toBe("as is");
  });

  test("a cable is offered only where it is thicker than today's", () => {
    const offered = (thickerCable: number | string) =>
      names(choicesFor({ circuit: { panelCable: { size: 4 } }, worth: { thickerCable } })).includes(
        "thicker cable",
      );
    expect([2.5, 4, "12 AWG", "11 AWG", 6, "10 AWG"].map(offered)).toEqual([
      false,
      false,
      false,
      true,
      true,
      true,
    ]);
  });

  test("legs that are all at hand already cost nothing to use", () => {
    const legsPrice = (...owned: readonly boolean[]) => {
      const legs = owned.map((there, index) => ({
        name: `${index}`,
        lengthMm: 300 + 300 * index,
        owned: there,
      }));
      const choices = choicesFor({ stand: { legs }, worth: { prices: PRICES } });
      return ["legs used", "re-aimed"].map((name) => remedyOf(choices, name).price);
    };
    expect(legsPrice(true, true)).toEqual([0, 0]);
    expect(legsPrice(true, false)).toEqual([11, 11]);
  });

  test("each remedy changes one thing and leaves the rest as it is", () => {
    const choices = choicesFor({ circuit: PWM, battery: ROOMY });
    const { asIs } = choices;
    for (const [name, part] of [
      ["legs used", "panels"],
      ["re-aimed", "panels"],
      ["second panel on the roof", "panels"],
      ["second panel on legs", "panels"],
      ["thicker cable", "circuit"],
      ["better controller", "circuit"],
      ["bigger battery", "battery"],
      ["fewer loads", "loads"],
    ] as const) {
      const { setUp } = remedyOf(choices, name);
      for (const other of ["panels", "circuit", "battery", "loads"] as const) {
        if (other === part) expect(setUp[other]).not.toEqual(asIs[other]);
        else expect(setUp[other]).toBe(asIs[other]);
      }
    }
    expect(remedyOf(choices, "bigger battery").setUp.battery).toEqual({ ...asIs.battery, capacityAh: 80 });
    expect(remedyOf(choices, "fewer loads").setUp.loads.appliances[0]).toMatchObject({
      name: "lamp",
      watts: 15,
    });
    expect(remedyOf(choices, "thicker cable").setUp.circuit).toEqual({
      ...asIs.circuit,
      panelCable: { ...asIs.circuit.panelCable, size: 10 },
    });
    expect(remedyOf(choices, "better controller").setUp.circuit.controller).toMatchObject({
      kind: "mppt",
      maxCurrentA: 20,
    });
  });

  test("turned panels stand where the sun's own routine puts them", () => {
    const plan = quickPlan({ worth: { aimsADay: 2 } });
    const { setUp, says } = remedyOf(choicesOf(plan, skies), "re-aimed");
    expect(says).toBe("legs, and turned after the sun: 2 aims a day, each a walk out");
    expect(setUp.panels[0].aims).toEqual(turnedAfterSun(plan, skies, panelUnits(plan.panels), 2));
  });

  test("legs that are in use already are no remedy, and turning them costs nothing", () => {
    const choices = choicesFor({ worth: { now: "legs", prices: PRICES } });
    expect(names(choices)).not.toContain("legs used");
    expect(remedyOf(choices, "re-aimed").price).toBe(0);
  });

  test("without legs there is nothing to use, to turn, or to put a second panel on", () => {
    const choices = choicesFor({ stand: {} });
    expect(names(choices)).toEqual([
      "second panel on the roof",
      "thicker cable",
      "battery kept warm",
      "bigger battery",
      "fewer loads",
    ]);
    expect(choices.withSecondPanel("legs", 50)).toBeNull();
    expect(choices.withSecondPanel("roof", 50)).not.toBeNull();
  });

  test("with all panels fixed there is nothing to turn, though legs can hold a second one", () => {
    const choices = choicesFor({
      panels: [{ name: "roof", module: { powerW: 100 }, mount: { kind: "fixed" } }],
    });
    expect(names(choices)).not.toContain("legs used");
    expect(names(choices)).not.toContain("re-aimed");
    expect(names(choices)).toContain("second panel on legs");
  });

  test("takes what the plan names: cable, controller, battery, load", () => {
    const choices = choicesFor({
      worth: {
        thickerCable: "8 AWG",
        betterController: { kind: "pwm", maxCurrentA: 30 },
        biggerBatteryPct: 150,
        keptLoadPct: 40,
      },
    });
    expect(remedyOf(choices, "thicker cable").says).toBe("panel cable 8 AWG");
    expect(remedyOf(choices, "better controller").says).toBe("PWM, 30 A, with battery cable of 10 mm²");
    expect(remedyOf(choices, "bigger battery").says).toBe("30 Ah LiFePO4");
    expect(remedyOf(choices, "fewer loads").says).toBe("40 % of every load");
  });

  test("leaves out a cable as thick as today's, a controller that is good already, loads that are not there", () => {
    expect(names(choicesFor({ worth: { thickerCable: 4 } }))).not.toContain("thicker cable");
    expect(names(choicesFor({ circuit: { panelCable: { size: 300 } } }))).not.toContain("thicker cable");
    expect(names(choicesFor())).not.toContain("better controller");
    expect(names(choicesFor({ loads: {} }))).not.toContain("fewer loads");
  });
});

describe("a second panel", () => {
  test("is of the first one's kind, as dusty as it, beside what is there", () => {
    const choices = choicesFor({
      panels: [{ name: "propped", module: { powerW: 100 }, dustPct: 10, otherLossPct: 20 }],
    });
    const { setUp } = remedyOf(choices, "second panel on the roof");
    const [first, second] = setUp.panels;
    expect(first).toBe(choices.asIs.panels[0]);
    expect(second.unit).toMatchObject({
      name: "second panel, roof",
      howMany: 1,
      fixedAim: { tiltDeg: 0, bearingDeg: 0 },
    });
    expect(second.unit.model.nameplate.powerW).toBe(100);
    expect(second.unit.model.shareLeft).toBeCloseTo(0.9 * 0.8, 9);
    expect(second.aims).toMatchObject({ aims: [{ tiltDeg: 0, bearingDeg: 0 }], ofRow: null });
  });

  test("on the roof its cells are warmer than on legs, where it goes with the calendar", () => {
    const choices = choicesFor();
    const [, roof] = remedyOf(choices, "second panel on the roof").setUp.panels;
    const [, legs] = remedyOf(choices, "second panel on legs").setUp.panels;
    expect(roof.unit.model.heatLoss.u0).toBeLessThan(legs.unit.model.heatLoss.u0);
    expect(legs.unit).toMatchObject({ name: "second panel, legs", fixedAim: null });
    expect(legs.aims).toBe(remedyOf(choices, "legs used").setUp.panels[0].aims);
  });

  test("is the one that the plan names, and a nameplate that can't be true is refused where it stands", () => {
    const choices = choicesFor({ worth: { secondPanel: { powerW: 41 }, prices: PRICES } });
    const { says, price } = remedyOf(choices, "second panel on the roof");
    expect([says, price]).toEqual(["41 W more, flat on the roof", 2 * 41 + 13]);
    const untrue = { powerW: 100, vmpV: 18, impA: 5.56, vocV: 18.01, iscA: 5.57 };
    expect(() => choicesFor({ worth: { secondPanel: untrue } })).toThrow("worth.secondPanel");
  });

  test("of another rated power keeps its voltages, and its currents go with its size", () => {
    const stated = { powerW: 100, vmpV: 18, impA: 5.56, vocV: 22, iscA: 5.95 };
    const panels = [{ name: "propped", module: stated }];
    const choices = choicesFor({ panels, worth: { prices: PRICES } });
    const remedy = choices.withSecondPanel("legs", 250);
    const unit = remedy?.setUp.panels[1].unit;
    expect(unit?.model.nameplate).toMatchObject({ powerW: 250, vmpV: 18, vocV: 22 });
    expect(unit?.model.nameplate.impA).toBeCloseTo(2.5 * 5.56, 9);
    expect(unit?.model.nameplate.iscA).toBeCloseTo(2.5 * 5.95, 9);
    expect(remedy).toMatchObject({ says: "250 W more, on legs of its own", price: 2 * 250 + 17 });
    // Where currents are not stated they follow the power by themselves.
    const bare = choicesFor().withSecondPanel("roof", 250)?.setUp.panels[1].unit.model.nameplate;
    const whole = diodePanel({ powerW: 250 }).nameplate;
    expect([bare?.vmpV, bare?.impA, bare?.vocV, bare?.iscA]).toEqual([
      whole.vmpV,
      whole.impA,
      whole.vocV,
      whole.iscA,
    ]);
  });
});

describe("branchesOf", () => {
  test("hands each kind of panel to the circuit with its count, losses, cable and diode", () => {
    const { asIs } = choicesFor({
      panels: [
        { name: "two", howMany: 2, module: { powerW: 60 }, dustPct: 10, otherLossPct: 0 },
        { name: "one", module: { powerW: 100 } },
      ],
      circuit: {
        panelCable: { size: 4, lengthM: 10, contactMilliohm: 5, conductorC: 20 },
        blockingDiodeV: 0.4,
      },
    });
    const [two, one] = branchesOf(asIs);
    expect([two.howMany, one.howMany]).toEqual([2, 1]);
    expect(two.shareLeft).toBeCloseTo(0.9, 9);
    expect(two.blockingV).toBe(0.4);
    expect(two.reference).toBe(asIs.panels[0].unit.model.fit.reference);
    // IEC 60228 class 5, 4 mm2: 4.95 ohm/km at 20 degC; 20 m out and back, and 5 milliohm of plugs.
    expect(two.cableOhm).toBeCloseTo(4.95 * 0.02 + 0.005, 6);
    expect(one.cableOhm).toBe(two.cableOhm);
  });
});
