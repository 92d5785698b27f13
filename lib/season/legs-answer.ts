import type { Plan } from "../plan/plan.ts";
import { type LegSetting, tiltOfLeg } from "../stand/leg.ts";
import { sawableLegs } from "../stand/sawable.ts";
import { standGeometry } from "../stand/settings.ts";
import { standPanels } from "../stand/stand-panel.ts";
import { stowing } from "../stand/stow.ts";
import { bestLegSets, type LegDays, type LegObjective, type LegSetAnswer } from "./leg-set.ts";
import { panelUnits } from "./panel-unit.ts";
import { type RuleOfThumb, rulesOfThumb } from "./rules-of-thumb.ts";
import { facingOf, type Setting, settingsOf } from "./settings.ts";
import type { SeasonSkies } from "./skies.ts";
import { type AimEnergy, aimEnergyOver, type TiltLadder, tiltLadder, tiltsEvery } from "./tilt-ladder.ts";
import { type TiltBand, type ToleranceCost, tiltBands, toleranceOf } from "./tolerance.ts";

/** A setting of the stand, what it brings when it is kept all season, and what small errors in it cost. */
export interface SettingFacts {
  readonly setting: Setting;
  readonly dayWh: Float64Array;
  readonly totalWh: number;
  readonly tolerance: readonly ToleranceCost[];
}

/** Which legs to cut, and how good they have to be. Only panels on the stand are counted. */
export interface LegsAnswer {
  /** The tilt-by-date map. */
  readonly ladder: TiltLadder;
  /** Flat and the plan's legs. */
  readonly settings: readonly SettingFacts[];
  readonly objective: LegObjective;
  /** Best sets beside flat and the owned legs: the first with nothing to cut, then one leg more each. */
  readonly sets: readonly LegSetAnswer[];
  readonly bands: readonly TiltBand[];
  readonly rules: readonly RuleOfThumb[];
}

/** What is looked for. */
export interface LegsQuestion {
  /** Most legs to cut beside the owned ones, 0 to 4 [3]. */
  readonly most?: number;
  readonly objective?: LegObjective;
}

const total = (dayWh: Float64Array): number => dayWh.reduce((sum, wh) => sum + wh, 0);

/** The energies of legs at the stand's own facing. */
const legDays = (energy: AimEnergy, bearingDeg: number, legs: readonly LegSetting[]): readonly LegDays[] =>
  legs.map(({ legMm, tiltDeg }) => ({ legMm, tiltDeg, dayWh: energy(tiltDeg, bearingDeg) }));

/** Legs of the plan that are there already. */
const ownedLegs = ({ stand }: Plan): readonly LegSetting[] =>
  stand.legs.flatMap((leg) => {
    const fit = "lengthMm" in leg && leg.owned ? tiltOfLeg(standGeometry(stand), leg.lengthMm) : null;
    return fit?.kind === "stands" ? [fit] : [];
  });

/**
 * The best sets of legs for a plan, beside those it marks as owned.
 *
 * @throws PlanError when no panel is on the stand, or no length can be cut
 */
export const bestLegsOfPlan = (
  plan: Plan,
  skies: SeasonSkies,
  { most = 3, objective = "season total" }: LegsQuestion = {},
): readonly LegSetAnswer[] => {
  const energy = aimEnergyOver(skies, panelUnits(plan.panels));
  const bearingDeg = facingOf(plan);
  const [flat] = settingsOf({ ...plan, stand: { ...plan.stand, legs: [] } });
  const candidates = sawableLegs(plan.stand, stowing(plan.stand, standPanels(plan).shortestMm));
  return bestLegSets(
    skies.sun.days,
    energy(flat.tiltDeg, bearingDeg),
    legDays(energy, bearingDeg, ownedLegs(plan)),
    legDays(energy, bearingDeg, candidates),
    most,
    objective,
  );
};

/**
 * All about a plan's legs.
 *
 * @throws PlanError when no panel is on the stand, a leg of the plan can't stand, or no length can be cut
 */
export const legsAnswer = (plan: Plan, skies: SeasonSkies, question: LegsQuestion = {}): LegsAnswer => {
  const units = panelUnits(plan.panels);
  const energy = aimEnergyOver(skies, units);
  const { days } = skies.sun;
  const geometry = standGeometry(plan.stand);
  const ladder = tiltLadder(skies, units, facingOf(plan), tiltsEvery(1));
  return {
    ladder,
    objective: question.objective ?? "season total",
    sets: bestLegsOfPlan(plan, skies, question),
    settings: settingsOf(plan).map((setting) => {
      const dayWh = energy(setting.tiltDeg, setting.bearingDeg);
      return {
        setting,
        dayWh,
        totalWh: total(dayWh),
        tolerance: toleranceOf(energy, days, geometry, setting),
      };
    }),
    bands: tiltBands(ladder),
    rules: rulesOfThumb(ladder, plan.site.latitudeDeg),
  };
};
