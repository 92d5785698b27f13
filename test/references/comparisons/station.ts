/** Light on tilted sensors computed from light measured on the level, and how far it is from what they read. */

import { type DiffuseSplit, SKY_TO_PLANE, type SkyToPlane } from "../../../lib/plan/sky.ts";
import { domeColumns, martinRuizGlass, planeColumns } from "../../../lib/plane/index.ts";
import { airMassOfSine } from "../../../lib/sky/air-mass.ts";
import { birdClearLight, type ClearAir } from "../../../lib/sky/bird.ts";
import type { SkyColumns } from "../../../lib/sky/columns.ts";
import { extraterrestrialClock } from "../../../lib/sky/extraterrestrial.ts";
import { SPLITS } from "../../../lib/sky/weather/lay/split.ts";
import type { SunColumns } from "../../../lib/sun/columns.ts";
import { equationOfTimeMinutes } from "../../../lib/sun/orbit.ts";
import { sunVector } from "../../../lib/sun/position.ts";
import type { Aim } from "../../../lib/units/angle.ts";

/** Sun lower than this is left out: sensors and horizons are at their worst there. */
const LEAST_ALTITUDE_DEG = 3;

/** A day counts when this share of its steps was measured. */
const LEAST_SHARE_OF_STEPS = 0.9;

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;

/** Where a station is, and what its air and ground are taken to be where that matters. */
export interface Station {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** Air of its clear sky, which one of the diffuse splits looks at. */
  readonly air: ClearAir;
  /** Ground reflectance under that clear sky. */
  readonly clearSkyAlbedo: number;
}

/** What was measured on the level, W/m2, one entry a step with the sun above 3 degrees. */
export interface Level {
  /** Middle of the step, UTC milliseconds. */
  readonly timeMs: Float64Array;
  readonly global: Float64Array;
  /** Ground reflectance at each step. */
  readonly albedo: Float64Array;
}

/** Which steps have the sun above 3 degrees at their middle. */
export const sunnySteps = (station: Station, timeMs: Float64Array): readonly number[] => {
  const least = Math.sin((LEAST_ALTITUDE_DEG * Math.PI) / 180);
  return [...timeMs.keys()].filter(
    (step) => sunVector(timeMs[step], station.latitudeDeg, station.longitudeDeg).up > least,
  );
};

/** Sun columns at given instants; days are civil dates in UTC, which no sun arc of the stations here crosses. */
export const sunAt = (station: Station, timeMs: Float64Array): SunColumns => {
  const { length } = timeMs;
  const sun = Array.from(timeMs, (ms) => sunVector(ms, station.latitudeDeg, station.longitudeDeg));
  return {
    stepMinutes: 10,
    days: [],
    length,
    timeMs,
    hours: new Float64Array(length).fill(1 / 6),
    east: Float64Array.from(sun, ({ east }) => east),
    north: Float64Array.from(sun, ({ north }) => north),
    up: Float64Array.from(sun, ({ up }) => up),
    day: Uint16Array.from(timeMs, (ms) => Math.floor((ms - timeMs[0]) / DAY_MS)),
  };
};

const dayOfYear = (ms: number): number =>
  1 + Math.floor((ms - Date.UTC(new Date(ms).getUTCFullYear(), 0, 1)) / DAY_MS);

/** Diffuse light of each step from the global light alone, by a published split. */
export const splitDiffuse = (
  station: Station,
  sun: SunColumns,
  level: Level,
  split: DiffuseSplit,
): Float64Array => {
  const { length, timeMs, up } = sun;
  const normalAt = extraterrestrialClock();
  const normal = Float64Array.from(timeMs, normalAt);
  const shares = new Float64Array(length);
  SPLITS[split](
    {
      length,
      global: level.global,
      above: normal.map((each, step) => each * up[step]),
      clear: normal.map(
        (each, step) =>
          birdClearLight(each, up[step], airMassOfSine(up[step]), station.air, station.clearSkyAlbedo).global,
      ),
      sine: up,
      solarHour: timeMs.map((ms) => {
        const meanHour = (ms % DAY_MS) / HOUR_MS + station.longitudeDeg / 15;
        return (meanHour + equationOfTimeMinutes(dayOfYear(ms)) / 60 + 24) % 24;
      }),
      day: Int32Array.from(sun.day),
    },
    shares,
  );
  return shares.map((share, step) => share * level.global[step]);
};

/** Sky columns of measured light; beam is what diffuse leaves of global, held below the extraterrestrial. */
export const measuredSky = (sun: SunColumns, level: Level, diffuse: Float64Array): SkyColumns => {
  const normalAt = extraterrestrialClock();
  const extraterrestrial = sun.timeMs.map(normalAt);
  return {
    length: sun.length,
    global: level.global,
    diffuse,
    beamNormal: level.global.map((global, step) =>
      Math.min(extraterrestrial[step], Math.max(0, (global - diffuse[step]) / sun.up[step])),
    ),
    extraterrestrial,
    airMass: sun.up.map(airMassOfSine),
    albedo: level.albedo,
    airC: new Float64Array(sun.length),
    windMs: new Float64Array(sun.length),
  };
};

/** One day of one plane: what was computed and what was read, sums of W/m2 over its steps. */
export interface PlaneDay {
  readonly date: string;
  readonly computed: number;
  readonly measured: number;
}

/** The days of one plane on which nearly every step was measured. */
export const planeDays = (
  sun: SunColumns,
  sky: SkyColumns,
  aim: Aim,
  measured: Float64Array,
  model: SkyToPlane,
): readonly PlaneDay[] => {
  const { plane } = planeColumns(sun, domeColumns(sun, sky, model), aim, martinRuizGlass());
  const days = new Map<string, { steps: number; read: number; computed: number; measured: number }>();
  for (let step = 0; step < sun.length; step += 1) {
    const date = new Date(sun.timeMs[step]).toISOString().slice(0, 10);
    const day = days.get(date) ?? { steps: 0, read: 0, computed: 0, measured: 0 };
    days.set(date, day);
    day.steps += 1;
    if (Number.isNaN(measured[step]) || Number.isNaN(plane[step])) continue;
    day.read += 1;
    day.computed += plane[step];
    day.measured += measured[step];
  }
  return [...days]
    .filter(([, { steps, read }]) => read >= LEAST_SHARE_OF_STEPS * steps)
    .map(([date, { computed, measured: sum }]) => ({ date, computed, measured: sum }));
};

/** Bias and root-mean-square error of daily sums, per cent of the mean measured day. */
export interface DailyError {
  readonly days: number;
  readonly biasPct: number;
  readonly rmsePct: number;
}

/** The daily error over any days, of one plane or of several together. */
export const dailyError = (days: readonly PlaneDay[]): DailyError => {
  const measured = days.reduce((sum, day) => sum + day.measured, 0);
  const computed = days.reduce((sum, day) => sum + day.computed, 0);
  const squares = days.reduce((sum, day) => sum + (day.computed - day.measured) ** 2, 0);
  return {
    days: days.length,
    biasPct: 100 * (computed / measured - 1),
    rmsePct: (100 * Math.sqrt(squares / days.length)) / (measured / days.length),
  };
};

/** One plane of a station, computed by every model. */
export interface PlaneRun {
  readonly aim: Aim;
  readonly byModel: Readonly<Record<SkyToPlane, readonly PlaneDay[]>>;
}

/** A plane by every sky-to-plane model. */
export const planeRun = (sun: SunColumns, sky: SkyColumns, aim: Aim, measured: Float64Array): PlaneRun => ({
  aim,
  byModel: {
    perez: planeDays(sun, sky, aim, measured, "perez"),
    "hay-davies": planeDays(sun, sky, aim, measured, "hay-davies"),
    isotropic: planeDays(sun, sky, aim, measured, "isotropic"),
  },
});

/** The days of several planes together. */
export const pooled = (runs: readonly PlaneRun[], model: SkyToPlane): readonly PlaneDay[] =>
  runs.flatMap(({ byModel }) => byModel[model]);

/** All models, the default first. */
export const MODELS: readonly SkyToPlane[] = SKY_TO_PLANE;
