import { restV } from "../../circuit/chemistry.ts";
import { diodePanel } from "../../panel/panel-model.ts";
import type { Battery } from "../../plan/battery.ts";
import type { Controller } from "../../plan/circuit.ts";
import { completeNameplate } from "../../plan/nameplate.ts";
import type { Module } from "../../plan/panels.ts";
import type { Plan } from "../../plan/plan.ts";
import { lossesOf, type PanelUnit } from "../light/panel-unit.ts";

/** The same kind of panel with another rated power: its currents go with its size, its voltages stay. */
const resized = (module: Module, watts: number): Module => {
  const times = watts / module.powerW;
  const { impA, iscA } = module;
  return {
    ...module,
    powerW: watts,
    ...(impA === undefined ? {} : { impA: impA * times }),
    ...(iscA === undefined ? {} : { iscA: iscA * times }),
  };
};

/** Panels in series that no small system goes beyond. */
const LONGEST_STRING = 4;

/** How many panels in series a controller needs to charge a battery: the fewest whose Voc is enough to begin with. */
const stringFor = (module: Module, controller: Controller, battery: Battery): number => {
  const above = controller.kind === "mppt" ? controller.startAboveBatteryV : controller.dropV;
  const needed = (restV(battery, 1) + above) / completeNameplate(module).vocV;
  return Math.min(LONGEST_STRING, Math.max(1, Math.ceil(needed)));
};

/**
 * The second panel ready for the loop: one like the first, or the one that the plan states, at its own rated power or with
 * so many watts in all. Where one alone is too low for the battery there are as many in series as it takes.
 *
 * @throws PlanError for a nameplate that can't be true
 */
export const secondUnit = (
  { panels, worth, circuit, battery }: Pick<Plan, "panels" | "worth" | "circuit" | "battery">,
  where: "roof" | "legs",
  watts?: number,
): PanelUnit => {
  const [first] = panels;
  const alike = worth.secondPanel === undefined;
  const module = worth.secondPanel ?? first.module;
  const inSeries = alike ? first.inSeries : stringFor(module, circuit.controller, battery);
  const model = diodePanel(
    watts === undefined ? module : resized(module, watts / inSeries),
    {
      mount: where === "roof" ? "flat-on-roof" : "open-rack",
      losses: lossesOf(first),
    },
    alike ? "panels[0].module" : "worth.secondPanel",
  );
  return {
    name: `second panel, ${where}`,
    howMany: inSeries,
    inSeries,
    maxSeriesFuseA: module.maxSeriesFuseA,
    own: undefined,
    model,
    fixedAim: where === "roof" ? { tiltDeg: 0, bearingDeg: 0 } : null,
  };
};
