import type { LegSetting } from "../../stand/leg.ts";
import { sawableLegs } from "../../stand/sawable.ts";
import { flatTiltDeg, namedLegs, standGeometry } from "../../stand/settings.ts";
import { standPanels } from "../../stand/stand-panel.ts";
import { stowing } from "../../stand/stow.ts";
import { type Setting, settingsOf, tiltTurnedRound } from "../light/settings.ts";
import {
  bestLegSets,
  type EnergyObjective,
  type LegDays,
  type LegObjective,
  type LegSetAnswer,
} from "./leg-set.ts";
import { type RuleOfThumb, rulesOfThumb } from "./rules-of-thumb.ts";
import type { StandSeason } from "./stand-season.ts";
import { energyAt, type TiltLadder } from "./tilt-ladder.ts";
import { type TiltBand, type ToleranceCost, tiltBands, toleranceOf } from "./tolerance.ts";
import { leastGainOf } from "./worthwhile.ts";

/** A setting of the stand, what it brings when it is kept all season, and what small errors in it cost. */
export interface SettingFacts {
  readonly setting: Setting;
  readonly totalWh: number;
  readonly tolerance: readonly ToleranceCost[];
}

/** Which legs to cut, and how good they have to be. Only panels on the stand are counted. */
export interface LegsAnswer {
  /** The tilt-by-date map. */
  readonly ladder: TiltLadder;
  /** Flat and the legs in question. */
  readonly settings: readonly SettingFacts[];
  readonly objective: LegObjective;
  /** Best sets beside flat and the owned legs: the first with nothing to cut, then one leg more each. */
  readonly sets: readonly LegSetAnswer[];
  /** Share of the season that a further leg has to bring to be recommended, 0..1. */
  readonly leastGain: number;
  readonly bands: readonly TiltBand[];
  readonly rules: readonly RuleOfThumb[];
}

/** What is looked for. */
export interface LegsQuestion {
  /** Most legs to cut beside the owned ones, 0 to 4 [3]. */
  readonly most?: number;
  /** What the set should be best at ["season total"]. */
  readonly objective?: EnergyObjective;
}

/**
 * The legs that could be cut for a plan, and what each day brings with them.
 *
 * @throws PlanError when there is none
 */
export const legCandidates = (season: StandSeason): readonly LegDays[] => {
  const { stand } = season.plan;
  return sawableLegs(stand, stowing(stand, standPanels(season.plan).shortestMm)).map((leg) =>
    withDays(season, leg),
  );
};

/** A leg facing one way, and what each day brings so. */
export interface LegFacing extends LegDays {
  readonly bearingDeg: number;
}

/** A leg facing each way that the stand may face on it in this season, the plan's own first. */
export const legFacings = (
  { plan, ladders: [own, other] }: StandSeason,
  { legMm, tiltDeg }: LegSetting,
): readonly LegFacing[] => {
  const kept = { legMm, tiltDeg, bearingDeg: own.bearingDeg, dayWh: energyAt(own, tiltDeg) };
  if (other === undefined) return [kept];
  const turned = tiltTurnedRound(plan, legMm);
  if (turned === null) return [kept];
  return [kept, { legMm, tiltDeg: turned, bearingDeg: other.bearingDeg, dayWh: energyAt(other, turned) }];
};

/** A leg with what each day brings, facing the better of the ways that the stand may face on it: turning cuts no leg. */
const withDays = (season: StandSeason, { legMm, tiltDeg }: LegSetting): LegDays => {
  const [kept, turned] = legFacings(season, { legMm, tiltDeg });
  const dayWh = turned ? kept.dayWh.map((wh, day) => Math.max(wh, turned.dayWh[day])) : kept.dayWh;
  return { legMm, tiltDeg, dayWh };
};

/** The legs of a plan that are there already, and what each day brings with them. */
export const ownedLegs = (season: StandSeason): readonly LegDays[] => {
  const { plan } = season;
  const legs = plan.stand.legs.filter((leg) => "lengthMm" in leg && leg.owned);
  return namedLegs({ ...plan.stand, legs }).map((leg) => withDays(season, leg));
};

/** Lying flat, and what each day brings then. */
export const lyingFlat = ({ plan, ladders: [own] }: StandSeason): LegDays => {
  const tiltDeg = flatTiltDeg(plan.stand);
  return { legMm: 0, tiltDeg, dayWh: energyAt(own, tiltDeg) };
};

/**
 * The best sets of legs for a plan, beside those it marks as owned.
 *
 * @throws PlanError when no length can be cut
 */
export const bestLegsOfPlan = (
  season: StandSeason,
  { most = 3, objective = "season total" }: LegsQuestion = {},
): readonly LegSetAnswer[] => {
  return bestLegSets(
    season.days,
    lyingFlat(season).dayWh,
    ownedLegs(season),
    legCandidates(season),
    most,
    objective,
  );
};

/** What settings bring when they are kept all season, and what small errors in them cost. */
export const settingFacts = (
  { plan, days, energy }: StandSeason,
  settings: readonly Setting[],
): readonly SettingFacts[] =>
  settings.map((setting) => {
    const tolerance = toleranceOf(energy, days, standGeometry(plan.stand), setting);
    return { setting, tolerance, totalWh: tolerance[0].dayWh * days.length };
  });

/**
 * All about a plan's legs.
 *
 * @param sets the best sets for that objective [of up to three legs for the season's total]
 * @param settings what facts are wanted about, flat first [the plan's own]
 * @throws PlanError when a leg of the plan can't stand, or no length can be cut
 */
export const legsAnswer = (
  season: StandSeason,
  objective: LegObjective = "season total",
  sets: readonly LegSetAnswer[] = bestLegsOfPlan(season),
  settings: readonly Setting[] = settingsOf(season.plan),
): LegsAnswer => ({
  ladder: season.ladder,
  objective,
  sets,
  leastGain: leastGainOf(season.plan),
  settings: settingFacts(season, settings),
  bands: tiltBands(season.ladder),
  rules: rulesOfThumb(season.ladder, season.plan.site.latitudeDeg),
});
