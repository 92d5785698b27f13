import type { Circuit, MpptController, PwmController } from "../plan/circuit.ts";
import type { BatteryModel } from "./battery.ts";
import { type Branch, type BranchLight, ParallelBranches } from "./branches.ts";
import { efficiencyCurve } from "./efficiency.ts";
import { currentIntoHeldV } from "./held-voltage.ts";
import { maxPowerV } from "./max-power.ts";
import { runOhm } from "./wire.ts";

/**
 * What a circuit could put into a battery, one row a step.
 *
 * `power`: W at the battery's terminals. `current`: A at each of the battery's voltage nodes, `nodes` to a row, since a
 * controller without power tracking gives what the panel has at the battery's voltage.
 */
export type Harvest =
  | { readonly kind: "power"; readonly watts: Float64Array }
  | {
      readonly kind: "current";
      readonly nodes: number;
      readonly amps: Float64Array;
      /** W at the battery's terminals from controllers beside it that track their panels' power. */
      readonly besideW?: Float64Array;
    };

/** A circuit ready for the loop over a season. */
export interface Harvester {
  readonly controllers: number;
  /** What the controllers take day and night, W. */
  readonly ownW: number;
  /** Room for a harvest of that many rows. */
  readonly room: (rows: number) => Harvest;
  /**
   * Fills a harvest from the light on each branch, in the order of the branches.
   *
   * @throws RangeError when the count of lights differs from that of branches
   */
  readonly fill: (lights: readonly BranchLight[], rows: number, out: Harvest) => void;
}

/** Sets the light of one row on every branch. */
const lightAll = (parallel: ParallelBranches, lights: readonly BranchLight[], row: number): void => {
  for (let branch = 0; branch < parallel.count; branch += 1) {
    parallel.light(branch, lights[branch].absorbed[row], lights[branch].cellC[row]);
  }
};

/** Watts left at the battery's terminals of watts at the controller's: V I, where (V + I R) I are the controller's. */
const throughBatteryCable = (watts: number, volts: number, ohm: number): number =>
  (2 * watts * volts) / (volts + Math.sqrt(volts * volts + 4 * ohm * watts));

const mpptHarvester = (
  circuit: Circuit,
  controller: MpptController,
  branches: readonly Branch[],
  battery: BatteryModel,
): Harvester => {
  const { meanV } = battery;
  const leastV = meanV + controller.headroomV;
  const startV = meanV + controller.startAboveBatteryV;
  const limitW = controller.maxCurrentA * meanV;
  const mostInW = controller.maxPowerW ?? Number.POSITIVE_INFINITY;
  const { outW } = efficiencyCurve(controller.efficiency, limitW);
  const cableOhm = runOhm(circuit.batteryCable);
  // A controller for each panel, or one for all: groups of branches, and how many alike controllers see each.
  const inputs =
    circuit.wiring === "own-controllers"
      ? branches.map((branch, at) => ({
          first: at,
          parallel: new ParallelBranches([{ ...branch, howMany: 1 }]),
          alike: branch.howMany,
        }))
      : [{ first: 0, parallel: new ParallelBranches(branches), alike: 1 }];
  const controllers = inputs.reduce((sum, { alike }) => sum + alike, 0);
  return {
    controllers,
    ownW: controllers * controller.ownW,
    room: (rows) => ({ kind: "power", watts: new Float64Array(rows) }),
    fill: (lights, rows, out) => {
      checkLights(lights, branches);
      if (out.kind !== "power")
        throw new TypeError("fill: expected room for watts, received room for amperes");
      const lightsOf = inputs.map(({ first, parallel }) => lights.slice(first, first + parallel.count));
      for (let row = 0; row < rows; row += 1) {
        let watts = 0;
        for (let input = 0; input < inputs.length; input += 1) {
          const { parallel, alike } = inputs[input];
          lightAll(parallel, lightsOf[input], row);
          const volts = maxPowerV(parallel, leastV, startV);
          const inW = Number.isNaN(volts) ? 0 : volts * parallel.at(volts);
          watts += alike * Math.min(limitW, outW(Math.min(inW, mostInW)));
        }
        out.watts[row] = throughBatteryCable(watts, meanV, cableOhm);
      }
    },
  };
};

const pwmHarvester = (
  circuit: Circuit,
  controller: PwmController,
  branches: readonly Branch[],
  battery: BatteryModel,
): Harvester => {
  const nodes = battery.restVAt.length;
  const volts = battery.restVAt.map((restV) => restV + controller.dropV);
  const commonOhm = runOhm(circuit.batteryCable) + battery.chargeOhm;
  const controllers =
    circuit.wiring === "own-controllers" ? branches.reduce((sum, { howMany }) => sum + howMany, 0) : 1;
  const limitA = controllers * controller.maxCurrentA;
  // With one branch the common resistance is as good as in series with each panel.
  const alone = branches.length === 1;
  const parallel = new ParallelBranches(branches, alone ? commonOhm : 0);
  const outside = alone ? 0 : commonOhm;
  return {
    controllers,
    ownW: controllers * controller.ownW,
    room: (rows) => ({ kind: "current", nodes, amps: new Float64Array(rows * nodes) }),
    fill: (lights, rows, out) => {
      checkLights(lights, branches);
      if (out.kind !== "current")
        throw new TypeError("fill: expected room for amperes, received room for watts");
      for (let row = 0; row < rows; row += 1) {
        lightAll(parallel, lights, row);
        for (let node = 0; node < nodes; node += 1) {
          out.amps[row * nodes + node] = Math.min(limitA, currentIntoHeldV(parallel, volts[node], outside));
        }
      }
    },
  };
};

const checkLights = (lights: readonly BranchLight[], branches: readonly Branch[]): void => {
  if (lights.length !== branches.length) {
    throw new RangeError(
      `fill: expected the light on ${branches.length} branches, received ${lights.length}`,
    );
  }
};

/**
 * Makes a circuit ready for the loop over a season: panels on their cables, controller, battery cable.
 *
 * MPPT: the branches' common maximum-power point at or above battery voltage + head-room, at most the power limit; through
 * the efficiency curve; at most the current limit; less the battery cable. PWM: the panels held at the battery's voltage + drop, where the
 * battery's own rise under charge, its cable and the panels' cables are resistances in series with the curve.
 *
 * @throws RangeError without a branch
 */
export const harvester = (
  circuit: Circuit,
  branches: readonly Branch[],
  battery: BatteryModel,
): Harvester => {
  if (branches.length === 0) throw new RangeError("harvester: expected at least one branch, received none");
  const { controller } = circuit;
  return controller.kind === "mppt"
    ? mpptHarvester(circuit, controller, branches, battery)
    : pwmHarvester(circuit, controller, branches, battery);
};
