/**
 * The sun's way through a day, from its slow drift over the meridian: a rotation from one instant to the next in place of the
 * whole series at each.
 */
import { type Direction, toRadians } from "../units/angle.ts";
import { DAY_MS } from "../units/time.ts";
import { type MeridianDay, meridianAt } from "./meridian.ts";
import { tabledRefraction } from "./refraction.ts";

/** Unit vectors to the apparent sun, one for each instant; at night only the sign of `up` is meant. */
export interface PathColumns {
  readonly east: Float64Array;
  readonly north: Float64Array;
  readonly up: Float64Array;
}

/** Sine of a true altitude from which the lift of the horizon, 0.0084, does not reach up to 0. */
const SURELY_DOWN = -0.01;

/** The sun over one latitude. */
export interface SunPath {
  /** The apparent sun at one instant of a day. */
  readonly at: (day: MeridianDay, timeMs: number) => Direction;
  /** The apparent sun at all instants of a day; the columns are written anew by the next call. */
  readonly through: (day: MeridianDay, noonMs: number) => PathColumns;
}

/**
 * Makes the paths of a latitude.
 *
 * Within 0.001 degrees of `sunVector` in altitude and bearing, within 89.9 degrees of latitude and half a degree of the
 * zenith, on every day of 1950 to 2100 (tested).
 *
 * @param hourAngles of the instants that `through` gives, radians from solar noon
 */
export const sunPathOver = (latitudeDeg: number, hourAngles: Float64Array): SunPath => {
  const [sinLatitude, cosLatitude] = [Math.sin(toRadians(latitudeDeg)), Math.cos(toRadians(latitudeDeg))];
  const [cosines, sines] = [hourAngles.map(Math.cos), hourAngles.map(Math.sin)];
  const [east, north, up] = [0, 1, 2].map(() => new Float64Array(hourAngles.length));

  /** Lifts a true direction by the air: a turn upwards in its own vertical plane. */
  const at = (day: MeridianDay, timeMs: number): Direction => {
    const { sinDeclination, cosDeclination, hourAngle } = meridianAt(day, timeMs);
    const towards = cosDeclination * Math.cos(hourAngle);
    const trueUp = sinLatitude * sinDeclination + cosLatitude * towards;
    const level = Math.sqrt(Math.max(0, 1 - trueUp * trueUp));
    const lift = tabledRefraction(trueUp);
    const scale = level > 0 ? Math.cos(lift) - (trueUp / level) * Math.sin(lift) : 1;
    return {
      east: -cosDeclination * Math.sin(hourAngle) * scale,
      north: (cosLatitude * sinDeclination - sinLatitude * towards) * scale,
      up: trueUp * Math.cos(lift) + level * Math.sin(lift),
    };
  };

  const through = (day: MeridianDay, noonMs: number): PathColumns => {
    const xNoon = (noonMs - day.meanNoonMs) / DAY_MS;
    const { sinDeclination: s, cosDeclination: c, ahead } = day;
    for (let i = 0; i < up.length; i += 1) {
      // Days from solar noon, and from the mean noon that the drifts count from.
      const since = hourAngles[i] / (2 * Math.PI);
      const x = xNoon + since;
      // The hour angle runs ahead of the clock by a thousandth of a radian at most in half a day: two terms of its sine do.
      const extra = since * (ahead.drift + (x + xNoon) * ahead.bend);
      const cosExtra = 1 - extra * extra * 0.5;
      const cosHour = cosines[i] * cosExtra - sines[i] * extra;
      const sinHour = sines[i] * cosExtra + cosines[i] * extra;
      const sinDeclination = s.start + x * (s.drift + x * s.bend);
      const cosDeclination = c.start + x * (c.drift + x * c.bend);
      const towards = cosDeclination * cosHour;
      const trueUp = sinLatitude * sinDeclination + cosLatitude * towards;
      // No air lifts it into sight from there.
      if (trueUp < SURELY_DOWN) {
        up[i] = trueUp;
        continue;
      }
      const level = Math.sqrt(Math.max(0, 1 - trueUp * trueUp));
      const lift = tabledRefraction(trueUp);
      // Half a degree at most: these terms are its sine and cosine to 1e-9.
      const [sinLift, cosLift] = [lift - (lift * lift * lift) / 6, 1 - lift * lift * 0.5];
      const scale = level > 0 ? cosLift - (trueUp / level) * sinLift : 1;
      east[i] = -cosDeclination * sinHour * scale;
      north[i] = (cosLatitude * sinDeclination - sinLatitude * towards) * scale;
      up[i] = trueUp * cosLift + level * sinLift;
    }
    return { east, north, up };
  };

  return { at, through };
};
