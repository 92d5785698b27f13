/** Whether a climate's twelve means come back out of its skies and of its drawn seasons. */
import { NO_UNCERTAINTY } from "../../../lib/sky/climate/climate.ts";
import { skySequences } from "../../../lib/sky/climate/days/sequences.ts";
import { type HourlyYear, stationDays } from "./hourly-year.ts";
import type { Place } from "./place.ts";
import { monthSums, skiesOfMonths, yearOver } from "./place.ts";
import { monthMeans } from "./spread.ts";

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** Polar night has no mean to keep; kWh/m2 a day. */
const LEAST_LIGHT = 0.02;

const worst = (found: Float64Array, means: readonly number[]): number =>
  100 *
  Math.max(
    ...means.map((mean, month) =>
      mean < LEAST_LIGHT ? 0 : Math.abs(found[month] / MONTH_DAYS[month] / mean - 1),
    ),
  );

/** Worst month of the mean over the equally likely skies, per cent off. */
export const monthKeptFor = (place: Place, means: readonly number[]): number => {
  const over = yearOver(place);
  const found = new Float64Array(12);
  for (const { weight, sky } of skiesOfMonths(over, place, means).skies) {
    for (const [month, sum] of monthSums(over.sun, sky.global).entries()) found[month] += weight * sum;
  }
  return worst(found, means);
};

/** Worst month of the mean over drawn seasons, per cent off. */
export const sequencesKeptFor = (place: Place, means: readonly number[], seasons = 200): number => {
  const over = yearOver(place);
  const { cloud } = skiesOfMonths(over, place, means);
  const { ratio, days } = skySequences(over.sun.days, cloud, NO_UNCERTAINTY, { seasons, seed: 3 });
  const found = new Float64Array(12);
  for (const [day, { month, first, end }] of over.sun.days.entries()) {
    let clear = 0;
    for (let row = first; row < end; row++) clear += (over.clear.global[row] * over.sun.hours[row]) / 1000;
    if (clear === 0) continue;
    for (let season = 0; season < seasons; season++) {
      found[month - 1] += (ratio[season * days + day] * clear) / seasons;
    }
  }
  return worst(found, means);
};

export const monthKept = (place: HourlyYear): number =>
  monthKeptFor(place, monthMeans(stationDays(place), yearOver(place)));

export const sequencesKept = (place: HourlyYear): number =>
  sequencesKeptFor(place, monthMeans(stationDays(place), yearOver(place)));
