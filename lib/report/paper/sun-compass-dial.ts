import { noonClocks } from "../../season/aiming/walk-clock.ts";
import type { SeasonDay } from "../../sun/columns.ts";
import { sunVector } from "../../sun/position.ts";
import type { SunPlace } from "../../sun/solar-day.ts";
import { toDegrees, toRadians } from "../../units/angle.ts";
import { DAY_MINUTES, MINUTE_MS } from "../../units/time.ts";

/**
 * The dial of a sun compass: rings for dates, lines for clock times. The shadow of an upright pin at its centre lies, at
 * a date and a clock time, through the point where their ring and line cross, once the dial's north is true north.
 * Only the shadow's direction is used, so the pin may have any length. Millimetres from the pin, x to the east, y to
 * the south, as on a page with north at the top.
 */
export interface SunCompassDial {
  readonly rings: readonly DateRing[];
  readonly lines: readonly ClockLine[];
}

/** A date and how far from the pin its ring lies. */
export interface DateRing {
  readonly date: string;
  readonly radiusMm: number;
  /** What makes it worth a name: it begins a month or the season, or the clocks change on it; `null` for a ring between. */
  readonly opens: "month" | "clock" | null;
}

/** A clock time through a run of dates on which the clock is not changed and the sun is fit to use. */
export interface ClockLine {
  /** Minutes after midnight. */
  readonly minutes: number;
  readonly points: readonly DialPoint[];
  /** Whether it starts, and ends, because the clocks change: the same shadow goes on under another hour. */
  readonly clockStarts: boolean;
  readonly clockEnds: boolean;
}

export interface DialPoint {
  readonly date: string;
  readonly xMm: number;
  readonly yMm: number;
}

export const DIAL_INNER_MM = 26;
export const DIAL_OUTER_MM = 74;

/** Below this altitude a shadow is washed out, degrees. */
const LOWEST_SUN_DEG = 4;
/** Above this one it is short and swings too fast to be read, degrees. */
export const HIGHEST_SUN_DEG = 75;

const EVERY_MINUTES = 30;
const EVERY_DAYS = 3;
const CLOCK_JUMP_MINUTES = 10;

/** How far from the pin a day's ring lies: from the inner ring on the season's first day to the outer on its last. */
export const ringRadiusMm = (day: number, days: number): number =>
  days < 2 ? DIAL_OUTER_MM : DIAL_INNER_MM + ((DIAL_OUTER_MM - DIAL_INNER_MM) * day) / (days - 1);

/** Where the shadow's ring is met at an instant, or `null` when the sun is too low or too high to use. */
const pointAt = (
  timeMs: number,
  date: string,
  radiusMm: number,
  { latitudeDeg, longitudeDeg }: SunPlace,
): DialPoint | null => {
  const sun = sunVector(timeMs, latitudeDeg, longitudeDeg);
  const altitudeDeg = toDegrees(Math.asin(sun.up));
  if (!(altitudeDeg >= LOWEST_SUN_DEG && altitudeDeg <= HIGHEST_SUN_DEG)) return null;
  // The shadow points away from the sun; the page's y grows southwards.
  const level = Math.cos(toRadians(altitudeDeg));
  return { date, xMm: (-sun.east / level) * radiusMm, yMm: (sun.north / level) * radiusMm };
};

/** Whether the clocks are changed between a day and the one before it. */
const clockChanges = (clocks: Float64Array, day: number): boolean =>
  day > 0 && day < clocks.length && Math.abs(clocks[day] - clocks[day - 1]) > CLOCK_JUMP_MINUTES;

const ringsOf = (days: readonly SeasonDay[], clocks: Float64Array): readonly DateRing[] =>
  days.flatMap(({ date }, day): DateRing[] => {
    const dayOfMonth = Number(date.slice(8));
    const opens = clockChanges(clocks, day) ? "clock" : dayOfMonth === 1 || day === 0 ? "month" : null;
    const shown = opens !== null || dayOfMonth === 11 || dayOfMonth === 21 || day === days.length - 1;
    return shown ? [{ date, radiusMm: ringRadiusMm(day, days.length), opens }] : [];
  });

/**
 * The dial for a place and a season.
 *
 * @param days the season's days, as the sun columns have them
 */
export const sunCompassDial = (place: SunPlace, days: readonly SeasonDay[]): SunCompassDial => {
  const clocks = noonClocks(days, place.timeZone);
  const lines: ClockLine[] = [];
  for (let minutes = 0; minutes < DAY_MINUTES; minutes += EVERY_MINUTES) {
    let points: DialPoint[] = [];
    let clockStarts = false;
    const close = (clockEnds: boolean) => {
      if (points.length > 1) lines.push({ minutes, points, clockStarts, clockEnds });
      points = [];
      clockStarts = clockEnds;
    };
    days.forEach(({ date, noonMs }, day) => {
      const changes = clockChanges(clocks, day);
      if (changes) close(true);
      const atAnEnd = changes || clockChanges(clocks, day + 1) || day === days.length - 1;
      if (day % EVERY_DAYS !== 0 && !atAnEnd) return;
      const timeMs = noonMs + (minutes - clocks[day]) * MINUTE_MS;
      const point = pointAt(timeMs, date, ringRadiusMm(day, days.length), place);
      if (point === null) close(false);
      else points.push(point);
    });
    close(false);
  }
  return { rings: ringsOf(days, clocks), lines };
};
