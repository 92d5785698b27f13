import { Temporal } from "temporal-polyfill";
import { type ClockWindow, clockMinutes, windowMinutes } from "../plan/clock.ts";
import { DAY_MINUTES, MINUTE_MS } from "../units/time.ts";

/** Hours from the beginning of a window to its end on a plain day. @example windowHours({ from: "22:00", to: "02:00" }) // 4 */
export const windowHours = (window: ClockWindow): number => windowMinutes(window) / 60;

/** A civil date of a zone, ready for its clock times. */
export interface CivilDay {
  /** ISO 8601 weekday, Monday 1. */
  readonly dayOfWeek: number;
  /** UTC milliseconds at which a window that begins on this date starts and ends. */
  readonly window: (window: ClockWindow) => readonly [fromMs: number, toMs: number];
}

/**
 * Civil dates of a zone, from the one before an instant to the one after another, each ready to say when its clock
 * windows begin and end. Where clocks are put forward or back inside a window, it is shorter or longer; a clock time
 * that does not exist is read an hour later, one that comes twice is read as its first.
 */
export const civilDays = (fromMs: number, toMs: number, timeZone: string): readonly CivilDay[] => {
  const dateOf = (ms: number) =>
    Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(timeZone).toPlainDate();
  const first = dateOf(fromMs).subtract({ days: 1 });
  const count = first.until(dateOf(toMs)).days + 2;
  const dates = Array.from({ length: count }, (_, day) => first.add({ days: day }));
  const midnightMs = [...dates, first.add({ days: count }), first.add({ days: count + 1 })].map(
    (date) => date.toZonedDateTime(timeZone).epochMilliseconds,
  );
  return dates.map((date, index) => {
    const plain = [0, 1].every(
      (next) => midnightMs[index + next + 1] - midnightMs[index + next] === DAY_MINUTES * MINUTE_MS,
    );
    const at = (minutes: number): number => {
      if (plain) return midnightMs[index] + minutes * MINUTE_MS;
      const plainTime = new Temporal.PlainTime(Math.floor((minutes % DAY_MINUTES) / 60), minutes % 60);
      return date.add({ days: Math.floor(minutes / DAY_MINUTES) }).toZonedDateTime({ timeZone, plainTime })
        .epochMilliseconds;
    };
    return {
      dayOfWeek: date.dayOfWeek,
      window: (window) => {
        const from = clockMinutes(window.from);
        return [at(from), at(from + windowMinutes(window))];
      },
    };
  });
};
