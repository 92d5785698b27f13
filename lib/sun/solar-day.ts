/**
 * Whole solar days: 12 hours to either side of each solar noon, so that no arc of the sun is ever cut in two,
 * labelled by the civil date of that noon in the site's zone.
 */

import { Temporal } from "temporal-polyfill";
import { DAY_MS } from "../units/time.ts";
import { type Meridian, meridianOf, solarNoonMs } from "./meridian.ts";

/** Where on Earth, and whose clock. Degrees, south and west negative; the zone is an IANA name. */
export interface SunPlace {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly timeZone: string;
}

/** Civil dates, ISO 8601, both ends counted. A season that wraps the new year simply ends in the next year. */
export interface DateSpan {
  readonly from: string;
  readonly to: string;
}

/** A solar day before the sun's path through it is known. */
export interface SolarDay {
  /** Days since 1970 on the meridian of Greenwich. */
  readonly dayNumber: number;
  readonly date: string;
  readonly dayOfYear: number;
  readonly month: number;
  readonly startMs: number;
  readonly noonMs: number;
}

const HALF_DAY_MS = DAY_MS / 2;
const MS_PER_DEGREE = DAY_MS / 360;

const civilNoon = (date: Temporal.PlainDate, timeZone: string): Temporal.ZonedDateTime =>
  date.toZonedDateTime({ timeZone, plainTime: "12:00" });

const offsetMs = (date: Temporal.PlainDate, timeZone: string): number =>
  civilNoon(date, timeZone).offsetNanoseconds / 1e6;

/** False for a date the zone jumped over, as Samoa did with 30 December 2011 when it crossed the date line. */
const tookPlace = (date: Temporal.PlainDate, timeZone: string): boolean =>
  civilNoon(date, timeZone).toPlainDate().equals(date);

/**
 * The solar days of a span of civil dates: one for every date that the zone had, in order, none left out or doubled.
 *
 * Where the clock is within an hour or so of half a day off the sun (the South Pole on New Zealand time), solar
 * noon drifts over civil midnight in the course of a year. Then the first date fixes which noon goes with which
 * date, and the count goes on from there; only a move of the zone across the date line changes it.
 *
 * @throws RangeError when `to` comes before `from`, a date or a zone is unknown, a coordinate is out of range, or a date lies
 * outside the years 1900 to 2150
 * @example
 * const place = { latitudeDeg: 52, longitudeDeg: 5, timeZone: "Europe/Amsterdam" };
 * const [day] = solarDays(place, { from: "2027-06-21", to: "2027-06-21" });
 * new Date(day.noonMs).toISOString().slice(11, 16) // "11:41"
 */
export const solarDays = (place: SunPlace, span: DateSpan): readonly SolarDay[] =>
  solarDaysOver(place, span, meridianOf(place.longitudeDeg));

/** {@link solarDays} over a meridian that is looked at further. */
export const solarDaysOver = (place: SunPlace, span: DateSpan, meridian: Meridian): readonly SolarDay[] => {
  const { latitudeDeg, longitudeDeg, timeZone } = place;
  if (!(Math.abs(latitudeDeg) <= 90))
    throw new RangeError(`solarDays: expected latitude -90 to 90 degrees, received ${latitudeDeg}`);
  if (!(Math.abs(longitudeDeg) <= 180))
    throw new RangeError(`solarDays: expected longitude -180 to 180 degrees, received ${longitudeDeg}`);
  const first = Temporal.PlainDate.from(span.from);
  const last = Temporal.PlainDate.from(span.to);
  if (Temporal.PlainDate.compare(first, last) > 0)
    throw new RangeError(`solarDays: expected "to" on or after ${span.from}, received ${span.to}`);

  const firstOffsetMs = offsetMs(first, timeZone);
  const daysAhead = Math.round((firstOffsetMs - longitudeDeg * MS_PER_DEGREE) / DAY_MS);
  // Asking the zone about every date costs as much as the sun's whole path, and hardly any season crosses the line.
  const crossesDateLine = Math.abs(offsetMs(last, timeZone) - firstOffsetMs) >= HALF_DAY_MS;

  const days: SolarDay[] = [];
  for (let date = first; Temporal.PlainDate.compare(date, last) <= 0; date = date.add({ days: 1 })) {
    if (crossesDateLine && !tookPlace(date, timeZone)) continue;
    const crossed = crossesDateLine ? Math.round((offsetMs(date, timeZone) - firstOffsetMs) / DAY_MS) : 0;
    const dayNumber = Date.UTC(date.year, date.month - 1, date.day) / DAY_MS - daysAhead - crossed;
    const noonMs = solarNoonMs(meridian(dayNumber));
    days.push({
      dayNumber,
      date: date.toString(),
      dayOfYear: date.dayOfYear,
      month: date.month,
      startMs: noonMs - HALF_DAY_MS,
      noonMs,
    });
  }
  return days;
};
