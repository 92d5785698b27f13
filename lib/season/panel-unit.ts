import { linearPanel, type PanelModel } from "../panel/index.ts";
import type { Aim } from "../plan/angle.ts";
import type { Panel } from "../plan/panels.ts";

/** Panels of one kind on one mount, ready for the loop over a season. */
export interface PanelUnit {
  readonly name: string;
  readonly howMany: number;
  readonly model: PanelModel;
  /** Where a fixed panel points for good; `null` for one on the stand, whose leg sets its aim. */
  readonly fixedAim: Aim | null;
}

/** Makes the panels of a plan ready. */
export const panelUnits = (panels: readonly Panel[]): readonly PanelUnit[] =>
  panels.map(({ name, howMany, module, mount, dustPct, otherLossPct }) => ({
    name,
    howMany,
    fixedAim: mount.kind === "fixed" ? { tiltDeg: mount.tiltDeg, bearingDeg: mount.bearingDeg } : null,
    model: linearPanel(module.powerW, module.powerPctPerK / 100, {
      mount: mount.kind === "fixed" && mount.back === "roof" ? "flat-on-roof" : "open-rack",
      losses: { dust: dustPct / 100, mismatch: 0, ageing: 0, other: otherLossPct / 100 },
    }),
  }));
