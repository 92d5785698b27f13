import { clampedAsin, type Direction, toDegrees, toRadians } from "../units/angle.ts";
import { DAY_MINUTES, HOUR_MS, MINUTE_MS } from "../units/time.ts";
import type { SeasonDay, SunColumns } from "./columns.ts";
import { spencerDeclinationDeg } from "./orbit.ts";
import { sunVector } from "./position.ts";
import { type DateSpan, type SunPlace, solarDays } from "./solar-day.ts";
import { sunlitSpans } from "./sun-up.ts";

/** Minutes from one row to the next where nothing else is asked for. */
export const DEFAULT_STEP_MINUTES = 10;

const MOST_DAYS = 0xffff; // `day` is a column of 16-bit indices
/** Arcs of sun in one solar day: one, two where it only dips at a midnight, and one to spare for a pole's spiral. */
const MOST_ARCS = 3;

/**
 * A rough altitude below this, in degrees, proves night. Refraction lifts the sun by 0.48 at the horizon; the rough
 * altitude is off by up to 0.6 from the declination series, and by 0.4 from its drift within the day and the calendar.
 */
const SURELY_NIGHT_DEG = -2;

/** Stands for the sun when a rough look has shown that it is far down. */
const NIGHT: Direction = { east: 0, north: 0, up: -1 };

/**
 * Steps are counted not from solar midnight but a quarter of a step after it. A sky model with jumps (Perez's bins of
 * clearness) then meets each of them at one place within a step before noon and at another after it, so that their
 * errors do not add up: at 10 minutes the worst day of any aim comes out twice as well.
 */
export const LAG_STEPS = 0.25;

/** The instants looked at in every solar day: where its steps begin and end, its noon, and each step's midpoint. */
const instantsOfDay = (stepMinutes: number) => {
  const midpoints = Array.from(
    { length: DAY_MINUTES / stepMinutes },
    (_, i) => (i + 0.5 + LAG_STEPS) * stepMinutes,
  );
  const morning = midpoints.filter((minute) => minute < DAY_MINUTES / 2);
  const afternoon = midpoints.slice(morning.length);
  const lag = LAG_STEPS * stepMinutes;
  const minutes = [lag, ...morning, DAY_MINUTES / 2, ...afternoon, DAY_MINUTES + lag];
  return {
    count: minutes.length,
    sinceStartMs: Float64Array.from(minutes, (minute) => minute * MINUTE_MS),
    cosHourAngle: Float64Array.from(minutes, (minute) => -Math.cos((2 * Math.PI * minute) / DAY_MINUTES)),
    /** Where the midpoint of each step stands among the instants. */
    ofStep: midpoints.map((_, step) => step + (step < morning.length ? 1 : 2)),
  };
};

/** Columns that rows are added to, one after the other. */
const growingColumns = (mostRows: number) => {
  const column = () => new Float64Array(mostRows);
  const [timeMs, hours, east, north, up] = [column(), column(), column(), column(), column()];
  const day = new Uint16Array(mostRows);
  let length = 0;
  return {
    rows: () => length,
    add: (dayIndex: number, ms: number, lengthMs: number, sun: Direction) => {
      day[length] = dayIndex;
      timeMs[length] = ms;
      hours[length] = lengthMs / HOUR_MS;
      east[length] = sun.east;
      north[length] = sun.north;
      up[length] = sun.up;
      length += 1;
    },
    done: () => ({
      length,
      timeMs: timeMs.slice(0, length),
      hours: hours.slice(0, length),
      east: east.slice(0, length),
      north: north.slice(0, length),
      up: up.slice(0, length),
      day: day.slice(0, length),
    }),
  };
};

/**
 * The sun's path through a season: for every step of every whole solar day in which the sun is in sight, the unit vector
 * to the apparent sun at the middle of the step, or of its sunlit part where the sun rises or sets within it.
 *
 * Cutting the first and last step at the horizon matters: light on an upright plane that faces the sunrise starts
 * steeply, and with whole steps its day would be wrong by up to 20 Wh/m2.
 * Every day has 24 hours of steps, while a solar day is up to 30 s longer or shorter; that seam lies by solar midnight,
 * where it weighs least.
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

  const sunAt = (ms: number): Direction => sunVector(ms, place.latitudeDeg, place.longitudeDeg);
  const upAt = (ms: number): number => sunAt(ms).up;
  const latitude = toRadians(place.latitudeDeg);
  const surelyNight = Math.sin(toRadians(SURELY_NIGHT_DEG));

  const { count, sinceStartMs, cosHourAngle, ofStep } = instantsOfDay(stepMinutes);
  const stepMs = stepMinutes * MINUTE_MS;
  const instantMs = new Float64Array(count);
  const instantUp = new Float64Array(count);
  const instantSun: Direction[] = Array.from({ length: count }, () => NIGHT);
  const columns = growingColumns(solar.length * (ofStep.length + MOST_ARCS));

  const days = solar.map((solarDay, index): SeasonDay => {
    const { startMs } = solarDay;
    const stepsFromMs = startMs + LAG_STEPS * stepMs;
    const first = columns.rows();
    const declination = toRadians(spencerDeclinationDeg(solarDay.dayOfYear));
    const level = Math.sin(latitude) * Math.sin(declination);
    const swing = Math.cos(latitude) * Math.cos(declination);
    for (let i = 0; i < count; i += 1) {
      instantMs[i] = startMs + sinceStartMs[i];
      const deepNight = level + swing * cosHourAngle[i] < surelyNight;
      instantSun[i] = deepNight ? NIGHT : sunAt(instantMs[i]);
      instantUp[i] = instantSun[i].up;
    }

    const arcs = sunlitSpans(instantMs, instantUp, upAt);
    for (const { fromMs, toMs } of arcs) {
      const lastStep = Math.min(ofStep.length - 1, Math.floor((toMs - stepsFromMs) / stepMs));
      for (let step = Math.floor((fromMs - stepsFromMs) / stepMs); step <= lastStep; step += 1) {
        const stepFromMs = stepsFromMs + step * stepMs;
        const litFromMs = Math.max(fromMs, stepFromMs);
        const litToMs = Math.min(toMs, stepFromMs + stepMs);
        if (litToMs - litFromMs === stepMs) {
          columns.add(index, instantMs[ofStep[step]], stepMs, instantSun[ofStep[step]]);
        } else if (litToMs > litFromMs) {
          const middleMs = (litFromMs + litToMs) / 2;
          columns.add(index, middleMs, litToMs - litFromMs, sunAt(middleMs));
        }
      }
    }
    return {
      ...solarDay,
      first,
      end: columns.rows(),
      noonAltitudeDeg: toDegrees(clampedAsin(upAt(solarDay.noonMs))),
      sunHours: arcs.reduce((sum, { fromMs, toMs }) => sum + (toMs - fromMs) / HOUR_MS, 0),
    };
  });
  return { stepMinutes, days, ...columns.done() };
};
