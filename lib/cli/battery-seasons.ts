import type { Plan } from "../plan/plan.ts";
import type { BatteryOptions } from "../season/battery-season.ts";
import type { PlanSkies } from "../season/skies-of-plan.ts";
import { type SkySource, skySource } from "../season/sky-source.ts";
import { planSkies } from "./plan-skies.ts";
import { progressLine } from "./progress.ts";
import type { Voice } from "./verb.ts";

/** Skies that a plan's battery is put through, at its own step. */
export interface LivedSkies {
  /** The plan with the step that batteries are run at. */
  readonly plan: Plan;
  readonly skies: PlanSkies;
  readonly source: SkySource;
  readonly options: BatteryOptions;
  readonly notes: readonly string[];
  /** Wipes the progress line. */
  readonly end: () => void;
}

const CLEAR_NOTE =
  "The plan names no weather and no climate: every day is taken as clear. These are upper bounds; real seasons are worse.";
const ONE_YEAR_NOTE =
  "One year of weather cannot tell how bad a bad season is; a climate (sky.source) draws many.";

/**
 * Makes the skies that a plan's battery lives through.
 *
 * @param stepMinutes step to run at; the plan's own when left out
 */
export const livedSkies = async (
  given: Plan,
  folder: string,
  voice: Voice,
  stepMinutes: Plan["season"]["stepMinutes"] = given.season.stepMinutes,
): Promise<LivedSkies> => {
  const plan: Plan = { ...given, season: { ...given.season, stepMinutes } };
  const skies = await planSkies(plan, folder);
  const progress = progressLine("living through the seasons", voice);
  const source = skySource(plan, skies);
  const notes = [...skies.notes];
  if (source.kind === "years" && !source.cloudIn) notes.push(CLEAR_NOTE);
  else if (source.kind === "years" && source.skies.length < 5) notes.push(ONE_YEAR_NOTE);
  return {
    plan,
    skies,
    source,
    notes,
    options: {
      timeZone: plan.site.timeZone,
      airC: plan.air.temperatureC,
      onProgress: (done, seasons) => progress.at(done / seasons),
    },
    end: progress.end,
  };
};
