import { z } from "zod";
import { DAY_MINUTES, onClock } from "../units/time.ts";

const CLOCK = /^([01]\d|2[0-3]):([0-5]\d)$|^24:00$/;

/** A time of day on the clock of the site's zone, `18:30`; `24:00` is the end of the day. */
export const clockTime = z
  .string()
  .regex(CLOCK, "must be a clock time")
  .meta({ hint: '24-hour clock, "18:30"' });

/** Minutes after midnight of a clock time; 24:00 is 1440. */
export const clockMinutes = (clock: string): number => {
  const [hours = 0, minutes = 0] = clock.split(":").map(Number);
  return hours * 60 + minutes;
};

/** A number of minutes after midnight as a clock time, to the whole minute; past midnight it comes round again. */
export const clockOfMinutes = (minutes: number): string => {
  const whole = onClock(Math.round(minutes));
  return `${String(Math.floor(whole / 60)).padStart(2, "0")}:${String(whole % 60).padStart(2, "0")}`;
};

/** A part of the day on the clock: `from` may be later than `to`, over midnight. */
export interface ClockWindow {
  readonly from: string;
  readonly to: string;
}

/** Minutes from the beginning of a window to its end on a plain day; a whole day where both are the same time. */
export const windowMinutes = ({ from, to }: ClockWindow): number =>
  onClock(clockMinutes(to) - clockMinutes(from)) || DAY_MINUTES;
