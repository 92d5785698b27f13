import type { Plan } from "../../plan/plan.ts";
import { FEWEST_FOR_A_BAND } from "../light/bands.ts";
import type { PlanSkies } from "../light/skies-of-plan.ts";
import { type SkySource, skySource } from "../light/sky-source.ts";
import { type BatterySeason, batterySeasons } from "./battery-season.ts";
import { type ColdToll, coldToll } from "./cold-toll.ts";
import { type Coping, copingOf, toppedUp, waysOf } from "./coping.ts";
import { choicesOf } from "./set-ups.ts";
import { type SizingRule, sizingRule } from "./sizing-rule.ts";
import { type SmallestPanel, smallestSecondPanel } from "./smallest-panel.ts";
import { todayOf } from "./today.ts";
import { type WiringAnswer, wiringOf } from "./wiring.ts";
import { type WorthAnswer, worthOf } from "./worth.ts";

/** What a reader must know about the skies that a battery was put through. */
export type SkyUncertainty = "clear sky only" | "few years" | "many seasons";

const uncertaintyOf = (source: SkySource): SkyUncertainty => {
  if (source.kind === "drawn") return "many seasons";
  if (!source.cloudIn) return "clear sky only";
  return source.skies.length < FEWEST_FOR_A_BAND ? "few years" : "many seasons";
};

/** A plan's battery lived with, and its wiring. */
export interface BatteryAnswer {
  readonly season: BatterySeason;
  /** What the cold does to it; `null` where it never blocks the charging. */
  readonly cold: ColdToll | null;
  /** The same seasons, topped up whenever the battery is flat: in the way in use, or in each where the plan does not say. */
  readonly ways: readonly Coping[];
  readonly wiring: WiringAnswer;
  /** What a handbook's rule would have bought; `null` where it has nothing to say. */
  readonly rule: SizingRule | null;
  readonly uncertainty: SkyUncertainty;
}

/** What a plan's remedies are worth. */
export interface WorthOfPlan {
  readonly answer: WorthAnswer;
  readonly uncertainty: SkyUncertainty;
}

const optionsOf = (plan: Plan) => ({ timeZone: plan.site.timeZone, airC: plan.air.temperatureC });

/**
 * Runs a plan's battery as it is, and its cables in the next sizes.
 *
 * @param progress told how far the work has come, 0 to 1
 */
export const batteryOfPlan = (
  plan: Plan,
  skies: PlanSkies,
  progress: (share: number) => void = () => {},
): BatteryAnswer => {
  const source = skySource(plan, skies);
  const options = optionsOf(plan);
  const { asIs } = todayOf(plan, skies.skies);
  const by = waysOf(plan.worth);
  const [season, ...coped] = batterySeasons(
    source,
    [asIs, ...by.map((way) => toppedUp(asIs, way, plan.worth))],
    { ...options, onProgress: (done, seasons) => progress((0.5 * done) / seasons) },
  );
  const wiring = wiringOf(source, asIs, {
    ...options,
    onProgress: (done, seasons) => progress(0.5 + (0.5 * done) / seasons),
  });
  const rule = sizingRule(skies.skies, season, options.airC);
  const cold = coldToll(source, season, options);
  const ways = coped.map((one, at) => copingOf(one, by[at], plan.worth));
  return { season, cold, ways, wiring, rule, uncertainty: uncertaintyOf(source) };
};

/** What a plan's remedies are worth, all under the same skies. */
export const worthOfPlan = (
  plan: Plan,
  skies: PlanSkies,
  progress: (share: number) => void = () => {},
): WorthOfPlan => {
  const source = skySource(plan, skies);
  const answer = worthOf(source, choicesOf(plan, skies.skies), plan.worth, {
    ...optionsOf(plan),
    onProgress: (done, seasons) => progress(done / seasons),
  });
  return { answer, uncertainty: uncertaintyOf(source) };
};

/** The smallest second panels that keep within the accepted short days: on the roof, and on legs where there are any. */
export const smallestPanelsOfPlan = (
  plan: Plan,
  skies: PlanSkies,
  progress: (share: number) => void = () => {},
): readonly SmallestPanel[] => {
  const source = skySource(plan, skies);
  const choices = choicesOf(plan, skies.skies);
  return (["roof", "legs"] as const).flatMap((where, at) => {
    const found = smallestSecondPanel(source, choices, plan.worth, optionsOf(plan), where, (share) =>
      progress((at + share) / 2),
    );
    return found === null ? [] : [found];
  });
};
