import type { Branch } from "../../circuit/branches.ts";
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

/** A set-up's panels as branches of its circuit, in their order. */
export const branchesOf = ({ panels, circuit }: SetUp): readonly Branch[] =>
  panels.map(({ unit }) => ({
    reference: unit.model.fit.reference,
    howMany: unit.howMany,
    shareLeft: unit.model.shareLeft,
    cableOhm: runOhm(circuit.panelCable),
    blockingV: circuit.blockingDiodeV,
  }));
