/**
 * A climate laid over a season: for each of its days the mean light, the air's low and high, the uncertainty.
 */
import type { SunColumns } from "../../../sun/columns.ts";
import type { SkyColumns } from "../../columns.ts";
import type { Climate } from "../climate.ts";
import { COMMON_YEAR, calendarIndex, holdMeansWithin, smoothYear } from "../month-to-date.ts";
import type { ClearYear } from "./clear-year.ts";
import { type DayMean, ratioLimits } from "./day-spread.ts";

/** The cloud of a season, day by day. */
export interface CloudSeason {
  readonly latitudeDeg: number;
  /** Of each day of the season; `null` for a day without sun. */
  readonly days: readonly (DayMean | null)[];
}

/**
 * Each month's light over that of its clear days, January first; 0 in months without sun. Above 1 the table is brighter
 * than the clear sky taken for the site.
 */
export const monthRatios = (
  { globalKWhM2 }: Pick<Climate, "globalKWhM2">,
  { clearKWhM2 }: ClearYear,
): readonly number[] => {
  const clearMeans = new Float64Array(12);
  const counts = new Float64Array(12);
  for (const [day, { month }] of COMMON_YEAR.entries()) {
    clearMeans[month - 1] += clearKWhM2[day];
    counts[month - 1]++;
  }
  return Array.from(clearMeans, (sum, month) =>
    sum > 0 ? ((globalKWhM2[month] ?? Number.NaN) * counts[month]) / sum : 0,
  );
};

/** Two months' ratios may differ a lot; where a bound would be crossed the rest of the month makes up for it. */
const dailyMeans = (
  climate: Pick<Climate, "globalKWhM2">,
  year: ClearYear,
  latitudeDeg: number,
): Float64Array => {
  const { clearKWhM2, topKWhM2 } = year;
  const ratios = monthRatios(climate, year);
  const daily = smoothYear(ratios, clearKWhM2);
  const limits = COMMON_YEAR.map(({ month }, day) =>
    ratioLimits({
      latitudeDeg,
      clearClearness: topKWhM2[day] > 0 ? clearKWhM2[day] / topKWhM2[day] : 1,
      ratio: ratios[month - 1] ?? Number.NaN,
      uncertainty: 0,
    }),
  );
  const least = Float64Array.from(limits, ([lower]) => lower);
  const most = Float64Array.from(limits, ([, upper]) => upper);
  holdMeansWithin(daily, ratios, clearKWhM2, least, most);
  return daily.map((ratio, day) => ratio * clearKWhM2[day]);
};

/** Sums of a season's days over columns of its sky, kWh/m2: clear and above the air. */
const daySums = (sun: SunColumns, clear: SkyColumns): readonly (readonly [number, number])[] =>
  sun.days.map(({ first, end }) => {
    let [light, top] = [0, 0];
    for (let row = first; row < end; row++) {
      light += clear.global[row] * sun.hours[row];
      top += clear.extraterrestrial[row] * sun.up[row] * sun.hours[row];
    }
    return [light / 1000, top / 1000];
  });

/**
 * Lays a climate over a season.
 *
 * The month's mean ratio to the clear sky is drawn smoothly from month to month and keeps every month's mean; ratios move
 * less with the height of the sun than clearness does, which matters in months of polar twilight.
 *
 * @param sun columns of the season
 * @param clear clear-sky columns made from them
 * @param year the clear sky of the whole year over the same site
 */
export const cloudSeason = (
  sun: SunColumns,
  clear: SkyColumns,
  year: ClearYear,
  climate: Pick<Climate, "globalKWhM2" | "uncertainty">,
  latitudeDeg: number,
): CloudSeason => {
  const means = dailyMeans(climate, year, latitudeDeg);
  const sums = daySums(sun, clear);
  const days = sun.days.map(({ date, month }, day): DayMean | null => {
    const [light, top] = sums[day] ?? [0, 0];
    if (!(light > 0)) return null;
    return {
      latitudeDeg,
      clearClearness: light / top,
      ratio: means[calendarIndex(date)] / light,
      uncertainty: climate.uncertainty.month[month - 1] ?? 0,
    };
  });
  return { latitudeDeg, days };
};
