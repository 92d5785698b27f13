import { describe, expect, test } from "vitest";
import type { RatedPanels } from "../../lib/circuit/build.ts";
import { circuitRemarks, coldOpenV } from "../../lib/circuit/checks.ts";
import { type Battery, batterySchema } from "../../lib/plan/battery.ts";
import { type Circuit, circuitSchema } from "../../lib/plan/circuit.ts";
import { completeNameplate, type Nameplate } from "../../lib/plan/nameplate.ts";

const PLATE = { powerW: 99.9, vmpV: 18, impA: 5.55, vocV: 22, iscA: 6, vocPctPerK: -0.3 };

const panel = (over: Partial<Nameplate> = {}, name = "prop", howMany = 1): RatedPanels => ({
  name,
  howMany,
  nameplate: completeNameplate({ ...PLATE, ...over }),
});

const mppt = (over: object = {}, circuit: object = {}): Circuit =>
  circuitSchema.parse({ ...circuit, controller: { kind: "mppt", startAboveBatteryV: 2, ...over } });

const pwm = (over: object = {}, circuit: object = {}): Circuit =>
  circuitSchema.parse({ ...circuit, controller: { kind: "pwm", ...over } });

/** A battery cable for 25 A with the allowance for hours on end, and its fuse. */
const THICK = { batteryCable: { size: 10 } };

const battery: Battery = batterySchema.parse({ chemistry: "AGM", capacityAh: 100 });

const said = (circuit: Circuit, panels: readonly RatedPanels[], held = battery) =>
  circuitRemarks(circuit, panels, held).map(({ kind, words }) => `${kind}: ${words}`);

test("open-circuit voltage on a cold morning, by hand", () => {
  // 22 (1 + 0.003 x 40)
  expect(coldOpenV({ vocV: 22, vocPctPerK: -0.3 }, -15)).toBeCloseTo(24.64, 12);
  expect(coldOpenV({ vocV: 22, vocPctPerK: -0.3 }, 25)).toBe(22);
});

describe("circuitRemarks", () => {
  test("has nothing to say of parts that fit", () => {
    expect(said(mppt(), [panel()])).toEqual([]);
    expect(said(mppt({ maxCurrentA: 20 }), [panel({}, "left"), panel({}, "right")])).toEqual([]);
    expect(said(pwm(), [panel()])).toEqual([]);
  });

  test("warns of a voltage that the controller does not stand on the coldest morning", () => {
    // -10 degC: 22 (1 + 0.003 x 35) = 24.31 V
    expect(said(mppt({ maxInputV: 24.32 }), [panel()])).toEqual([]);
    expect(said(mppt({ maxInputV: 24.3 }), [panel()])).toEqual([
      'danger: "prop" can reach 24.3 V at -10 °C; the controller stands 24.3 V. Do not connect it.',
    ]);
  });

  test("has nothing to say of a voltage that is just stood", () => {
    // At 25 degC a panel's Voc is its label's.
    expect(said(mppt({ maxInputV: 22 }, { coldestC: 25 }), [panel()])).toEqual([]);
    expect(said(mppt({ maxInputV: 21.9 }, { coldestC: 25 }), [panel()])).toHaveLength(1);
  });

  test("looks at the strongest panel where each has a controller of its own", () => {
    const strong = panel({ powerW: 149.85, impA: 8.325, iscA: 9 }, "strong");
    const own = (maxCurrentA: number) =>
      said(pwm({ maxCurrentA }, { wiring: "own-controllers" }), [panel(), strong]);
    // 9 A by the label, 11.25 A in strong light.
    expect(own(11.25)).toEqual([]);
    expect(own(11.2)).toEqual([
      "danger: The panels can give 11.3 A in strong light (9.0 A by their labels), the controller stands 11.2 A. Take a larger one.",
    ]);
  });

  test("knows the current of panels side by side, and of each with a controller of its own", () => {
    const pair = [panel({}, "pair", 2)];
    // Half charged an AGM battery rests at 12.3 V: 99.9 / 12.3 = 8.12 A each.
    expect(said(mppt({ maxCurrentA: 10 }), pair)).toEqual([
      "loss: The panels could charge with 16.2 A, the controller gives at most 10 A: the rest of strong light is curtailed.",
    ]);
    expect(said(mppt({ maxCurrentA: 10 }, { wiring: "own-controllers" }), pair)).toEqual([]);
    expect(said(mppt({ maxCurrentA: 8 }, { wiring: "own-controllers" }), [panel()])).toEqual([
      "loss: The panels could charge with 8.1 A, the controller gives at most 8 A: the rest of strong light is curtailed.",
    ]);
    // A PWM controller passes the panels' own short-circuit current, which strong light takes to 1.25 times the label's.
    expect(said(pwm({ maxCurrentA: 15 }), pair)).toEqual([]);
    expect(said(pwm({ maxCurrentA: 14 }), [panel({}, "a"), panel({}, "b")])).toEqual([
      "danger: The panels can give 15.0 A in strong light (12.0 A by their labels), the controller stands 14 A. Take a larger one.",
    ]);
  });

  test("asks for string fuses from three panels side by side on", () => {
    const three = [panel({}, "pair", 2), panel({}, "single")];
    const fuses =
      "danger: Three or more branches side by side: each needs a fuse of its own, no larger than its label's greatest series fuse.";
    expect(said(mppt({ maxCurrentA: 25 }, THICK), three)).toEqual([fuses]);
    expect(said(mppt({ maxCurrentA: 8.3 }, { ...THICK, wiring: "own-controllers" }), three)).toEqual([]);
  });

  test("puts a danger before a loss that was found first", () => {
    // Three panels of 8.12 A on a controller of 20 A.
    const lines = said(mppt({ maxCurrentA: 20 }), [panel({}, "trio", 3)]);
    expect(lines.map((line) => line.split(":")[0])).toEqual(["danger", "loss"]);
    expect(lines[1]).toContain("24.4 A");
  });

  test("keeps dangers, and losses, in the order in which they are found", () => {
    // Voltage, current, string fuses, charging, then heat.
    const low = panel({ powerW: 80, vmpV: 16, impA: 5, vocV: 19.5, iscA: 5.4 }, "trio", 3);
    const small = batterySchema.parse({ chemistry: "AGM", capacityAh: 40 });
    const lines = said(mppt({ maxCurrentA: 15, maxInputV: 20 }), [low], small);
    expect(lines).toEqual([
      expect.stringMatching(/^danger: "trio" can reach/),
      expect.stringMatching(/^danger: Three or more branches/),
      expect.stringMatching(/^danger: .*the battery takes at most 10 A/),
      expect.stringMatching(/^loss: The panels could charge with 19.5 A/),
      expect.stringMatching(/^loss: In hot sun "trio"/),
    ]);
  });

  test("warns of a controller that charges faster than the battery takes", () => {
    const small = batterySchema.parse({ chemistry: "AGM", capacityAh: 40 });
    // 25 % of 40 Ah is 10 A.
    expect(said(mppt({ maxCurrentA: 10 }), [panel()], small)).toEqual([]);
    expect(said(mppt({ maxCurrentA: 11 }), [panel()], small)).toEqual([
      "danger: The controller can charge with 11 A, the battery takes at most 10 A: set the controller's limit.",
    ]);
  });

  test("warns of controllers that together charge faster than the battery takes", () => {
    const small = batterySchema.parse({ chemistry: "AGM", capacityAh: 60 });
    const own = { wiring: "own-controllers" };
    const pair = [panel({}, "pair", 2)];
    // 25 % of 60 Ah is 15 A: one controller of 10 A is within it, two are not.
    expect(said(mppt({ maxCurrentA: 10 }, own), [panel()], small)).toEqual([]);
    expect(said(mppt({ maxCurrentA: 10 }, own), pair, small)).toEqual([
      "danger: The 2 controllers together can charge with 20 A, the battery takes at most 15 A: set their limits.",
    ]);
  });

  test("says when a panel is too low for the battery, or far above it on PWM", () => {
    const high = batterySchema.parse({ chemistry: "AGM", capacityAh: 100, systemV: 24 });
    // Full it rests at 25.8 V, above the panel's 22 V.
    expect(said(mppt(), [panel()], high)).toEqual([
      'loss: "prop" (Voc 22.0 V) is too low to charge a battery of 25.8 V through this controller.',
    ]);
    // 12.9 V and a start of 9.1 V above it are just the panel's 22 V.
    expect(said(mppt({ startAboveBatteryV: 9.1 }), [panel()])).toEqual([]);
    expect(said(mppt({ startAboveBatteryV: 9.2 }), [panel()])).toHaveLength(1);
    expect(said(mppt({ startAboveBatteryV: 0, headroomV: 9.2 }), [panel()])).toHaveLength(1);
    // A full AGM battery at 12.9 V and 0.3 V of a PWM controller: 13.2 V.
    const tiny = (vocV: number) => panel({ powerW: 55, vmpV: 11, impA: 5, vocV, iscA: 5.4 });
    expect(said(pwm(), [tiny(13.1)])).toEqual([
      'loss: "prop" (Voc 13.1 V) is too low to charge a battery of 12.9 V through this controller.',
    ]);
    expect(said(pwm(), [tiny(13.3)])[0]).toContain("In hot sun");
    const sixty = panel({ powerW: 150, vmpV: 30, impA: 5, vocV: 37, iscA: 5.4 });
    expect(said(pwm(), [sixty])).toEqual([
      'loss: "prop" works at 30.0 V; a PWM controller pulls it down to the battery\'s 12.9 V and wastes the rest. This panel needs MPPT.',
    ]);
    expect(said(mppt(), [sixty])).toEqual([]);
  });

  test("says when hot sun brings a panel down to the battery", () => {
    // 15 - 18.5 x 0.003 x 40 = 12.78 V beside 12.9 V and 0.3 V of controller.
    const low = panel({ powerW: 75, vmpV: 15, impA: 5, vocV: 18.5, iscA: 5.4 });
    expect(said(pwm(), [low])).toEqual([
      'loss: In hot sun "prop" works at about 12.8 V, hardly above a full battery: it loses most on the hottest days.',
    ]);
    // With 1 V of headroom an MPPT controller is left wanting at 13.9 V: 16 - 19.5 x 0.12 = 13.66 V.
    const better = panel({ powerW: 80, vmpV: 16, impA: 5, vocV: 19.5, iscA: 5.4 });
    expect(said(mppt(), [better])).toHaveLength(1);
    expect(said(pwm(), [better])).toEqual([]);
  });

  test("says when panels side by side differ by more than a tenth in voltage, dangers first", () => {
    const sixty = panel({ powerW: 150, vmpV: 19.9, impA: 7.54, vocV: 24, iscA: 8 }, "long");
    expect(said(mppt({ maxCurrentA: 25 }, THICK), [panel(), sixty])).toEqual([
      "loss: Panels side by side share one voltage, and these differ (18.0 and 19.9 V): give each its own controller.",
    ]);
    expect(
      said(mppt({ maxCurrentA: 12.5 }, { ...THICK, wiring: "own-controllers" }), [panel(), sixty]),
    ).toEqual([]);
    const kinds = circuitRemarks(mppt({ maxCurrentA: 10, maxInputV: 20 }), [panel(), sixty], battery).map(
      ({ kind }) => kind,
    );
    expect(kinds).toEqual(["danger", "danger", "loss", "loss"]);
  });
});
