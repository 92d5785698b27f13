import { PlanError, panelUnits, readPlan, seasonYield, settingsOf, skiesOfPlan } from "../../lib/index.ts";

/** What became of a plan: answered, or refused with problems. */
export type Fate = "answered" | "refused";

/** The sun at its nearest sends 1361 W/m2 x 1.035; snow all round and a cloudless sky add less than this to a plane. */
const MOST_LIGHT_KW = 1.361 * 1.035 * 1.3;

/** A cell at -60 degC gives at most this many times its rated power for the same light. */
const COLDEST_GAIN = 1 + 0.01 * 85;

/**
 * Holds a plan to what is promised of every plan: it is answered or refused, and refused only by our own error with
 * problems in it; no energy is negative, not a number, or more than the sun sends.
 *
 * @throws Error when a promise is broken, and whatever else the library throws that it should not
 */
export const holdToPromises = (given: unknown): Fate => {
  try {
    const plan = readPlan(given);
    if (plan.sky.source !== "clear") return "answered";
    const { skies } = skiesOfPlan(plan, null);
    const { days, settings } = seasonYield(skies, panelUnits(plan.panels), settingsOf(plan));
    const ratedW = plan.panels.reduce((sum, { module, howMany }) => sum + module.powerW * howMany, 0);
    for (const { setting, clearWh } of settings) {
      clearWh.forEach((wh, day) => {
        const most = ratedW * MOST_LIGHT_KW * COLDEST_GAIN * days[day].sunHours;
        if (!(wh >= 0 && wh <= most + 1e-9)) {
          throw new Error(`${setting.name}, ${days[day].date}: ${wh} Wh is not 0 to ${most}`);
        }
      });
    }
    return "answered";
  } catch (error) {
    if (error instanceof PlanError && error.problems.length > 0) return "refused";
    throw error;
  }
};
