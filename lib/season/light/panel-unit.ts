import type { ConstantLosses } from "../../panel/losses.ts";
import { type DiodePanel, diodePanel } from "../../panel/panel-model.ts";
import type { Controller } from "../../plan/circuit.ts";
import type { Panel } from "../../plan/plan.ts";
import type { Aim } from "../../units/angle.ts";

/** Panels of one kind on one mount, ready for the loop over a season. */
export interface PanelUnit {
  readonly name: string;
  readonly howMany: number;
  /** How many of them are one behind another in each string; the strings stand side by side. */
  readonly inSeries: number;
  /** The largest fuse that the label allows in series with a panel, A. */
  readonly maxSeriesFuseA: number | undefined;
  /** A controller that they have to themselves; `undefined` on the circuit's. */
  readonly own: Controller | undefined;
  readonly model: DiodePanel;
  /** Where a fixed panel points for good; `null` for one on the stand, whose leg sets its aim. */
  readonly fixedAim: Aim | null;
}

/** The constant losses that a plan states for a panel. */
export const lossesOf = ({ dustPct, otherLossPct }: Panel): ConstantLosses => ({
  dust: dustPct / 100,
  other: otherLossPct / 100,
});

/**
 * Makes the panels of a plan ready: fits each nameplate's current-voltage curve.
 *
 * @throws PlanError for a nameplate that can't be true
 */
export const panelUnits = (panels: readonly Panel[]): readonly PanelUnit[] =>
  panels.map((panel, index) => {
    const { name, howMany, inSeries, module, mount, controller } = panel;
    return {
      name,
      howMany,
      inSeries,
      maxSeriesFuseA: module.maxSeriesFuseA,
      own: controller,
      fixedAim: mount.kind === "fixed" ? { tiltDeg: mount.tiltDeg, bearingDeg: mount.bearingDeg } : null,
      model: diodePanel(
        module,
        {
          mount: mount.kind === "fixed" && mount.back === "roof" ? "flat-on-roof" : "open-rack",
          losses: lossesOf(panel),
        },
        `panels[${index}].module`,
      ),
    };
  });
