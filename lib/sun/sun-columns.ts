import { clampedAsin, toDegrees, toRadians } from "../plan/angle.ts";
import type { SeasonDay, SunColumns } from "./columns.ts";
import { spencerDeclinationDeg } from "./orbit.ts";
import { sunVector } from "./position.ts";
import { type DateSpan, type SunPlace, solarDays } from "./solar-day.ts";
import { hoursLit } from "./sun-up.ts";

/** Minutes from one row to the next where nothing else is asked for. */
export const DEFAULT_STEP_MINUTES = 10;

const MINUTE_MS = 60_000;
const DAY_MINUTES = 1440;
const MOST_DAYS = 0xffff; // `day` is a column of 16-bit indices

/**
 * A rough altitude below this, in degrees, proves night. Refraction lifts the sun by 0.48 at the horizon; the rough
 * altitude is off by up to 0.6 from the declination series, and by 0.4 from its drift within the day and the calendar.
 */
const SURELY_NIGHT_DEG = -2;

/** The instants looked at in every solar day, in minutes from its start: both ends, noon, and each step's midpoint. */
const instantsOfDay = (stepMinutes: number) => {
  const midpoints = Array.from({ length: DAY_MINUTES / stepMinutes }, (_, i) => (i + 0.5) * stepMinutes);
  const morning = midpoints.filter((minute) => minute < DAY_MINUTES / 2);
  const noon = morning.length + 1;
  const minutes = [0, ...morning, DAY_MINUTES / 2, ...midpoints.slice(morning.length), DAY_MINUTES];
  return {
    sinceStartMs: Float64Array.from(minutes, (minute) => minute * MINUTE_MS),
    cosHourAngle: Float64Array.from(minutes, (minute) => -Math.cos((2 * Math.PI * minute) / DAY_MINUTES)),
    isMidpoint: minutes.map((_, i) => i !== 0 && i !== noon && i !== minutes.length - 1),
    rows: midpoints.length,
    count: minutes.length,
  };
};

/**
 * The sun's path through a season: for every step of every whole solar day in which the sun is in sight at the step's
 * midpoint, the instant and the unit vector to the apparent sun.
 *
 * Steps are counted from each day's solar noon outwards, so that both halves of a day are sampled alike. A solar day is
 * up to 30 s longer or shorter than 24 hours; that seam lies at solar midnight, where it weighs least.
 * A day of midnight sun has all its rows, a day of polar night has none.
 *
 * @param stepMinutes must divide 1440 evenly
 * @throws RangeError for a step that does not, and as `solarDays` does
 * @example sunColumns({ latitudeDeg: 52, longitudeDeg: 5, timeZone: "Europe/Amsterdam" },
 *   { from: "2027-06-21", to: "2027-06-21" }).days[0]?.sunHours // 16.63
 */
export const sunColumns = (
  place: SunPlace,
  span: DateSpan,
  stepMinutes: number = DEFAULT_STEP_MINUTES,
): SunColumns => {
  if (!(stepMinutes > 0 && Number.isInteger(DAY_MINUTES / stepMinutes)))
    throw new RangeError(
      `sunColumns: expected a step that divides 1440 minutes evenly, received ${stepMinutes}`,
    );
  const solar = solarDays(place, span);
  if (solar.length > MOST_DAYS)
    throw new RangeError(`sunColumns: expected at most ${MOST_DAYS} days, received ${solar.length}`);

  const { latitudeDeg, longitudeDeg } = place;
  const upAt = (ms: number): number => sunVector(ms, latitudeDeg, longitudeDeg).up;
  const latitude = toRadians(latitudeDeg);
  const surelyNight = Math.sin(toRadians(SURELY_NIGHT_DEG));

  const instants = instantsOfDay(stepMinutes);
  const instantMs = new Float64Array(instants.count);
  const instantUp = new Float64Array(instants.count);

  const mostRows = solar.length * instants.rows;
  const timeMs = new Float64Array(mostRows);
  const east = new Float64Array(mostRows);
  const north = new Float64Array(mostRows);
  const up = new Float64Array(mostRows);
  const day = new Uint16Array(mostRows);
  let length = 0;

  const days = solar.map((solarDay, index): SeasonDay => {
    const first = length;
    const declination = toRadians(spencerDeclinationDeg(solarDay.dayOfYear));
    const level = Math.sin(latitude) * Math.sin(declination);
    const swing = Math.cos(latitude) * Math.cos(declination);
    for (let i = 0; i < instants.count; i++) {
      const ms = solarDay.startMs + (instants.sinceStartMs[i] ?? 0);
      instantMs[i] = ms;
      if (level + swing * (instants.cosHourAngle[i] ?? 0) < surelyNight) {
        instantUp[i] = -1;
        continue;
      }
      const sun = sunVector(ms, latitudeDeg, longitudeDeg);
      instantUp[i] = sun.up;
      if (sun.up > 0 && instants.isMidpoint[i]) {
        timeMs[length] = ms;
        east[length] = sun.east;
        north[length] = sun.north;
        up[length] = sun.up;
        day[length] = index;
        length++;
      }
    }
    return {
      ...solarDay,
      first,
      end: length,
      noonAltitudeDeg: toDegrees(clampedAsin(upAt(solarDay.noonMs))),
      sunHours: hoursLit(instantMs, instantUp, instants.count, upAt),
    };
  });

  return {
    stepMinutes,
    days,
    length,
    timeMs: timeMs.slice(0, length),
    east: east.slice(0, length),
    north: north.slice(0, length),
    up: up.slice(0, length),
    day: day.slice(0, length),
  };
};
