import { describe, expect, test } from "vitest";
import type { RatedPanels } from "../../lib/circuit/build.ts";
import { circuitRemarks, planRemarks } from "../../lib/circuit/checks.ts";
import { checkCurrent } from "../../lib/circuit/fuse.ts";
import { batterySchema } from "../../lib/plan/battery.ts";
import { circuitSchema } from "../../lib/plan/circuit.ts";
import { completeNameplate } from "../../lib/plan/nameplate.ts";
import { readPlan } from "../../lib/plan/read-plan.ts";

const panel = (over: Partial<RatedPanels> = {}, plate: object = {}): RatedPanels => ({
  name: "prop",
  howMany: 1,
  nameplate: completeNameplate({ powerW: 99.9, vmpV: 18, impA: 5.55, vocV: 22, iscA: 6, ...plate }),
  ...over,
});

const held = batterySchema.parse({ chemistry: "LiFePO4", capacityAh: 200 });

const about = (circuit: object, panels: readonly RatedPanels[], battery = held): readonly string[] =>
  circuitRemarks(circuitSchema.parse(circuit), panels, battery).map((one) => `${one.kind}: ${one.about}`);

describe("the dangers of a build", () => {
  test("a 10 A controller with a panel of Isc 9.8 A: strong light makes 12.3 A of it", () => {
    const strong = panel({}, { powerW: 162, impA: 9, iscA: 9.8 });
    const remarks = circuitRemarks(
      circuitSchema.parse({ controller: { kind: "pwm", maxCurrentA: 10 } }),
      [strong],
      held,
    );
    expect(remarks.map(({ words }) => words)).toEqual([
      "The panels can give 12.3 A in strong light (9.8 A by their labels), the controller stands 10 A. Take a larger one.",
    ]);
    expect(about({ controller: { kind: "pwm", maxCurrentA: 12.25 } }, [strong])).toEqual([]);
  });

  test("a cable that is too thin, or has no fuse that protects it, is a danger like any other", () => {
    // 6 x 1.25 x 1.25 = 9.4 A behind 0.75 mm2, which carries 6 A at 30 degC.
    expect(about({ panelCable: { size: 0.75 } }, [panel()])).toEqual(["danger: panel cable"]);
    // 30 A of a controller x 1.25 = 37.5 A ask for 40 A of fuse; 6 mm2 carries 35.5 A at 40 degC.
    expect(about({ controller: { kind: "mppt", maxCurrentA: 30 } }, [panel()])).toEqual([
      "danger: battery cable",
    ]);
  });

  test("panels in series add up their volts, on the coldest morning too", () => {
    const pair = panel({ howMany: 2, inSeries: 2 });
    // -10 degC: 2 x 22 x (1 + 0.003 x 35) = 48.6 V
    const stands = (maxInputV: number) => ({ controller: { kind: "mppt", maxCurrentA: 20, maxInputV } });
    expect(about(stands(48), [pair])).toEqual(["danger: input voltage"]);
    expect(about(stands(49), [pair])).toEqual([]);
    // One string of two beside a single panel.
    expect(about(stands(75), [pair, panel({ name: "single" })])).toEqual([
      "loss: clipped",
      "loss: unlike volts",
    ]);
    // One string is one branch: two of them need no fuses, and their current is that of two panels.
    expect(
      about({ controller: { kind: "pwm", maxCurrentA: 15 } }, [panel({ howMany: 4, inSeries: 2 })]),
    ).not.toContain("danger: branch fuses");
  });

  test("on 24 V one panel of 18 V is too low, two in series are not", () => {
    const high = batterySchema.parse({ chemistry: "LiFePO4", capacityAh: 100, systemV: 24 });
    expect(about({}, [panel()], high)).toEqual(["loss: too low"]);
    expect(about({}, [panel({ howMany: 2, inSeries: 2 })], high)).toEqual([]);
  });

  test("three branches need fuses, which must suit panel, label and cable", () => {
    const trio = (over: Partial<RatedPanels> = {}) => [panel({ howMany: 3, ...over })];
    const circuit = { controller: { kind: "mppt", maxCurrentA: 25 }, batteryCable: { size: 10 } };
    expect(about(circuit, trio())).toEqual(["danger: branch fuses"]);
    // 6 x 1.25 x 1.25 = 9.4 A: the next standard fuse is 10 A.
    expect(about({ ...circuit, branchFuseA: 10 }, trio())).toEqual([]);
    expect(about({ ...circuit, branchFuseA: 7.5 }, trio())).toEqual(["loss: branch fuses"]);
    expect(about({ ...circuit, branchFuseA: 20 }, trio({ maxSeriesFuseA: 15 }))).toEqual([
      "danger: branch fuses",
    ]);
    expect(about({ ...circuit, branchFuseA: 30 }, trio())).toEqual(["danger: panel cable"]);
    // Two branches, where the label allows less than the other one can feed: 7.5 A.
    expect(about({ ...circuit }, [panel({ howMany: 2, maxSeriesFuseA: 5 })])).toEqual([
      "danger: branch fuses",
    ]);
  });

  test("panels with a controller to themselves are checked on it, and do not burden the common one", () => {
    const own = circuitSchema.parse({ controller: { kind: "mppt", maxInputV: 100 } }).controller;
    const tall = panel({ name: "tall", own }, { powerW: 300, vmpV: 37, impA: 8.108, vocV: 45, iscA: 8.6 });
    expect(about({ controller: { kind: "pwm", maxCurrentA: 10 } }, [panel(), tall])).toEqual([
      "loss: clipped",
    ]);
    const shared = { ...tall, own: undefined };
    expect(about({ controller: { kind: "pwm", maxCurrentA: 10 } }, [panel(), shared])).toEqual([
      "danger: input current",
      "loss: wasted volts",
      "loss: unlike volts",
    ]);
  });

  test("a plan's own build is told before any light is worked out: 190 V on a controller for 75 V", () => {
    const plan = readPlan({
      site: { latitudeDeg: 57.75, longitudeDeg: 12 },
      season: { from: "2027-04-01", to: "2027-04-30" },
      panels: [{ name: "tall", module: { powerW: 300, vmpV: 155, vocV: 190 } }],
    });
    expect(planRemarks(plan)[0]).toMatchObject({ kind: "danger", about: "input voltage" });
  });

  test("answers thousands of times a second", () => {
    const circuit = circuitSchema.parse({ branchFuseA: 10 });
    const panels = [panel({ howMany: 2 }), panel({ name: "other" })];
    const begun = performance.now();
    for (let time = 0; time < 2000; time += 1) circuitRemarks(circuit, panels, held);
    expect(performance.now() - begun).toBeLessThan(1000);
  });
});

describe("small conductors: NEC 240.4(D), from memory: 14 AWG 15 A, 12 AWG 20 A, 10 AWG 30 A", () => {
  const fuseOf = (size: string | number, worstA: number, insulationC = 90) =>
    checkCurrent(circuitSchema.parse({ panelCable: { size, insulationC } }).panelCable, worstA, 1.25, 30)
      .fuseA;

  test.each([
    ["14 AWG", 15],
    ["12 AWG", 20],
    ["10 AWG", 30],
  ] as const)("%s has no fuse above %i A, whatever its insulation", (size, capA) => {
    expect(fuseOf(size, capA / 1.25)).toBe(capA);
    expect(fuseOf(size, capA / 1.25 + 0.1)).toBeNull();
  });

  test("metric wires that are no thicker are held to the same; thicker ones to their table", () => {
    expect(fuseOf(2.5, 16)).toBe(20);
    expect(fuseOf(2.5, 16.1)).toBeNull();
    expect(fuseOf(1.5, 12)).toBe(15);
    expect(fuseOf(1.5, 12.1)).toBeNull();
    // 6 mm2 of XLPE carries 54 A.
    expect(fuseOf(6, 40)).toBe(50);
    expect(fuseOf("8 AWG", 40)).toBe(50);
  });
});
