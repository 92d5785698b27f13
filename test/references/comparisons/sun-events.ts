/**
 * Sunrise, sunset and solar noon against the US Naval Observatory, to its whole minute. It counts the sun's upper limb,
 * with 34' of refraction and 16' of half-diameter: true altitude of the centre -50'. Ours, seen through suncalc's
 * refraction of 0.484 degrees at and under the horizon, is then at -0.349 degrees.
 */
import { sunVector } from "../../../lib/sun/position.ts";
import { solarDays } from "../../../lib/sun/solar-day.ts";
import { altitudeDegOf } from "../../sun/unrefracted.ts";
import { type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Case, type Comparison, nearZero } from "./comparison.ts";
import { idOf, numberOf } from "./fields.ts";

const LIMB_ON_HORIZON_DEG = -50 / 60 + 0.484;
const MINUTE_MS = 60_000;
const DAY_MS = 1440 * MINUTE_MS;

const placeOf = (row: ReferenceRow) => ({
  latitudeDeg: numberOf(row, "latitude_deg"),
  longitudeDeg: numberOf(row, "longitude_deg_east"),
  timeZone: "UTC",
});

const overLimbDeg = (row: ReferenceRow, timeMs: number): number => {
  const { latitudeDeg, longitudeDeg } = placeOf(row);
  return altitudeDegOf(sunVector(timeMs, latitudeDeg, longitudeDeg)) - LIMB_ON_HORIZON_DEG;
};

/** Minutes from the time stated to our own crossing, looked for up to 20 minutes to either side; NaN when there is none. */
const crossingErrorMin = (row: ReferenceRow, statedMs: number): number => {
  let before = statedMs - 20 * MINUTE_MS;
  let after = statedMs + 20 * MINUTE_MS;
  const rising = row.event === "rise";
  if (overLimbDeg(row, before) > 0 === rising || overLimbDeg(row, after) > 0 !== rising) return Number.NaN;
  while (after - before > 100) {
    const middle = (before + after) / 2;
    if (overLimbDeg(row, middle) > 0 === rising) after = middle;
    else before = middle;
  }
  return (before - statedMs) / MINUTE_MS;
};

const transitErrorMin = (row: ReferenceRow, dayMs: number, statedMs: number): number => {
  const date = (offsetDays: number) => new Date(dayMs + offsetDays * DAY_MS).toISOString().slice(0, 10);
  const errors = solarDays(placeOf(row), { from: date(-1), to: date(1) }).map(
    ({ noonMs }) => (noonMs - statedMs) / MINUTE_MS,
  );
  return errors.reduce((least, error) => (Math.abs(error) < Math.abs(least) ? error : least));
};

/** Lowest (up all day) or highest (down all day) the limb comes: must lie on its side of the horizon. */
const allDayCase = (row: ReferenceRow, dayMs: number): Case => {
  const altitudes = Array.from({ length: 1440 }, (_, minute) => overLimbDeg(row, dayMs + minute * MINUTE_MS));
  const up = row.event === "sun_up_all_day";
  const holds = up ? Math.min(...altitudes) > 0 : Math.max(...altitudes) < 0;
  return absolute(idOf(row), holds ? 1 : 0, 1, 0);
};

const eventCase = (row: ReferenceRow): Case => {
  const dayMs = Date.parse(`${row.date_utc}T00:00Z`);
  const statedMs = Date.parse(`${row.date_utc}T${row.time_utc_hhmm}Z`);
  const error =
    row.event === "transit" ? transitErrorMin(row, dayMs, statedMs) : crossingErrorMin(row, statedMs);
  return nearZero(idOf(row), error, numberOf(row, "tolerance_min"));
};

const days = readReference("sun-events-day.csv");
const years = readReference("sun-events-year.csv");
const ofKind = (rows: readonly ReferenceRow[], ...events: string[]) =>
  rows.filter(({ event }) => events.includes(event ?? ""));

export const sunEvents: readonly Comparison[] = [
  {
    quantity: "sunrise, sunset",
    reference: "US Naval Observatory, days of many places and two years of rise and set",
    unit: "minutes",
    cause: "half a minute of rounding and what a tenth of a minute of arc makes at a grazing sun",
    count: 315,
    cases: () => ofKind([...days, ...years], "rise", "set").map(eventCase),
  },
  {
    quantity: "solar noon",
    reference: "US Naval Observatory",
    unit: "minutes",
    cause: "half a minute of rounding, and a little",
    count: 102,
    cases: () => ofKind(days, "transit").map(eventCase),
  },
  {
    quantity: "sun up, or down, all day (1 when it is)",
    reference: "US Naval Observatory",
    unit: "1",
    cause: "a fact",
    count: 31,
    cases: () =>
      ofKind(days, "sun_up_all_day", "sun_down_all_day").map((row) =>
        allDayCase(row, Date.parse(`${row.date_utc}T00:00Z`)),
      ),
  },
];
