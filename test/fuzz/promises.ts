import {
  type ClimateTable,
  type Plan,
  PlanError,
  panelUnits,
  readPlan,
  type SeasonCloud,
  type SeasonYield,
  seasonBands,
  seasonYield,
  settingsOf,
  skiesOfPlan,
} from "../../lib/index.ts";

/** What became of a plan: answered, or refused with problems. */
export type Fate = "answered" | "refused";

/** The sun at its nearest sends 1361 W/m2 x 1.035; snow all round and a cloudless sky add less than this to a plane. */
const MOST_LIGHT_KW = 1.361 * 1.035 * 1.3;

/** A cell at -60 degC gives at most this many times its rated power for the same light. */
const COLDEST_GAIN = 1 + 0.01 * 85;

/** What the days of one setting may come to at most, Wh, by day. */
const mostWh = (plan: Plan, { days }: SeasonYield): readonly number[] => {
  const ratedW = plan.panels.reduce((sum, { module, howMany }) => sum + module.powerW * howMany, 0);
  return days.map(({ sunHours }) => ratedW * MOST_LIGHT_KW * COLDEST_GAIN * sunHours);
};

const holdDays = (dayWh: Float64Array, most: readonly number[], what: string): void => {
  dayWh.forEach((wh, day) => {
    if (!(wh >= 0 && wh <= most[day] + 1e-9))
      throw new Error(`${what}, day ${day}: ${wh} Wh is not 0 to ${most[day]}`);
  });
};

const holdOrder = (band: { p10Wh: number; p50Wh: number; p90Wh: number }, what: string): void => {
  const { p10Wh, p50Wh, p90Wh } = band;
  if (!(p10Wh >= 0 && p10Wh <= p50Wh && p50Wh <= p90Wh))
    throw new Error(`${what}: ${p10Wh}, ${p50Wh}, ${p90Wh}`);
};

/** A climate's days: expected within what the sun sends, bands in order by day and by season. */
const holdClimate = (yields: SeasonYield, cloud: SeasonCloud, most: readonly number[]): void => {
  for (const { setting, expectedWh, band } of yields.settings) {
    if (expectedWh === null || band === null) throw new Error(`${setting.name}: no expected days`);
    holdDays(expectedWh, most, `${setting.name} expected`);
    for (const day of expectedWh.keys()) {
      holdOrder(
        { p10Wh: band.p10Wh[day], p50Wh: band.p50Wh[day], p90Wh: band.p90Wh[day] },
        `${setting.name}, day ${day}`,
      );
    }
  }
  for (const [index, band] of seasonBands(yields, cloud).entries())
    holdOrder(band, `season, setting ${index}`);
};

/**
 * Holds a plan to what is promised of every plan: it is answered or refused, and refused only by our own error with
 * problems in it; no energy is negative, not a number, or more than the sun sends; bands stand in order.
 *
 * @param climates the places that a plan's climate is chosen among; without them only clear skies are worked out
 * @throws Error when a promise is broken, and whatever else the library throws that it should not
 */
export const holdToPromises = (given: unknown, climates?: ClimateTable): Fate => {
  try {
    const plan = readPlan(given);
    if (plan.sky.source === "weather" || (plan.sky.source === "climate" && climates === undefined))
      return "answered";
    const { skies, cloud } = skiesOfPlan(plan, null, climates);
    const yields = seasonYield(skies, panelUnits(plan.panels), settingsOf(plan));
    const most = mostWh(plan, yields);
    for (const { setting, clearWh } of yields.settings) holdDays(clearWh, most, setting.name);
    if (cloud !== null) holdClimate(yields, cloud, most);
    return "answered";
  } catch (error) {
    if (error instanceof PlanError && error.problems.length > 0) return "refused";
    throw error;
  }
};
