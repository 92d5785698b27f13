import type { LegSetting } from "../../stand/leg.ts";
import type { SeasonDay } from "../../sun/columns.ts";
import { totalWh } from "../light/day-sums.ts";
import { periodsOf } from "../light/periods.ts";
import type { BestSet, DayGroups } from "./best-set.ts";
import { bestPeakedSets } from "./peaked-set.ts";
import { bestPoorestSet } from "./poorest-set.ts";

/** What a set of legs can be best at in watt-hours. */
export const ENERGY_OBJECTIVES = ["season total", "worst month"] as const;

export type EnergyObjective = (typeof ENERGY_OBJECTIVES)[number];

/** What a set of legs should be best at. The last one takes the battery into it (`fewestShortDaySets`). */
export const LEG_OBJECTIVES = [...ENERGY_OBJECTIVES, "fewest short days"] as const;

export type LegObjective = (typeof LEG_OBJECTIVES)[number];

/** Most legs that a set may have beside the owned ones. */
export const MOST_LEGS = 4;

/** A leg that could be used, and what each day brings with it, Wh. */
export interface LegDays extends LegSetting {
  readonly dayWh: Float64Array;
}

/** The best legs to cut, so many of them, and what they bring. */
export interface LegSetAnswer {
  /** Legs to cut, shortest first; the owned ones and flat are there beside them. */
  readonly legs: readonly LegDays[];
  /** Wh of each day with its best setting. */
  readonly dayWh: Float64Array;
  readonly totalWh: number;
  /** What the objective is judged by: mean Wh a day, of the season or of its poorest month. */
  readonly scoreWh: number;
  /** How much more the score is than with one leg fewer, Wh a day. */
  readonly addsWh: number;
  /** Short days of a mean season with it; `null` unless the set was chosen for them. */
  readonly shortDays: number | null;
}

/** The whole season as one group, or a group for each month that the season touches. */
export const dayGroups = (days: readonly SeasonDay[], objective: EnergyObjective): DayGroups => {
  const [season, ...months] = periodsOf(days);
  const periods = objective === "season total" ? [season] : months;
  const groupOfDay = new Uint8Array(days.length);
  periods.forEach(({ first, end }, group) => {
    groupOfDay.fill(group, first, end);
  });
  return { groupOfDay, count: periods.length };
};

const bestOf = (base: Float64Array, chosen: readonly LegDays[]): Float64Array =>
  base.map((wh, day) => chosen.reduce((best, { dayWh }) => Math.max(best, dayWh[day]), wh));

/** Scores this near are alike. */
const ALIKE = 1e-12;

/** Sets of 0 to `most` columns, each exact, by the quickest way there is. */
const setsOf = (
  base: Float64Array,
  columns: readonly Float64Array[],
  most: number,
  groups: DayGroups,
): readonly BestSet[] => {
  const peaked = groups.count === 1 ? bestPeakedSets(base, columns, most) : null;
  return peaked ?? Array.from({ length: most + 1 }, (_, size) => bestPoorestSet(base, columns, size, groups));
};

/**
 * The best sets of 0, 1 ... `most` legs to cut, exactly: on every day the best of them is used, or an owned leg, or
 * none. A size that brings no more than the one before is left out.
 *
 * @param flatWh Wh of each day lying flat
 * @param owned legs that are there anyway
 * @param candidates legs that could be cut, shortest first
 * @throws RangeError when `most` is not 0 to 4
 */
export const bestLegSets = (
  days: readonly SeasonDay[],
  flatWh: Float64Array,
  owned: readonly LegDays[],
  candidates: readonly LegDays[],
  most: number,
  objective: EnergyObjective = "season total",
): readonly LegSetAnswer[] => {
  if (!(Number.isInteger(most) && most >= 0 && most <= MOST_LEGS)) {
    throw new RangeError(`bestLegSets: expected 0 to ${MOST_LEGS} legs, received ${most}`);
  }
  const base = bestOf(flatWh, owned);
  const columns = candidates.map(({ dayWh }) => dayWh);
  let before = 0;
  return setsOf(base, columns, most, dayGroups(days, objective)).flatMap(
    ({ indices, scoreWh }, size): LegSetAnswer[] => {
      // A larger set that only equals a smaller one is met by chance: a leg in it does nothing.
      if (size > 0 && scoreWh <= before * (1 + ALIKE)) return [];
      const legs = indices.map((index) => candidates[index]);
      const dayWh = bestOf(base, legs);
      const addsWh = size === 0 ? 0 : scoreWh - before;
      before = scoreWh;
      return [{ legs, dayWh, totalWh: totalWh(dayWh), scoreWh, addsWh, shortDays: null }];
    },
  );
};
