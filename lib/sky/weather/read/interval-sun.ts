/**
 * Where the sun is during each interval of a file: what light there can be at all.
 */

import { sunVector } from "../../../sun/position.ts";
import { DAY_MS, MINUTE_MS } from "../../../units/time.ts";
import { extraterrestrialClock } from "../../extraterrestrial.ts";
import type { WeatherGrid } from "./grid.ts";

/** A place on Earth; south and west negative, degrees. */
export interface WeatherPlace {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** Means over each interval, W/m2 where it is light. */
export interface IntervalSun {
  /** Share of the interval with the sun in sight, 0..1. */
  readonly lit: Float64Array;
  /** Highest sine of the sun's altitude among the moments looked at; negative at night. */
  readonly highest: Float64Array;
  /** Extraterrestrial horizontal irradiance. */
  readonly above: Float64Array;
  /** Extraterrestrial normal irradiance times sin(altitude)^1.2, which the limits of checked data are built on. */
  readonly limitBase: Float64Array;
}

/** An interval is looked at every ten minutes or so; a shorter one in its middle. */
const LOOK_MINUTES = 10;

/** The sine of the sun's altitude can't rise faster than the Earth turns: 2 pi in a day. */
const FASTEST_RISE_PER_MS = (2 * Math.PI) / DAY_MS;
/** Sine that counts as deep night, below every limit that is looked at. */
const DEEP_NIGHT = -0.06;

/** The sun through every interval of a grid. */
export const intervalSun = (
  { intervalMinutes, startMs, length }: Pick<WeatherGrid, "intervalMinutes" | "startMs" | "length">,
  { latitudeDeg, longitudeDeg }: WeatherPlace,
): IntervalSun => {
  const looks = Math.max(1, Math.round(intervalMinutes / LOOK_MINUTES));
  const lookMs = (intervalMinutes * MINUTE_MS) / looks;
  const normalAt = extraterrestrialClock();
  const lit = new Float64Array(length);
  const highest = new Float64Array(length).fill(-1);
  const above = new Float64Array(length);
  const limitBase = new Float64Array(length);
  let darkUntilMs = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < length; i += 1) {
    for (let look = 0; look < looks; look += 1) {
      const timeMs = startMs + i * intervalMinutes * MINUTE_MS + (look + 0.5) * lookMs;
      if (timeMs < darkUntilMs) continue;
      const { up } = sunVector(timeMs, latitudeDeg, longitudeDeg);
      darkUntilMs = timeMs + (DEEP_NIGHT - up) / FASTEST_RISE_PER_MS;
      if (up > highest[i]) highest[i] = up;
      if (up <= 0) continue;
      const normal = normalAt(timeMs) / looks;
      lit[i] += 1 / looks;
      above[i] += normal * up;
      limitBase[i] += normal * up ** 1.2;
    }
  }
  return { lit, highest, above, limitBase };
};
