import { Temporal } from "temporal-polyfill";
import { clockOfMinutes } from "../../plan/clock.ts";
import type { DayCurves } from "../../season/light/day-curves.ts";
import { HOUR_MS, MINUTE_MS } from "../../units/time.ts";

/** A clock reading of an hour count that may lie outside the day. @example clockText(25.5) // "01:30" */
export const clockText = (hour: number): string => clockOfMinutes(hour * 60);

/**
 * Hours on the site's clock for each step, counted on from the midnight before the day's solar noon, so that a
 * sun that is up past midnight is not cut in two.
 */
export const clockHours = (
  { day, timeMs }: Pick<DayCurves, "day" | "timeMs">,
  timeZone: string,
): Float64Array => {
  // Read once at solar noon: on the night a clock changes, hours then run on without a jump.
  const noon = Temporal.Instant.fromEpochMilliseconds(Math.round(day.noonMs)).toZonedDateTimeISO(timeZone);
  const midnightMs = noon.epochMilliseconds - (noon.hour * 60 + noon.minute) * MINUTE_MS - noon.second * 1000;
  return timeMs.map((ms) => (ms - midnightMs) / HOUR_MS);
};
