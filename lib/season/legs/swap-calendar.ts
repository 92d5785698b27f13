/**
 * When to change from one setting to the next: of all calendars with a number of swaps, the one that brings most,
 * found by stepping through the days with a table of (swaps so far, setting in use).
 */
import { type DayStretch, totalOver, totalWh } from "../light/day-sums.ts";

/** A setting in use from one day up to, not including, another. Day indices into the season. */
export interface Stay extends DayStretch {
  readonly setting: number;
}

/** A calendar and what it brings over the season, Wh. */
export interface Calendar {
  readonly stays: readonly Stay[];
  readonly totalWh: number;
}

/** One change of setting and what hangs on it. */
export interface Swap {
  /** The day from which the new setting is in use. */
  readonly day: number;
  readonly from: number;
  readonly to: number;
  /** What is lost when it is left out and the old setting stays until the next swap, Wh over that time. */
  readonly worthWh: number;
  /** Whole days it may come early, and late, before that alone costs the slack allowed. */
  readonly earlyDays: number;
  readonly lateDays: number;
}

/** Which swaps to make, and what they are measured against. All Wh are season totals. */
export interface SwapAnswer extends Calendar {
  readonly swaps: readonly Swap[];
  /** The best setting of every day, however often that means a swap. */
  readonly everyDayWh: number;
  /** The one setting that brings most when it is never changed, and what it brings. */
  readonly forgetSetting: number;
  readonly forgetWh: number;
  /** What the settings are compared with: the first one (flat), never changed. */
  readonly firstWh: number;
  /** Share of the gain (over the first setting) that the calendar keeps, 0..1; 1 when there is none to keep. */
  readonly keptShare: number;
}

/** Wh of each day for each setting; the first setting is what a gain is counted from. */
type Settings = readonly Float64Array[];

/** Wh of a season in which every day has its best setting. */
const bestOfEveryDay = (settings: Settings): number => {
  let sum = 0;
  for (let day = 0; day < settings[0].length; day += 1) {
    let best = settings[0][day];
    for (const dayWh of settings) best = Math.max(best, dayWh[day]);
    sum += best;
  }
  return sum;
};

/** Sums of the same days taken in another order differ by less than this. */
const ROUNDING = 1e-12;

/**
 * The calendars that bring most with 0, 1, 2 ... swaps, each better than the one before, up to the one that loses
 * nothing (or `mostSwaps`). The season may begin in any setting: putting up the stand is no swap. Of equals, the
 * later swap.
 *
 * @throws RangeError without a setting or a day
 */
export const bestCalendars = (settings: Settings, mostSwaps: number): readonly Calendar[] => {
  const days = settings[0]?.length ?? 0;
  const count = settings.length;
  if (count === 0 || days === 0) {
    throw new RangeError(`bestCalendars: expected settings and days, received ${count} and ${days}`);
  }
  const enoughWh = bestOfEveryDay(settings) * (1 - ROUNDING);
  const calendars: Calendar[] = [];
  /** Best total up to a day, by setting in use on it, with exactly as many swaps as the round, and how it came about. */
  let before: Float64Array[] | null = null;
  const cameFrom: Int16Array[][] = [];
  for (let swaps = 0; swaps <= mostSwaps; swaps += 1) {
    const totals: Float64Array[] = [];
    const origins: Int16Array[] = [];
    for (let day = 0; day < days; day += 1) {
      const total = new Float64Array(count);
      const origin = new Int16Array(count);
      const fewer = before?.[day - 1];
      const [first, second] = fewer ? bestTwo(fewer) : [-1, -1];
      for (let setting = 0; setting < count; setting += 1) {
        const stay = day === 0 ? (swaps === 0 ? 0 : Number.NEGATIVE_INFINITY) : totals[day - 1][setting];
        const other = setting === first ? second : first;
        const change = fewer && other >= 0 ? fewer[other] : Number.NEGATIVE_INFINITY;
        // Of equals the change: it comes as late as it can.
        const changes = change > Number.NEGATIVE_INFINITY && change >= stay;
        total[setting] = (changes ? change : stay) + settings[setting][day];
        origin[setting] = changes ? other : setting;
      }
      totals.push(total);
      origins.push(origin);
    }
    cameFrom.push(origins);
    const end = totals[days - 1];
    const last = bestTwo(end)[0];
    if (last < 0) break;
    // One swap may bring less than none where two bring more (there and back again), so a poorer round does not end it.
    const totalWh = end[last];
    const known = calendars.at(-1)?.totalWh ?? Number.NEGATIVE_INFINITY;
    if (totalWh > known) calendars.push({ stays: staysOf(cameFrom, swaps, last, days), totalWh });
    if (totalWh >= enoughWh) break;
    before = totals;
  }
  return calendars;
};

/** Indices of the largest and second largest finite values; -1 where there is none. */
const bestTwo = (values: Float64Array): readonly [number, number] => {
  let first = -1;
  let second = -1;
  values.forEach((value, index) => {
    if (value === Number.NEGATIVE_INFINITY) return;
    if (first < 0 || value > values[first]) {
      second = first;
      first = index;
    } else if (second < 0 || value > values[second]) second = index;
  });
  return [first, second];
};

const staysOf = (
  cameFrom: readonly (readonly Int16Array[])[],
  swaps: number,
  lastSetting: number,
  days: number,
): readonly Stay[] => {
  const stays: Stay[] = [];
  let round = swaps;
  let setting = lastSetting;
  let end = days;
  for (let day = days - 1; day > 0; day -= 1) {
    const origin = cameFrom[round][day][setting];
    if (origin === setting) continue;
    stays.unshift({ setting, first: day, end });
    setting = origin;
    end = day;
    round -= 1;
  }
  return [{ setting, first: 0, end }, ...stays];
};

/** A season of changes goes no further than this many swaps: nobody walks out more often for the last Wh. */
const MOST_SWAPS = 60;

/**
 * The swap calendar: the fewest swaps that keep a share of what the settings gain over the first one.
 *
 * @param settings Wh of each day for each setting, the first one (flat) being what a gain is counted from
 * @param keep share of the gain to keep, 0..1 [0.99]
 * @param slack share of the gain that one swap done early or late may cost [0.01]
 */
export const swapCalendar = (settings: Settings, keep = 0.99, slack = 0.01): SwapAnswer => {
  const calendars = bestCalendars(settings, MOST_SWAPS);
  const totals = settings.map(totalWh);
  const forgetSetting = totals.indexOf(Math.max(...totals));
  const everyDayWh = bestOfEveryDay(settings);
  const firstWh = totals[0];
  const gainWh = everyDayWh - firstWh;
  const wanted = firstWh + keep * gainWh;
  const chosen =
    calendars.find(({ totalWh }) => totalWh >= wanted * (1 - ROUNDING)) ?? calendars[calendars.length - 1];
  return {
    ...chosen,
    swaps: swapsOf(settings, chosen.stays, slack * gainWh),
    everyDayWh,
    forgetSetting,
    forgetWh: totals[forgetSetting],
    firstWh,
    keptShare: gainWh > 0 ? (chosen.totalWh - firstWh) / gainWh : 1,
  };
};

const swapsOf = (settings: Settings, stays: readonly Stay[], slackWh: number): readonly Swap[] =>
  stays.slice(1).map((stay, index) => {
    const old = stays[index];
    const [oldWh, newWh] = [settings[old.setting], settings[stay.setting]];
    /** Whole days that one setting can stand in for the other, stepping away from the swap. */
    const daysWithin = (step: 1 | -1, stop: number, right: Float64Array, wrong: Float64Array): number => {
      let lost = 0;
      let moved = 0;
      for (let day = step === 1 ? stay.first : stay.first - 1; day !== stop; day += step) {
        lost += right[day] - wrong[day];
        if (lost > slackWh) break;
        moved += 1;
      }
      return moved;
    };
    return {
      day: stay.first,
      from: old.setting,
      to: stay.setting,
      worthWh: totalOver(newWh, stay) - totalOver(oldWh, stay),
      earlyDays: daysWithin(-1, old.first - 1, oldWh, newWh),
      lateDays: daysWithin(1, stay.end, newWh, oldWh),
    };
  });
