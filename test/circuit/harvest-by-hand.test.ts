import { describe, expect, test } from "vitest";
import {
  type Branch,
  type BranchLight,
  batteryModel,
  type Harvest,
  harvester,
  maxPowerV,
  ParallelBranches,
  runOhm,
} from "../../lib/circuit/index.ts";
import { batterySchema } from "../../lib/plan/battery.ts";
import { type Circuit, circuitSchema } from "../../lib/plan/circuit.ts";
import { branch as bareBranch, large } from "./branch.ts";

/** On a cable that drops a little. */
const branch = (over: Partial<Branch> = {}): Branch => bareBranch({ cableOhm: 0.02, ...over });

/** Rests at 12.3 V to 12.9 V over its usable half, on the mean at 12.6 V. */
const batteryOf = () => batteryModel(batterySchema.parse({ chemistry: "AGM", capacityAh: 100 }));
const MEAN_V = 12.6;

/** What comes out comes in: an efficiency of 100 % at any load. */
const LOSSLESS = [{ loadPct: 100, efficiencyPct: 100 }];

const circuitOf = (controller: object, over: object = {}): Circuit =>
  circuitSchema.parse({ controller, batteryCable: { lengthM: 4, size: 2.5 }, ...over });
const lossless = (controller: object, over: object = {}): Circuit =>
  circuitOf({ kind: "mppt", efficiency: LOSSLESS, maxCurrentA: 100, ...controller }, over);

const light = (...rows: readonly (readonly [absorbed: number, cellC: number])[]): BranchLight => ({
  absorbed: Float64Array.from(rows, ([absorbed]) => absorbed),
  cellC: Float64Array.from(rows, ([, cellC]) => cellC),
});

const filled = (circuit: Circuit, branches: readonly Branch[], lights: readonly BranchLight[]): Harvest => {
  const { room, fill } = harvester(circuit, branches, batteryOf());
  const rows = lights[0].absorbed.length;
  const out = room(rows);
  fill(lights, rows, out);
  return out;
};

const watts = (circuit: Circuit, branches: readonly Branch[], lights: readonly BranchLight[]): number[] => {
  const out = filled(circuit, branches, lights);
  return out.kind === "power" ? [...out.watts] : [];
};

const amps = (circuit: Circuit, branches: readonly Branch[], lights: readonly BranchLight[]): number[][] => {
  const out = filled(circuit, branches, lights);
  if (out.kind !== "current") return [];
  const rows = out.amps.length / out.nodes;
  return Array.from({ length: rows }, (_, row) => [
    ...out.amps.subarray(row * out.nodes, (row + 1) * out.nodes),
  ]);
};

/** Watts at the controller's output that leave these at the battery: they and what the cable turns into heat. */
const atController = (circuit: Circuit, batteryW: number): number =>
  batteryW + (batteryW / MEAN_V) ** 2 * runOhm(circuit.batteryCable);

/** Most power of one branch alone, W at the controller's input. */
const alone = (one: Branch, absorbedWm2: number, cellC: number): number => {
  const parallel = new ParallelBranches([one]);
  parallel.light(0, absorbedWm2, cellC);
  const volts = maxPowerV(parallel, 0);
  return volts * parallel.at(volts);
};

describe("a harvest by a controller that tracks power", () => {
  test("is what the cable to the battery leaves of it: I (V + I R) in, I V out", () => {
    const circuit = lossless({ maxPowerW: 50 });
    expect(runOhm(circuit.batteryCable)).toBeGreaterThan(0.06);
    const [bright, dim] = watts(circuit, [branch()], [light([1000, 25], [300, 40])]);
    expect(atController(circuit, bright)).toBeCloseTo(50, 9);
    expect(atController(circuit, dim)).toBeCloseTo(alone(branch(), 300, 40), 9);
  });

  test("through its efficiency, at most the current it can put into the battery's mean voltage", () => {
    const half = circuitOf({
      kind: "mppt",
      efficiency: [{ loadPct: 100, efficiencyPct: 50 }],
      maxCurrentA: 100,
    });
    const [halfW] = watts(half, [branch()], [light([800, 30])]);
    expect(atController(half, halfW)).toBeCloseTo(alone(branch(), 800, 30) / 2, 9);
    // 3 A x 12.6 V
    const three = lossless({ maxCurrentA: 3 });
    expect(atController(three, watts(three, [branch()], [light([1000, 25])])[0])).toBeCloseTo(37.8, 9);
    // Load is reckoned in per cent of 10 A x 12.6 V = 126 W: half of that goes in, 90 % comes out.
    const bent = circuitOf({
      kind: "mppt",
      maxCurrentA: 10,
      maxPowerW: 63,
      efficiency: [
        { loadPct: 0, efficiencyPct: 80 },
        { loadPct: 100, efficiencyPct: 100 },
      ],
    });
    expect(atController(bent, watts(bent, [branch()], [light([1000, 20])])[0])).toBeCloseTo(56.7, 9);
  });

  test("each panel on its own controller gives its own most, and each has its own limit", () => {
    const circuit = lossless({}, { wiring: "own-controllers" });
    const branches = [branch({ howMany: 2 }), branch({ reference: large })];
    const lights = [light([900, 30], [0, 10]), light([250, 20], [700, 50])];
    const [first, second] = watts(circuit, branches, lights);
    expect(atController(circuit, first)).toBeCloseTo(
      2 * alone(branch(), 900, 30) + alone(branches[1], 250, 20),
      9,
    );
    expect(atController(circuit, second)).toBeCloseTo(alone(branches[1], 700, 50), 9);
    const limited = lossless({ maxCurrentA: 4 }, { wiring: "own-controllers" });
    expect(atController(limited, watts(limited, branches, lights)[1])).toBeCloseTo(4 * MEAN_V, 9);
    expect(
      atController(limited, watts(limited, [branch({ howMany: 3 })], [light([1000, 25])])[0]),
    ).toBeCloseTo(3 * 4 * MEAN_V, 9);
    const shared = lossless({});
    expect(watts(shared, branches, lights)[0]).toBeLessThan(first - 1);
  });

  test("is held at the battery's voltage and its head-room, where the peak lies below", () => {
    const parallel = new ParallelBranches([branch()]);
    parallel.light(0, 900, 75);
    const circuit = lossless({ headroomV: 3.4, startAboveBatteryV: 0 });
    const held = 16 * parallel.at(16);
    expect(held).toBeLessThan(alone(branch(), 900, 75) - 1);
    expect(atController(circuit, watts(circuit, [branch()], [light([900, 75])])[0])).toBeCloseTo(held, 2);
  });

  test("starts where the open circuit stands just high enough above the battery", () => {
    const parallel = new ParallelBranches([branch()]);
    parallel.light(0, 900, 40);
    const above = parallel.openV(0) - MEAN_V;
    const at = (startAboveBatteryV: number) =>
      watts(lossless({ startAboveBatteryV }), [branch()], [light([900, 40])])[0];
    expect(at(above - 1e-6)).toBeGreaterThan(50);
    expect(at(above + 1e-6)).toBe(0);
  });
});

describe("a harvest by a controller that holds the panels at the battery's voltage", () => {
  const pwm = (controller: object = {}, over: object = {}): Circuit =>
    circuitOf({ kind: "pwm", dropV: 0.4, maxCurrentA: 100, ...controller }, over);

  test("is where battery, drop, cable and the battery's own rise let the current settle, at each of eleven voltages", () => {
    const circuit = pwm();
    const branches = [branch({ howMany: 2 }), branch({ cableOhm: 0.3, blockingV: 0.4 })];
    const [row] = amps(circuit, branches, [light([800, 40]), light([300, 30])]);
    const parallel = new ParallelBranches(branches);
    parallel.light(0, 800, 40);
    parallel.light(1, 300, 30);
    // The rise is 0.7 V at 10 A: 0.07 ohm.
    const ohm = runOhm(circuit.batteryCable) + 0.07;
    expect(row).toHaveLength(11);
    row.forEach((one, node) => {
      // 12.3 V to 12.9 V in ten steps.
      expect(parallel.at(12.3 + 0.06 * node + 0.4 + ohm * one)).toBeCloseTo(one, 7);
      expect(one).toBeGreaterThan(9);
    });
  });

  test("comes to the same for two panels in one branch as in two, row after row", () => {
    const rows = [
      [900, 35],
      [40, 10],
      [0, 5],
      [600, 50],
    ] as const;
    const together = amps(pwm(), [branch({ howMany: 2 })], [light(...rows)]);
    const apart = amps(pwm(), [branch(), branch()], [light(...rows), light(...rows)]);
    expect(together).toHaveLength(4);
    const halfCharged = together.map((row) => row[5]);
    // Some 10.6 A of the nameplates' 11.9 A in 90 % of the light, in step with it while the panels are far from open.
    expect(halfCharged[0]).toBeGreaterThan(10);
    expect((halfCharged[3] ?? 0) / (halfCharged[0] ?? 1)).toBeCloseTo(600 / 900, 1);
    expect((halfCharged[1] ?? 0) / (halfCharged[0] ?? 1)).toBeCloseTo(40 / 900, 2);
    together.forEach((row, at) => {
      row.forEach((one, node) => {
        // Lambert's table is read at other places: 5e-6 of it, times some 1.5 A, twice.
        expect(Math.abs(one - apart[at][node])).toBeLessThan(1.5e-5);
      });
    });
    expect(together[2]).toEqual(Array.from({ length: 11 }, () => 0));
  });

  test("is at most what the controllers pass", () => {
    const lights = [light([1000, 25]), light([1000, 25])];
    const branches = [branch({ howMany: 2 }), branch()];
    expect(amps(pwm({ maxCurrentA: 4 }), branches, lights)[0]).toEqual(Array.from({ length: 11 }, () => 4));
    const each = pwm({ maxCurrentA: 4 }, { wiring: "own-controllers" });
    expect(amps(each, branches, lights)[0]).toEqual(Array.from({ length: 11 }, () => 12));
  });
});

describe("harvester", () => {
  test("counts its controllers and what they take", () => {
    const branches = [branch({ howMany: 2 }), branch(), branch({ howMany: 3 })];
    for (const kind of ["mppt", "pwm"] as const) {
      const one = harvester(circuitOf({ kind, ownW: 0.25 }), branches, batteryOf());
      expect([one.controllers, one.ownW]).toEqual([1, 0.25]);
      const each = harvester(
        circuitOf({ kind, ownW: 0.25 }, { wiring: "own-controllers" }),
        branches,
        batteryOf(),
      );
      expect([each.controllers, each.ownW]).toEqual([6, 1.5]);
    }
  });

  test("has room for each kind of harvest, and refuses the other's", () => {
    const mppt = harvester(circuitOf({ kind: "mppt" }), [branch()], batteryOf());
    const pwm = harvester(circuitOf({ kind: "pwm" }), [branch()], batteryOf());
    expect(mppt.room(3)).toEqual({ kind: "power", watts: new Float64Array(3) });
    expect(pwm.room(3)).toEqual({ kind: "current", nodes: 11, amps: new Float64Array(33) });
    const lights = [light([500, 20])];
    expect(() => mppt.fill(lights, 1, pwm.room(1))).toThrow(
      new TypeError("fill: expected room for watts, received room for amperes"),
    );
    expect(() => pwm.fill(lights, 1, mppt.room(1))).toThrow(
      new TypeError("fill: expected room for amperes, received room for watts"),
    );
  });

  test("refuses light for another number of branches, and no branch at all", () => {
    for (const kind of ["mppt", "pwm"] as const) {
      const { room, fill } = harvester(circuitOf({ kind }), [branch()], batteryOf());
      expect(() => fill([light([1, 1]), light([1, 1])], 1, room(1))).toThrow(
        new RangeError("fill: expected the light on 1 branches, received 2"),
      );
      expect(() => harvester(circuitOf({ kind }), [], batteryOf())).toThrow(
        new RangeError("harvester: expected at least one branch, received none"),
      );
    }
  });
});
