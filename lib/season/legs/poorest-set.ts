import { type BestSet, bestSet, type DayGroups, scoreOf } from "./best-set.ts";
import { bestPeakedSets } from "./peaked-set.ts";

/** Wh of each day at one tilt. */
type Days = Float64Array;

/** The days of one group, as a season of their own. */
const daysOf = (dayWh: Days, { groupOfDay }: DayGroups, group: number): Days =>
  dayWh.filter((_, day) => groupOfDay[day] === group);

/** The best set for one group alone: what no set can pass there. */
const bestAlone = (
  base: Days,
  columns: readonly Days[],
  most: number,
  groups: DayGroups,
  group: number,
): BestSet => {
  const own = columns.map((column) => daysOf(column, groups, group));
  const ownBase = daysOf(base, groups, group);
  const single = { groupOfDay: new Uint8Array(ownBase.length), count: 1 };
  return bestPeakedSets(ownBase, own, most)?.at(-1) ?? bestSet(ownBase, own, most, single);
};

/**
 * The best set by the poorest of several groups of days, exactly like `bestSet`. Mostly one group is so poor that the
 * best set for it alone leaves all others above it: then nothing has to be searched.
 */
export const bestPoorestSet = (
  base: Days,
  columns: readonly Days[],
  most: number,
  groups: DayGroups,
): BestSet => {
  const alone = Array.from({ length: groups.count }, (_, group) =>
    bestAlone(base, columns, most, groups, group),
  );
  const ceilingWh = Math.min(...alone.map(({ scoreWh }) => scoreWh));
  const [start] = alone
    .map(({ indices }) => ({ indices, scoreWh: scoreOf(base, columns, indices, groups) }))
    .sort((a, b) => b.scoreWh - a.scoreWh);
  return bestSet(base, columns, most, groups, start.indices, ceilingWh);
};
