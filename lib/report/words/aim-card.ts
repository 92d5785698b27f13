import { clockOfMinutes } from "../../plan/clock.ts";
import { heightM, type Site } from "../../plan/site.ts";
import type { AimedPart, DayRoutine, Reaim } from "../../season/aiming/reaim.ts";
import { clockStretches, noonClocks } from "../../season/aiming/walk-clock.ts";
import type { Period } from "../../season/light/periods.ts";
import type { Setting } from "../../season/light/settings.ts";
import type { SeasonDay } from "../../sun/columns.ts";
import { compassBearing, type MagneticDeclination, magneticDeclination } from "../../sun/magnetic.ts";
import { sunVector } from "../../sun/position.ts";
import { toDegrees, turnBetween, wrapBearing } from "../../units/angle.ts";
import { dateWords } from "../../units/dates.ts";
import { MINUTE_MS } from "../../units/time.ts";
import { compassWords, type SunStand, sunwardWords } from "./plain-directions.ts";
import { type NoonSun, stickWords } from "./stick-words.ts";

/** One aim of a day as a person follows it outdoors. */
export interface AimCardLine {
  readonly setting: Setting;
  /** When to walk out and set it, in the site's clock time: `10:40`; the first aim of a day is set the evening before. */
  readonly when: string;
  /** Compass bearing, degrees; `null` where a compass is of no use. */
  readonly compassDeg: number | null;
  readonly compass: string;
  /** By the noon shadow of a stick; `null` when it tells nothing. */
  readonly byShadow: string | null;
  /** By the sun at the moment of walking out; `null` for the first aim, and when the sun is down or overhead. */
  readonly bySun: string | null;
}

/** What the cards of a season share. */
export interface CardPlace {
  readonly site: Site;
  readonly days: readonly SeasonDay[];
  /** Clock time of solar noon on each day, minutes after midnight. */
  readonly clocks: Float64Array;
}

/** Walks are told to five minutes: the sun moves a degree in four. */
const WALK_MINUTES = 5;

const FIRST_AIM = "the evening before, or before sunrise";

/** Makes ready what all cards of a season need. */
export const cardPlace = (site: Site, days: readonly SeasonDay[]): CardPlace => ({
  site,
  days,
  clocks: noonClocks(days, site.timeZone),
});

/** A moment of the day, stated from solar noon, on the clock, to five minutes; two clock times where the clocks change in between. */
export const walkWords = ({ days, clocks }: CardPlace, period: Period, afterNoon: number): string =>
  clockStretches(clocks, period, afterNoon)
    .map(({ first, minutes }, index) => {
      const clock = clockOfMinutes(Math.round(minutes / WALK_MINUTES) * WALK_MINUTES);
      return index === 0 ? clock : `from ${dateWords(days[first].date)} ${clock}`;
    })
    .join(", ");

/** Needle and north at a period's middle day. */
export const northOf = ({ site, days }: CardPlace, { first, end }: Period): MagneticDeclination =>
  magneticDeclination(
    site.latitudeDeg,
    site.longitudeDeg,
    heightM(site),
    days[Math.floor((first + end - 1) / 2)].noonMs,
  );

const sunStand = ({ site }: CardPlace, timeMs: number): SunStand => {
  const sun = sunVector(timeMs, site.latitudeDeg, site.longitudeDeg);
  return {
    bearingDeg: wrapBearing(toDegrees(Math.atan2(sun.east, sun.north))),
    altitudeDeg: toDegrees(Math.asin(sun.up)),
  };
};

/** A sentence about where the sun stands has to hold to this on every day it is printed for. Degrees: a fist. */
const MOST_SUN_SHIFT_DEG = 10;

/** Whether the sun stands in about the same direction at that time of every day of a period. */
const sunKeepsPlace = (place: CardPlace, { first, end }: Period, afterNoon: number): boolean => {
  const at = (day: number): number =>
    sunStand(place, place.days[day].noonMs + afterNoon * MINUTE_MS).bearingDeg;
  const middle = at(Math.floor((first + end - 1) / 2));
  return place.days
    .slice(first, end)
    .every((_, index) => Math.abs(turnBetween(middle, at(first + index))) <= MOST_SUN_SHIFT_DEG);
};

/**
 * The card of a routine: what to set when, and how to find the bearing by compass, by a stick's shadow and by the sun.
 * The stick's words hold on every day of the period; the sun's at the moment of walking out are left out where the sun
 * then stands elsewhere by more than a fist in the course of the period. Compass and clock are those of the middle day.
 */
export const aimCard = (place: CardPlace, period: Period, { parts }: DayRoutine): readonly AimCardLine[] => {
  const north = northOf(place, period);
  const { noonMs } = place.days[Math.floor((period.first + period.end - 1) / 2)];
  const noons = place.days
    .slice(period.first, period.end)
    .map((day): NoonSun => ({ date: day.date, ...sunStand(place, day.noonMs) }));
  const noonClock = walkWords(place, period, 0);
  return parts.map(({ setting, fromMinutes }: AimedPart, index): AimCardLine => {
    const { bearingDeg } = setting;
    return {
      setting,
      when: index === 0 ? FIRST_AIM : walkWords(place, period, fromMinutes),
      compassDeg: north.needle === "useless" ? null : compassBearing(bearingDeg, north.declinationDeg),
      compass: compassWords(bearingDeg, north),
      byShadow: stickWords(bearingDeg, noons, noonClock),
      bySun:
        index === 0 || !sunKeepsPlace(place, period, fromMinutes)
          ? null
          : sunwardWords(bearingDeg, sunStand(place, noonMs + fromMinutes * MINUTE_MS)),
    };
  });
};

/**
 * The routine of a period with at most so many aims a day; the whole season's where there is no period of that name.
 */
export const routineOf = (
  { periods }: Reaim,
  periodName: string,
  mostAims: number,
): { readonly period: Period; readonly routine: DayRoutine } => {
  const { period, routines } = periods.find((one) => one.period.name === periodName) ?? periods[0];
  return { period, routine: routines[Math.min(mostAims, routines.length) - 1] };
};
