/**
 * Is the file's clock the one it claims? Over clear days the light is symmetrical about solar noon, so the middle of the
 * light tells by how much the stamps slip.
 */

import { equationOfTimeMinutes, spencerDeclinationDeg } from "../../../sun/orbit.ts";
import type { Problem } from "../../../units/problem.ts";
import { DAY_MINUTES, DAY_MS, MINUTE_MS, onClock } from "../../../units/time.ts";
import { dailyExtraterrestrial } from "../../extraterrestrial.ts";
import { SHARE_BEFORE, type StampPlace, type WeatherGrid } from "./grid.ts";
import type { WeatherPlace } from "./interval-sun.ts";

/** How far the light's middle lies from solar noon on the clearest days. */
export interface ClockSlip {
  /** Minutes; positive when the light comes late by the file's clock. */
  readonly minutes: number;
  /** Days it was taken from. */
  readonly days: number;
}

/** Fewer clear days than this say nothing. */
const LEAST_DAYS = 8;
/** Light that crosses the ridge of a hill or a cloudy afternoon pulls the middle by up to a quarter of an hour. */
const LEAST_SLIP_MINUTES = 20;
/** A cause explains a slip when it comes this close to it. */
const CLOSE_MINUTES = 13;

const MEAN_NOON_MS = DAY_MS / 2;

interface DayLight {
  readonly clearness: number;
  readonly slipMinutes: number;
}

const median = (sorted: readonly number[]): number => {
  const half = sorted.length >> 1;
  const upper = sorted[half];
  return sorted.length % 2 === 1 ? upper : (upper + sorted[half - 1]) / 2;
};

/** Milliseconds from mean solar midnight at the place to the instant, with the equation of time put in. */
const solarMs = (timeMs: number, longitudeDeg: number): number => {
  const dayOfYear = 1 + (Math.floor(timeMs / DAY_MS) % 365.25);
  return timeMs + (longitudeDeg / 360) * DAY_MS + equationOfTimeMinutes(dayOfYear) * MINUTE_MS;
};

/**
 * By how much a file's light comes early or late, from its clearest third of days. `null` when there are too few days
 * with light to tell, as in a fortnight or a polar winter.
 *
 * Measured on open files whose clocks are known to be right: within 3 minutes over a year, within 10 over a month.
 */
export const clockSlip = (
  grid: WeatherGrid,
  { latitudeDeg, longitudeDeg }: WeatherPlace,
): ClockSlip | null => {
  const global = grid.columns.get("global");
  if (global === undefined) return null;
  const intervalMs = grid.intervalMinutes * MINUTE_MS;
  const solarAt = (i: number): number => solarMs(grid.startMs + (i + 0.5) * intervalMs, longitudeDeg);

  // A first look, round the clock: where the light's mean direction points, whatever the slip.
  let east = 0;
  let south = 0;
  for (let i = 0; i < grid.length; i += 1) {
    const light = global[i];
    if (!(light > 0)) continue;
    const angle = (2 * Math.PI * (solarAt(i) - MEAN_NOON_MS)) / DAY_MS;
    east += light * Math.sin(angle);
    south += light * Math.cos(angle);
  }
  const roughMs = (Math.atan2(east, south) / (2 * Math.PI)) * DAY_MS;

  // Then day by day, cut at the midnights that this look gives.
  const perDay = DAY_MS / intervalMs;
  const days: DayLight[] = [];
  let today = Number.NaN;
  let sum = 0;
  let moment = 0;
  let seen = 0;
  const closeDay = (): void => {
    if (seen < perDay - 1 || sum <= 0) return;
    const dayOfYear = 1 + (today % 365.25);
    const above = dailyExtraterrestrial(latitudeDeg, spencerDeclinationDeg(dayOfYear), 1361);
    const hours = grid.intervalMinutes / 60;
    if (above > 500) {
      days.push({
        clearness: (sum * hours) / above,
        slipMinutes: moment / sum / MINUTE_MS + roughMs / MINUTE_MS,
      });
    }
  };
  for (let i = 0; i < grid.length; i += 1) {
    const light = global[i];
    const solar = solarAt(i) - roughMs;
    const day = Math.floor(solar / DAY_MS);
    if (day !== today) {
      closeDay();
      today = day;
      sum = 0;
      moment = 0;
      seen = 0;
    }
    if (Number.isNaN(light)) continue;
    seen += 1;
    sum += light;
    moment += light * (solar - day * DAY_MS - MEAN_NOON_MS);
  }
  closeDay();

  const clearest = days.toSorted((a, b) => b.clearness - a.clearness).slice(0, Math.ceil(days.length / 3));
  if (clearest.length < LEAST_DAYS) return null;
  const slips = clearest.map(({ slipMinutes }) => slipMinutes).sort((a, b) => a - b);
  return { minutes: median(slips), days: clearest.length };
};

const wholeMinutes = (minutes: number): string =>
  `${Math.abs(Math.round(minutes))} min ${minutes > 0 ? "late" : "early"}`;

const zoneOf = (minutes: number): string => {
  const halfHours = Math.round(minutes / 30);
  const hours = Math.abs(halfHours) / 2;
  return `UTC${halfHours < 0 ? "-" : "+"}${hours}`;
};

/** Minutes from one time of day to another, the short way round. */
const apart = (a: number, b: number): number => Math.abs(onClock(a - b + DAY_MINUTES / 2) - DAY_MINUTES / 2);

/** What would explain a slip, each with its mend, the closest first. */
const causesOf = (
  slip: number,
  intervalMinutes: number,
  stamps: StampPlace,
  longitudeDeg: number,
): readonly string[] => {
  const others = (["start", "centre", "end"] as const).filter((other) => other !== stamps);
  const halfHours = Math.round(slip / 30) * 30;
  const causes = [
    ...others.map((other) => ({
      explained: intervalMinutes * (SHARE_BEFORE[other] - SHARE_BEFORE[stamps]),
      mend: `stamps look like interval ${other === "centre" ? "centres" : `${other}s`}: set stamps to "${other}"`,
    })),
    { explained: halfHours, mend: `stamps look like local time, ${zoneOf(slip)}: turn them into UTC` },
    // Four minutes a degree, from the one side of Greenwich to the other.
    { explained: 8 * longitudeDeg, mend: "the site's longitude may have the wrong sign: west is negative" },
  ];
  return causes
    .filter(({ explained }) => Math.abs(explained) > CLOSE_MINUTES && apart(slip, explained) < CLOSE_MINUTES)
    .toSorted((a, b) => apart(slip, a.explained) - apart(slip, b.explained))
    .map(({ mend }) => mend);
};

/**
 * The complaint about a clock that slips by more than 20 minutes, with what would mend it; `null` when it is right or
 * nothing can be told.
 */
export const clockProblem = (
  grid: WeatherGrid,
  place: WeatherPlace,
  stamps: StampPlace,
  file: string,
): Problem | null => {
  const slip = clockSlip(grid, place);
  if (slip === null || Math.abs(slip.minutes) <= LEAST_SLIP_MINUTES) return null;
  const causes = [
    ...causesOf(slip.minutes, grid.intervalMinutes, stamps, place.longitudeDeg),
    "hills may hide the morning or evening sun: if the stamps are right, set checkClock to false",
  ];
  return {
    path: `${file} stamp`,
    value: `light comes ${wholeMinutes(slip.minutes)} against the sun on ${slip.days} clear days`,
    allowed: `must be UTC, the ${stamps} of each interval, at the site's longitude`,
    hint: causes.join("; or "),
  };
};
