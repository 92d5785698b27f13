import { describe, expect, test } from "vitest";
import { gaugeOf, gaugeText } from "../../lib/plan/wire-size.ts";
import { linesOf, planWith } from "./plan-with.ts";

// 1/0 is one "ought"; 2/0 = 00, and so on to 4/0: each counts one less than the last (ASTM B258's numbering, from memory).
describe("gaugeOf", () => {
  test.each([
    ["12 AWG", 12],
    ["1 AWG", 1],
    [" 24awg ", 24],
    ["10 AWG", 10],
    ["20 AWG", 20],
    ["1/0 AWG", 0],
    ["2/0 AWG", -1],
    ["4/0 AWG", -3],
    ["0 AWG", 0],
    ["00 AWG", -1],
    ["000 AWG", -2],
    ["0000 AWG", -3],
  ])("%j is %d", (text, gauge) => {
    expect(gaugeOf(text)).toBe(gauge);
  });

  test.each(["25 AWG", "5/0 AWG", "00000 AWG", "12", "AWG", "12 mm2", "x 12 AWG", "12 AWG x", "-3 AWG"])(
    "%j is no gauge",
    (text) => {
      expect(gaugeOf(text)).toBeNull();
    },
  );
});

test("gaugeText spells the oughts as people do, and reads back", () => {
  expect([12, 1, 0, -1, -3].map(gaugeText)).toEqual(["12 AWG", "1 AWG", "1/0 AWG", "2/0 AWG", "4/0 AWG"]);
  for (let gauge = -3; gauge <= 24; gauge += 1) expect(gaugeOf(gaugeText(gauge))).toBe(gauge);
});

describe("a cable in a plan", () => {
  test("may be stated in mm2 or as a gauge, in metres or feet", () => {
    const sizeAndLength = (panelCable: object) => {
      const { size, lengthM } = planWith({ circuit: { panelCable } }).circuit.panelCable;
      return [size, lengthM];
    };
    expect(sizeAndLength({ size: 2.5, lengthM: 5 })).toEqual([2.5, 5]);
    expect(sizeAndLength({ size: "00 AWG", lengthM: "7.5 m" })).toEqual(["2/0 AWG", 7.5]);
    // The international foot is 0.3048 m exactly.
    expect(sizeAndLength({ size: "12 awg", lengthM: "10 ft" })).toEqual(["12 AWG", 3.048]);
  });

  test("is refused where the size or length is none", () => {
    expect(linesOf({ circuit: { panelCable: { size: "30 AWG" } } })).toEqual([
      'circuit.panelCable.size "30 AWG": must be a gauge from 24 AWG to 4/0 AWG; mm2 as a number, or a gauge as text, "12 AWG"',
    ]);
    expect(linesOf({ circuit: { panelCable: { size: 400 } } })).toEqual([
      'circuit.panelCable.size 400: must be 0.2 to 300 mm2; mm2 as a number, or a gauge as text, "12 AWG"',
    ]);
    expect(linesOf({ circuit: { panelCable: { lengthM: "5 yards" } } })).toEqual([
      'circuit.panelCable.lengthM "5 yards": must be a number, 0.05 to 200 m one way; a bare number is metres, one way; feet are text with a unit, "16 ft"',
    ]);
    expect(linesOf({ circuit: { panelCable: { lengthM: 201 } } })).toEqual([
      'circuit.panelCable.lengthM 201: must be 0.05 to 200 m one way; a bare number is metres, one way; feet are text with a unit, "16 ft"',
    ]);
  });
});

describe("a controller's efficiency curve", () => {
  const complaints = (...loads: readonly number[]) =>
    linesOf({
      circuit: {
        controller: { kind: "mppt", efficiency: loads.map((loadPct) => ({ loadPct, efficiencyPct: 95 })) },
      },
    });

  test("has loads that rise from point to point", () => {
    expect(complaints(0)).toEqual([]);
    expect(complaints(0, 20, 100)).toEqual([]);
    for (const loads of [
      [20, 10],
      [10, 10],
      [0, 50, 20],
      [50, 20, 100],
    ]) {
      expect(complaints(...loads)).toEqual([
        expect.stringMatching(/^circuit\.controller\.efficiency .*must have rising loads$/),
      ]);
    }
  });

  test("has at least one point and at most twenty", () => {
    expect(complaints()).toEqual(["circuit.controller.efficiency []: must have at least 1 entries"]);
    expect(complaints(...Array.from({ length: 21 }, (_, index) => index))).toEqual([
      expect.stringMatching(/must have at most 20 entries$/),
    ]);
  });
});
