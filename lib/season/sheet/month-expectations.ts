import { mean, quantile } from "d3";
import { judgedWh, type SeasonYield } from "../light/season-yield.ts";

/** What a month can be expected to bring with the legs changed as the calendar says. Wh a day, all panels. */
export interface MonthExpectation {
  /** `2027-06`. */
  readonly month: string;
  readonly meanWh: number;
  /** Nine days in ten bring more than p10, one in ten more than p90; `null` when only the clear sky is known. */
  readonly p10Wh: number | null;
  readonly p90Wh: number | null;
}

/**
 * What each month brings when every day has the setting that is in use on it: the mean, and the spread of single days
 * over the month's days and all expected skies (each sky counted by its share).
 */
export const monthExpectations = (
  { days, settings, weights }: SeasonYield,
  inUse: Uint8Array,
): readonly MonthExpectation[] => {
  const months = [...new Set(days.map(({ date }) => date.slice(0, 7)))];
  // Skies of unequal share are repeated in proportion, to whole parts of the least likely one.
  const least = Math.min(...weights);
  const copies = weights.map((weight) => Math.max(1, Math.round(weight / least)));
  return months.map((month): MonthExpectation => {
    const own = days.flatMap(({ date }, day) => (date.startsWith(month) ? [day] : []));
    const expected = own.map((day) => judgedWh(settings[inUse[day]])[day]);
    const single = own.flatMap((day) =>
      settings[inUse[day]].underEachSky.flatMap((dayWh, sky) => Array<number>(copies[sky]).fill(dayWh[day])),
    );
    return {
      month,
      meanWh: mean(expected) ?? 0,
      p10Wh: quantile(single, 0.1) ?? null,
      p90Wh: quantile(single, 0.9) ?? null,
    };
  });
};
