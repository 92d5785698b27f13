import type { Branch } from "../../circuit/branches.ts";
import type { RatedPanels } from "../../circuit/build.ts";
import { circuitRemarks } from "../../circuit/checks.ts";
import type { CircuitRemark } from "../../circuit/remark.ts";
import { stringReference } from "../../circuit/string.ts";
import type { TopUp } from "../../circuit/top-up.ts";
import { runOhm } from "../../circuit/wire.ts";
import type { Battery } from "../../plan/battery.ts";
import type { Circuit } from "../../plan/circuit.ts";
import type { Loads } from "../../plan/loads.ts";
import type { AimPlan } from "../light/aim-plan.ts";
import type { PanelUnit } from "../light/panel-unit.ts";

/** Panels of one kind and where they point through the season. */
export interface PlacedPanels {
  readonly unit: PanelUnit;
  readonly aims: AimPlan;
}

/** Everything between light and load: panels in place, circuit, battery, loads. */
export interface SetUp {
  readonly name: string;
  readonly panels: readonly PlacedPanels[];
  readonly circuit: Circuit;
  readonly battery: Battery;
  readonly loads: Loads;
  /** How it is topped up when the charge reaches its floor; left out, it is not, and the loads go without. */
  readonly topUp?: TopUp;
}

/** A set-up's panels as branches of its circuit, in their order: a string of them each. */
export const branchesOf = ({ panels, circuit }: Pick<SetUp, "panels" | "circuit">): readonly Branch[] =>
  panels.map(({ unit }) => ({
    reference: stringReference(unit.model.fit.reference, unit.inSeries),
    howMany: unit.howMany / unit.inSeries,
    shareLeft: unit.model.shareLeft,
    cableOhm: runOhm(circuit.panelCable),
    blockingV: circuit.blockingDiodeV,
  }));

/** A set-up's panels as the checks of a circuit ask for them. */
export const ratedPanels = ({ panels }: Pick<SetUp, "panels">): readonly RatedPanels[] =>
  panels.map(({ unit: { name, howMany, inSeries, maxSeriesFuseA, own, model } }) => ({
    name,
    howMany,
    inSeries,
    maxSeriesFuseA,
    own,
    nameplate: model.nameplate,
  }));

/** All that is to be said about a set-up's parts beside each other, dangers first. */
export const remarksOf = (setUp: SetUp): readonly CircuitRemark[] =>
  circuitRemarks(setUp.circuit, ratedPanels(setUp), setUp.battery);

/** Panels on one controller: their places among the set-up's, and the circuit they are on. */
interface CircuitPart {
  readonly at: readonly number[];
  readonly circuit: Circuit;
}

/** A set-up's circuits: the plan's own, and one for each kind of panels with a controller to themselves. */
export const circuitParts = ({ panels, circuit }: SetUp): readonly CircuitPart[] => {
  const all = panels.map((_, at) => at);
  const common = all.filter((at) => panels[at].unit.own === undefined);
  return [
    ...(common.length === 0 ? [] : [{ at: common, circuit }]),
    ...all.flatMap((at): readonly CircuitPart[] => {
      const { own } = panels[at].unit;
      return own === undefined
        ? []
        : [{ at: [at], circuit: { ...circuit, controller: own, wiring: "parallel" } }];
    }),
  ];
};
