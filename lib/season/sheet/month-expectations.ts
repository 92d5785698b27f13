import { mean, quantile } from "d3";
import type { SeasonDay } from "../../sun/columns.ts";

/** What a month can be expected to bring with the legs changed as the calendar says, Wh a day. */
export interface MonthExpectation {
  /** `2027-06`. */
  readonly month: string;
  /** Mean of what all panels make. */
  readonly panelsWh: number;
  /** Mean of what the circuit can put into a battery that takes it all: what a controller would count. */
  readonly batteryWh: number;
  /** Of single days into the battery: nine in ten bring more than p10, one in ten more than p90; `null` without cloud. */
  readonly p10Wh: number | null;
  readonly p90Wh: number | null;
}

/** Wh of each day under a sky, and that sky's share. */
export interface SkyDays {
  readonly weight: number;
  readonly dayWh: Float64Array;
}

/**
 * What each month brings: the means, and the spread of single days over the month's days and all skies, each sky counted
 * by its share.
 *
 * @param panelsWh what all panels make on each day
 * @param battery what reaches the battery on each day, under each sky
 * @param cloudIn whether the skies have cloud in them: the clear sky alone has no spread to tell
 */
export const monthExpectations = (
  days: readonly Pick<SeasonDay, "date">[],
  panelsWh: Float64Array,
  battery: readonly SkyDays[],
  cloudIn: boolean,
): readonly MonthExpectation[] => {
  const months = [...new Set(days.map(({ date }) => date.slice(0, 7)))];
  // Skies of unequal share are repeated in proportion, to whole parts of the least likely one.
  const least = Math.min(...battery.map(({ weight }) => weight));
  const copies = battery.map(({ weight }) => Math.max(1, Math.round(weight / least)));
  return months.map((month): MonthExpectation => {
    const own = days.flatMap(({ date }, day) => (date.startsWith(month) ? [day] : []));
    const single = own.flatMap((day) =>
      battery.flatMap(({ dayWh }, sky) => Array<number>(copies[sky]).fill(dayWh[day])),
    );
    const quantileOf = (share: number): number | null => (cloudIn ? (quantile(single, share) ?? null) : null);
    return {
      month,
      panelsWh: mean(own, (day) => panelsWh[day]) ?? 0,
      batteryWh: mean(own, (day) => battery.reduce((sum, sky) => sum + sky.weight * sky.dayWh[day], 0)) ?? 0,
      p10Wh: quantileOf(0.1),
      p90Wh: quantileOf(0.9),
    };
  });
};
