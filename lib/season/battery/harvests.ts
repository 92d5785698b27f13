import type { BatteryModel } from "../../circuit/battery.ts";
import type { BranchLight } from "../../circuit/branches.ts";
import { type Harvest, type Harvester, harvester } from "../../circuit/harvest.ts";
import { jointHarvester } from "../../circuit/joint-harvest.ts";
import type { SunColumns } from "../../sun/columns.ts";
import { between } from "../../units/interpolation.ts";
import { type AimPlan, emptyBranchLight, lightOver } from "../light/aim-plan.ts";
import type { ReadySky } from "../light/skies.ts";
import type { CloudRung, SkySource } from "../light/sky-source.ts";
import { branchesOf, circuitParts, type SetUp } from "./set-up.ts";

/** What several set-ups could put into their batteries, sky after sky: each harvest that differs is worked out once. */
export interface Harvests {
  /** For each set-up, which harvest is its own. */
  readonly ofSetUp: readonly number[];
  readonly harvesters: readonly Harvester[];
  /** The harvests under the season's sky of that number, from 0; the same room is written to each time. */
  readonly under: (season: number) => readonly Harvest[];
}

/** What a set-up could put into its battery: its own circuit's, and that of panels with a controller to themselves. */
const harvesterOf = (setUp: SetUp, battery: BatteryModel): Harvester => {
  const branches = branchesOf(setUp);
  const parts = circuitParts(setUp).map(({ at, circuit }) => ({
    at,
    harvester: harvester(
      circuit,
      at.map((branch) => branches[branch]),
      battery,
    ),
  }));
  return parts.length === 1 ? parts[0].harvester : jointHarvester(parts);
};

/** Numbers things by identity, in the order in which they are first met. */
const numbered = <Thing>(): { readonly things: Thing[]; readonly number: (thing: Thing) => number } => {
  const things: Thing[] = [];
  return {
    things,
    number: (thing) => {
      const at = things.indexOf(thing);
      return at === -1 ? things.push(thing) - 1 : at;
    },
  };
};

interface LightPlan {
  readonly aims: AimPlan;
  readonly u0: number;
  readonly u1: number;
}

/** All that a harvest depends on, as text: two set-ups with the same text share it. */
const harvestKey = (
  { panels, circuit }: SetUp,
  battery: BatteryModel,
  lights: readonly number[],
  curveNumber: (reference: object) => number,
): string =>
  JSON.stringify([
    panels.map(({ unit }, at) => [
      lights[at],
      curveNumber(unit.model.fit.reference),
      unit.howMany,
      unit.inSeries,
      unit.own,
      unit.model.shareLeft,
    ]),
    circuit,
    battery.meanV,
    // Only a controller without power tracking sees the battery's own voltage and resistance.
    circuit.controller.kind === "pwm" ? [battery.chargeOhm, Array.from(battery.restVAt)] : null,
  ]);

/** A harvest's columns, each with how many values it has for a row. */
const columnsOf = (
  harvest: Harvest,
): readonly { readonly values: Float64Array; readonly perRow: number }[] => {
  if (harvest.kind === "power") return [{ values: harvest.watts, perRow: 1 }];
  const { amps, nodes, besideW } = harvest;
  return [
    { values: amps, perRow: nodes },
    ...(besideW === undefined ? [] : [{ values: besideW, perRow: 1 }]),
  ];
};

/** A season's harvest between those of the rungs on either side of each day's ratio. */
const blend = (
  sun: SunColumns,
  rungs: readonly CloudRung[],
  atRungs: readonly Harvest[],
  ratios: Float64Array,
  out: Harvest,
): void => {
  const into = columnsOf(out);
  const from = atRungs.map(columnsOf);
  const [least, step] = [rungs[0].ratio, rungs.length > 1 ? rungs[1].ratio - rungs[0].ratio : 1];
  sun.days.forEach(({ first, end }, day) => {
    const ratio = ratios[day];
    if (Number.isNaN(ratio)) {
      for (const { values, perRow } of into) values.fill(0, first * perRow, end * perRow);
      return;
    }
    const at = (ratio - least) / step;
    const rung = Math.max(0, Math.min(rungs.length - 2, Math.floor(at)));
    const above = Math.min(rungs.length - 1, rung + 1);
    const share = at - rung;
    into.forEach(({ values, perRow }, column) => {
      const [lower, upper] = [from[rung][column].values, from[above][column].values];
      for (let value = first * perRow; value < end * perRow; value += 1) {
        values[value] = between(lower[value], upper[value], share);
      }
    });
  });
};

/**
 * Prepares the harvests of several set-ups under a source of skies.
 *
 * The light on a panel is worked out once for each aim plan and mount, the curves once for each circuit that differs. With
 * drawn seasons both are worked out at the rungs of cloud only, and a season's day lies between two of them.
 *
 * @param batteries The set-ups' batteries, in the same order.
 */
export const harvestsOf = (
  source: SkySource,
  setUps: readonly SetUp[],
  batteries: readonly BatteryModel[],
): Harvests => {
  const { sun } = source;
  const lightPlans: LightPlan[] = [];
  const lightNumber = ({ aims, u0, u1 }: LightPlan): number => {
    const at = lightPlans.findIndex((one) => one.aims === aims && one.u0 === u0 && one.u1 === u1);
    return at === -1 ? lightPlans.push({ aims, u0, u1 }) - 1 : at;
  };
  const curves = numbered<object>();
  const keys = numbered<string>();
  const harvesters: Harvester[] = [];
  const lightsOf: (readonly number[])[] = [];
  const ofSetUp = setUps.map((setUp, index) => {
    const lights = setUp.panels.map(({ unit, aims }) => lightNumber({ aims, ...unit.model.heatLoss }));
    const known = keys.things.length;
    const at = keys.number(harvestKey(setUp, batteries[index], lights, curves.number));
    if (at === known) {
      harvesters.push(harvesterOf(setUp, batteries[index]));
      lightsOf.push(lights);
    }
    return at;
  });

  const fillLight = lightOver(sun);
  const lights: readonly BranchLight[] = lightPlans.map(() => emptyBranchLight(sun.length));
  const fillAll = (sky: ReadySky, out: readonly Harvest[]): void => {
    lightPlans.forEach((plan, at) => {
      fillLight(sky, plan.aims, plan, lights[at]);
    });
    harvesters.forEach(({ fill }, at) => {
      fill(
        lightsOf[at].map((light) => lights[light]),
        sun.length,
        out[at],
      );
    });
  };
  const room = () => harvesters.map(({ room: roomFor }) => roomFor(sun.length));
  const out = room();
  if (source.kind === "years") {
    return {
      ofSetUp,
      harvesters,
      under: (season) => {
        fillAll(source.skies[season], out);
        return out;
      },
    };
  }
  const { rungs, sequences } = source;
  const atRungs = rungs.map(({ sky }) => {
    const harvests = room();
    fillAll(sky, harvests);
    return harvests;
  });
  return {
    ofSetUp,
    harvesters,
    under: (season) => {
      const ratios = sequences.ratio.subarray(season * sequences.days, (season + 1) * sequences.days);
      out.forEach((harvest, at) => {
        blend(
          sun,
          rungs,
          atRungs.map((harvests) => harvests[at]),
          ratios,
          harvest,
        );
      });
      return out;
    },
  };
};
