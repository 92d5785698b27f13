import {
  ASSUMED,
  type CompleteNameplate,
  completeNameplate,
  type Nameplate,
  nameplateProblems,
} from "../plan/nameplate.ts";
import { PlanError } from "../units/problem.ts";
import { HEAT_LOSS, type HeatLoss, heatLossOfNoct, type PanelMount } from "./cell-temperature.ts";
import { type CurrentTable, currentTable } from "./current-table.ts";
import { curvePointsOf } from "./curve-points.ts";
import { type DiodeFit, fitDiode } from "./desoto-fit.ts";
import type { LinearPanel } from "./linear-module.ts";
import { type ConstantLosses, NO_LOSSES, shareLeft } from "./losses.ts";
import { type PowerSurface, powerSurface } from "./power-surface.ts";

/** A panel known by its whole current-voltage curve. */
export interface DiodePanel {
  readonly kind: "diode";
  /** Power of the fitted curve at standard test conditions, W: Vmp x Imp of the nameplate. */
  readonly ratedW: number;
  /** What the curve was fitted to, and what of it had to be assumed. */
  readonly nameplate: CompleteNameplate;
  readonly fit: DiodeFit;
  readonly heatLoss: HeatLoss;
  /** Share of current and power left after constant losses, 0 to 1. */
  readonly shareLeft: number;
  /** Maximum power and its voltage, tabled. */
  readonly surface: PowerSurface;
  /** Current at any voltage, tabled. */
  readonly currents: CurrentTable;
}

/** What the factories need beside the module itself. */
export interface PanelOptions {
  /** How the panel is mounted [open-rack]. */
  readonly mount?: PanelMount;
  /** Nominal operating cell temperature of the nameplate, degC; on an open rack it replaces the mean heat loss. */
  readonly noctC?: number;
  /** Constant losses [none]. */
  readonly losses?: ConstantLosses;
}

/** The heat loss of a panel: its mount's, or on an open rack the one its own NOCT asks for. */
export const heatLossOf = ({ mount = "open-rack", noctC }: PanelOptions): HeatLoss =>
  mount === "open-rack" && noctC !== undefined ? heatLossOfNoct(noctC) : HEAT_LOSS[mount];

/**
 * A panel from its rated power and temperature coefficient.
 *
 * @param ratedW Rated power at standard test conditions, W, above 0.
 * @param powerPerK Temperature coefficient of the power, 1/K, -0.02 to 0 [-0.004].
 * @throws RangeError outside those ranges.
 * @example linearPanel(60, -0.004, { mount: "flat-on-roof" }).heatLoss // { u0: 13.89, u1: 3.8 }
 */
export const linearPanel = (
  ratedW: number,
  powerPerK: number = ASSUMED.powerPctPerK / 100,
  options: PanelOptions = {},
): LinearPanel => {
  if (!(ratedW > 0 && Number.isFinite(ratedW))) {
    throw new RangeError(`linearPanel: expected rated power above 0 W, received ${ratedW}`);
  }
  if (!(powerPerK >= -0.02 && powerPerK <= 0)) {
    throw new RangeError(
      `linearPanel: expected a temperature coefficient of -0.02 to 0 per K, received ${powerPerK}`,
    );
  }
  return {
    kind: "linear",
    ratedW,
    powerPerK,
    heatLoss: heatLossOf(options),
    shareLeft: shareLeft(options.losses ?? NO_LOSSES),
  };
};

/**
 * A panel from its nameplate, by the single-diode curve fitted to it.
 *
 * Takes a few milliseconds, for the fit and its tables; made once and shared by every aim and sky.
 *
 * @param plate The nameplate; what it leaves out is assumed as `completeNameplate` says.
 * @param path Where it stands in the plan, for complaints.
 * @throws PlanError with every reason why the nameplate cannot be true.
 * @example diodePanel({ powerW: 60, vmpV: 17.1, impA: 3.5, vocV: 21.1, iscA: 3.8 }).ratedW // 59.85
 */
export const diodePanel = (plate: Nameplate, options: PanelOptions = {}, path = "module"): DiodePanel => {
  const problems = nameplateProblems(plate, path);
  if (problems.length > 0) throw new PlanError(problems);
  const nameplate = completeNameplate(plate);
  return panelOfFit(nameplate, fitOf(nameplate, path), options);
};

const fitOf = (nameplate: CompleteNameplate, path: string): DiodeFit => {
  const fit = fitDiode(curvePointsOf(nameplate));
  if (fit !== null) return fit;
  const { vmpV, impA, vocV, iscA } = nameplate;
  throw new PlanError([
    {
      path,
      value: { vmpV, impA, vocV, iscA },
      allowed: "must lie on one current-voltage curve that has its most power at Vmp",
      hint: "a voltage or a current is misread",
    },
  ]);
};

const panelOfFit = (nameplate: CompleteNameplate, fit: DiodeFit, options: PanelOptions): DiodePanel => ({
  kind: "diode",
  ratedW: nameplate.vmpV * nameplate.impA,
  nameplate,
  fit,
  heatLoss: heatLossOf(options),
  shareLeft: shareLeft(options.losses ?? NO_LOSSES),
  surface: powerSurface(fit.reference),
  currents: currentTable(fit.reference),
});
