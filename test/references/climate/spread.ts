/** How days scatter about their month, and how a day follows the one before, at stations and in the model. */
import { NO_UNCERTAINTY } from "../../../lib/sky/climate/climate.ts";
import { type MeasuredMemory, measuredDayMemory } from "../../../lib/sky/climate/day-memory.ts";
import { daySpreads } from "../../../lib/sky/climate/days/day-spread.ts";
import { skySequences } from "../../../lib/sky/climate/days/sequences.ts";
import { COMMON_YEAR } from "../../../lib/sky/climate/month-to-date.ts";
import type { StationDay } from "./hourly-year.ts";
import { type HourlyYear, stationDays } from "./hourly-year.ts";
import { skiesOfMonths, type YearOver, yearOver } from "./place.ts";

/** Slices in which each day's distribution is compared. */
const SLICES = 100;

/** Each month's light over that of its clear days. */
const monthRatios = (days: readonly StationDay[]): ReadonlyMap<number, number> => {
  const sums = new Map<number, { readonly global: number; readonly clear: number }>();
  for (const { month, global, clear } of days) {
    const sum = sums.get(month) ?? { global: 0, clear: 0 };
    sums.set(month, { global: sum.global + global, clear: sum.clear + clear });
  }
  return new Map(Array.from(sums, ([month, { global, clear }]) => [month, global / clear]));
};

/** The greatest distance between two samples' distribution functions (Kolmogorov-Smirnov); both are sorted in place. */
const greatestDistance = (a: Float64Array, b: Float64Array): number => {
  a.sort();
  b.sort();
  let [i, j, greatest] = [0, 0, 0];
  while (i < a.length && j < b.length) {
    const value = Math.min(a[i], b[j]);
    while (i < a.length && a[i] <= value) i++;
    while (j < b.length && b[j] <= value) j++;
    greatest = Math.max(greatest, Math.abs(i / a.length - j / b.length));
  }
  return greatest;
};

/**
 * Distance between the daily clearness of a station's year and what the model makes of its twelve means, pooled over the
 * year. A month's thirty days alone differ by 0.11 by chance.
 */
export const spreadDistance = (
  place: HourlyYear,
  days: readonly StationDay[] = stationDays(place),
): number => {
  const ratios = monthRatios(days);
  const spreads = daySpreads();
  const slices = new Float64Array(SLICES);
  const model = new Float64Array(days.length * SLICES);
  for (const [index, { month, clear, top }] of days.entries()) {
    const clearClearness = clear / top;
    const ratio = ratios.get(month) ?? Number.NaN;
    spreads.slices({ latitudeDeg: place.latitudeDeg, clearClearness, ratio, uncertainty: 0 }, slices);
    for (let slice = 0; slice < SLICES; slice++)
      model[index * SLICES + slice] = slices[slice] * clearClearness;
  }
  return greatestDistance(
    Float64Array.from(days, ({ global, top }) => global / top),
    model,
  );
};

/** Day-to-day memory of a station's light relative to the clear day, the months' means removed. */
export const stationMemory = (days: readonly StationDay[]): MeasuredMemory =>
  measuredDayMemory(days.map(({ day, month, global, clear }) => ({ day, month, clearness: global / clear })));

/** The same of years drawn with a memory: the mean over them, on the station's own days. */
export const drawnMemory = (
  place: HourlyYear,
  own: readonly StationDay[],
  memory: number,
  years = 50,
): number => {
  const over = yearOver(place);
  const { cloud } = skiesOfMonths(over, place, monthMeans(own, over));
  const { ratio, days } = skySequences(over.sun.days, cloud, NO_UNCERTAINTY, {
    seasons: years,
    seed: 7,
    memory,
  });
  let sum = 0;
  for (let year = 0; year < years; year++) {
    const drawn = own.map(({ day, month }) => ({ day, month, clearness: ratio[year * days + day] }));
    sum += measuredDayMemory(drawn).correlation;
  }
  return sum / years;
};

/** Twelve means of a station, kWh/m2 a day: the clear days of each month times the ratio of those that were read. */
export const monthMeans = (days: readonly StationDay[], { days: year }: YearOver): readonly number[] => {
  const ratios = monthRatios(days);
  const usual = monthRatios(days.map((day) => ({ ...day, month: 0 }))).get(0) ?? Number.NaN;
  const sums = new Float64Array(12);
  const counts = new Float64Array(12);
  for (const [day, { month }] of COMMON_YEAR.entries()) {
    sums[month - 1] += year.clearKWhM2[day];
    counts[month - 1]++;
  }
  return Array.from(sums, (sum, index) => (sum / counts[index]) * (ratios.get(index + 1) ?? usual));
};
