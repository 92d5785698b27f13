import { describe, expect, test } from "vitest";
import { batteryModel, operatingCurve, runOhm } from "../../lib/circuit/index.ts";
import { currentAt, curveAt, maxPowerPoint } from "../../lib/panel/index.ts";
import { batterySchema } from "../../lib/plan/battery.ts";
import { type Circuit, circuitSchema } from "../../lib/plan/circuit.ts";
import { branch, small } from "./branch.ts";

const circuitOf = (controller: object): Circuit =>
  circuitSchema.parse({ controller, batteryCable: { lengthM: 5, size: 4 } });

const batteryOf = () => batteryModel(batterySchema.parse({ chemistry: "AGM", capacityAh: 50 }));

const light = { absorbedWm2: 800, cellC: 40 };

/** The tabled current beside the full solution: 1e-4 of Isc, as the table's own test says. */
const TABLE_A = 1e-4 * 6;

describe("operatingCurve", () => {
  test("is the panels' own curve, ending at its open circuit, and power tracking settles on its peak", () => {
    const { ampsAt, openV, mppt } = operatingCurve(
      [branch()],
      circuitOf({ kind: "mppt" }),
      batteryOf(),
      light,
    );
    const full = curveAt(small, 800, 40);
    const best = maxPowerPoint(full);
    for (const volts of [0, 5, 12, 17, 19]) {
      expect(Math.abs(ampsAt(volts) - currentAt(full, volts))).toBeLessThan(TABLE_A);
    }
    expect(Math.abs(ampsAt(openV - 0.01) - currentAt(full, openV - 0.01))).toBeLessThan(TABLE_A);
    expect(ampsAt(openV + 0.01)).toBe(0);
    // The power is level at its peak: what a table leaves in the current is all that shows in the watts.
    expect(Math.abs(mppt.watts - best.watts)).toBeLessThan(TABLE_A * best.volts);
    expect(Math.abs(mppt.volts - best.volts)).toBeLessThan(0.05);
    expect(mppt.watts).toBeCloseTo(mppt.volts * mppt.amps, 12);
  });

  test("two alike panels side by side give twice the current, to the higher of two open circuits", () => {
    const one = operatingCurve([branch()], circuitOf({ kind: "mppt" }), batteryOf(), light);
    const two = operatingCurve([branch(), branch()], circuitOf({ kind: "mppt" }), batteryOf(), light);
    expect(two.ampsAt(14)).toBeCloseTo(2 * one.ampsAt(14), 12);
    expect(two.mppt.watts).toBeCloseTo(2 * one.mppt.watts, 9);
    const weaker = branch({ blockingV: 1 });
    const [ab, ba] = [
      [branch(), weaker],
      [weaker, branch()],
    ].map((branches) => operatingCurve(branches, circuitOf({ kind: "mppt" }), batteryOf(), light));
    expect(ab.openV).toBe(one.openV);
    expect(ba.openV).toBe(one.openV);
  });

  test("held by a PWM controller, it stands where battery, drop, cable and the battery's own rise put it", () => {
    for (const [controller, dropV] of [
      [{ kind: "pwm", dropV: 0.5 }, 0.5],
      // Where the plan's controller tracks power, a PWM controller is one of 0.3 V: the plan's own default.
      [{ kind: "mppt" }, 0.3],
    ] as const) {
      const circuit = circuitOf(controller);
      const { ampsAt, pwm } = operatingCurve([branch()], circuit, batteryOf(), light);
      // AGM of 50 Ah, usable from a half up: at 75 % it rests at 12.6 V, and its rise is 0.7 V at 5 A, 0.14 ohm.
      const heldV = 12.6 + dropV + pwm.amps * (0.14 + runOhm(circuit.batteryCable));
      expect(pwm.volts).toBeCloseTo(heldV, 9);
      expect(ampsAt(pwm.volts)).toBeCloseTo(pwm.amps, 6);
      expect(pwm.amps).toBeGreaterThan(4);
      // At the terminals: the mean of 12.3 V to 12.9 V, and the rise.
      expect(pwm.watts).toBeCloseTo((12.6 + 0.14 * pwm.amps) * pwm.amps, 9);
    }
  });

  test("is nothing in the dark", () => {
    const dark = operatingCurve([branch()], circuitOf({ kind: "mppt" }), batteryOf(), {
      absorbedWm2: 0,
      cellC: 10,
    });
    expect(dark.openV).toBe(0);
    expect(dark.mppt).toEqual({ volts: 0, amps: 0, watts: 0 });
    expect(dark.pwm.amps).toBe(0);
    expect(dark.pwm.watts).toBe(0);
    expect(dark.ampsAt(0)).toBe(0);
  });
});
