import { clampedAsin, toDegrees } from "../units/angle.ts";
import { DAY_MINUTES, HOUR_MS, MINUTE_MS } from "../units/time.ts";
import type { SeasonDay, SunColumns } from "./columns.ts";
import { meridianOf } from "./meridian.ts";
import { type DateSpan, type SunPlace, solarDaysOver } from "./solar-day.ts";
import { type PathColumns, sunPathOver } from "./sun-path.ts";
import { sunlitSpans } from "./sun-up.ts";

/** Minutes from one row to the next where nothing else is asked for. */
export const DEFAULT_STEP_MINUTES = 10;

const MOST_DAYS = 0xffff; // `day` is a column of 16-bit indices
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
    hourAngle: Float64Array.from(minutes, (minute) => (2 * Math.PI * minute) / DAY_MINUTES - Math.PI),
    /** Where the midpoint of each step stands among the instants. */
    ofStep: midpoints.map((_, step) => step + (step < morning.length ? 1 : 2)),
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
  const meridian = meridianOf(place.longitudeDeg);
  const solar = solarDaysOver(place, span, meridian);
  if (solar.length > MOST_DAYS)
    throw new RangeError(`sunColumns: expected at most ${MOST_DAYS} days, received ${solar.length}`);

  const instants = instantsOfDay(stepMinutes);
  const { count, sinceStartMs, ofStep } = instants;
  const path = sunPathOver(place.latitudeDeg, instants.hourAngle);
  const stepMs = stepMinutes * MINUTE_MS;
  const instantMs = new Float64Array(count);
  const look = (startMs: number): void => {
    for (let i = 0; i < count; i += 1) instantMs[i] = startMs + sinceStartMs[i];
  };

  // Looked at twice: memory for every step of every night would cost more than the sun does.
  let mostRows = 0;
  const arcsOfDays = solar.map(({ dayNumber, startMs, noonMs }) => {
    const day = meridian(dayNumber);
    look(startMs);
    const arcs = sunlitSpans(instantMs, path.through(day, noonMs).up, (ms) => path.at(day, ms).up);
    for (const { fromMs, toMs } of arcs) mostRows += Math.ceil((toMs - fromMs) / stepMs) + 1;
    return arcs;
  });

  const column = () => new Float64Array(mostRows);
  const [timeMs, hours, east, north, up] = [column(), column(), column(), column(), column()];
  const dayOfRow = new Uint16Array(mostRows);
  let row = 0;
  const add = (ms: number, lengthMs: number, sun: PathColumns, at: number): void => {
    timeMs[row] = ms;
    hours[row] = lengthMs / HOUR_MS;
    east[row] = sun.east[at];
    north[row] = sun.north[at];
    up[row] = sun.up[at];
    row += 1;
  };

  const days = solar.map(({ dayNumber, ...labels }, index): SeasonDay => {
    const { startMs, noonMs } = labels;
    const stepsFromMs = startMs + LAG_STEPS * stepMs;
    const first = row;
    const day = meridian(dayNumber);
    const arcs = arcsOfDays[index];
    look(startMs);
    const suns = path.through(day, noonMs);
    for (const { fromMs, toMs } of arcs) {
      const lastStep = Math.min(ofStep.length - 1, Math.floor((toMs - stepsFromMs) / stepMs));
      for (let step = Math.floor((fromMs - stepsFromMs) / stepMs); step <= lastStep; step += 1) {
        const stepFromMs = stepsFromMs + step * stepMs;
        const litFromMs = Math.max(fromMs, stepFromMs);
        const litToMs = Math.min(toMs, stepFromMs + stepMs);
        if (litToMs - litFromMs === stepMs) {
          add(instantMs[ofStep[step]], stepMs, suns, ofStep[step]);
        } else if (litToMs > litFromMs) {
          const middleMs = (litFromMs + litToMs) / 2;
          const sun = path.at(day, middleMs);
          timeMs[row] = middleMs;
          hours[row] = (litToMs - litFromMs) / HOUR_MS;
          [east[row], north[row], up[row]] = [sun.east, sun.north, sun.up];
          row += 1;
        }
      }
    }
    dayOfRow.fill(index, first, row);
    return {
      ...labels,
      first,
      end: row,
      noonAltitudeDeg: toDegrees(clampedAsin(path.at(day, noonMs).up)),
      sunHours: arcs.reduce((sum, { fromMs, toMs }) => sum + (toMs - fromMs) / HOUR_MS, 0),
    };
  });
  return {
    stepMinutes,
    days,
    length: row,
    timeMs: timeMs.subarray(0, row),
    hours: hours.subarray(0, row),
    east: east.subarray(0, row),
    north: north.subarray(0, row),
    up: up.subarray(0, row),
    day: dayOfRow.subarray(0, row),
  };
};
