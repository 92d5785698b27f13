/** Bearings in words that can be followed outdoors, without an instrument or with a compass. */

import { compassBearing, type MagneticDeclination } from "../../sun/magnetic.ts";
import { turnBetween } from "../../units/angle.ts";
import { dateWords, isoDate } from "../../units/dates.ts";

/** Where the sun stands at a moment. Degrees from true north, degrees above level. */
export interface SunStand {
  readonly bearingDeg: number;
  readonly altitudeDeg: number;
}

/** Within 10 degrees of overhead a stick's shadow is shorter than a fifth of the stick, and its direction hard to tell. */
export const HIGHEST_FOR_A_SHADOW_DEG = 80;

/** A fist at arm's length, thumb tucked in, is about ten degrees wide (common practice, no source). */
const FIST_DEG = 10;
const MOST_FISTS = 6;

const NUMBERS = ["no", "one", "two", "three", "four", "five", "six"];

/** A turn as fists at arm's length, or nothing where that is no help. */
const fistWords = (turnDeg: number): string => {
  const fists = Math.round(Math.abs(turnDeg) / FIST_DEG);
  if (fists < 1 || fists > MOST_FISTS) return "";
  return ` (${NUMBERS[fists]} ${fists === 1 ? "fist" : "fists"} at arm's length)`;
};

/** "20° to the left of": how far to turn from a line that can be seen. Negative is left. */
const turnWords = (turnDeg: number, line: string): string => {
  const whole = Math.round(turnDeg);
  if (whole === 0) return `straight ${line === "the sun" ? "at the sun" : `along ${line}`}`;
  if (Math.abs(whole) === 180)
    return `straight away from ${line === "the sun" ? "the sun" : `${line}, behind you`}`;
  return `${Math.abs(whole)}° to the ${whole < 0 ? "left" : "right"} of ${line}${fistWords(whole)}`;
};

/**
 * How to find a bearing from the shadow of an upright stick at solar noon, which lies along true north and south.
 *
 * @param noonSun where the sun stands at solar noon
 * @param noonClock the clock time of solar noon, `13:24`
 * @returns `null` when the noon sun is down, or so high that a shadow tells nothing
 * @example noonShadowWords(160, { bearingDeg: 180, altitudeDeg: 50 }, "13:24")
 * // "At solar noon (13:24) look along the shadow of an upright stick, from its tip to the stick's foot: that is true south. Face the panel 20° to the left of that line (two fists at arm's length)."
 */
export const noonShadowWords = (bearingDeg: number, noonSun: SunStand, noonClock: string): string | null => {
  if (!(noonSun.altitudeDeg > 0 && noonSun.altitudeDeg <= HIGHEST_FOR_A_SHADOW_DEG)) return null;
  const towards = Math.abs(turnBetween(180, noonSun.bearingDeg)) < 90 ? 180 : 0;
  const turn = turnWords(turnBetween(towards, bearingDeg), "that line");
  return (
    `At solar noon (${noonClock}) look along the shadow of an upright stick, from its tip to the stick's foot: that is true ` +
    `${towards === 180 ? "south" : "north"}. Face the panel ${turn}.`
  );
};

/**
 * How to face the panel by the sun itself, at the moment of walking out.
 *
 * @returns `null` when the sun is down or almost overhead
 * @example sunwardWords(160, { bearingDeg: 135, altitudeDeg: 30 }) // "Face the panel 25° to the right of the sun (three fists at arm's length); never look into it."
 */
export const sunwardWords = (bearingDeg: number, sun: SunStand): string | null => {
  if (!(sun.altitudeDeg > 0 && sun.altitudeDeg <= HIGHEST_FOR_A_SHADOW_DEG)) return null;
  return `Face the panel ${turnWords(turnBetween(sun.bearingDeg, bearingDeg), "the sun")}; never look into it.`;
};

/**
 * A true bearing as a compass shows it, with where that comes from and how far it can be trusted.
 *
 * @example
 * const north = magneticDeclination(52, 5, 0, Date.UTC(2027, 0, 1));
 * compassWords(125, north) // "122° by compass (the needle points 3° east of true north here; WMM-2025, valid to 13 November 2029)."
 */
export const compassWords = (bearingDeg: number, north: MagneticDeclination): string => {
  if (north.needle === "useless") return "A compass is of no use here: the magnetic pole is too near.";
  const { declinationDeg } = north;
  const off = Math.round(Math.abs(declinationDeg));
  const where =
    off === 0
      ? "the needle points to true north here, within half a degree"
      : `the needle points ${off}° ${declinationDeg > 0 ? "east" : "west"} of true north here`;
  const dayOf = (ms: number): string => dateWords(isoDate(ms));
  const valid = north.dateCovered
    ? `valid to ${dayOf(north.validToMs)}`
    : `which is valid from ${dayOf(north.validFromMs)} to ${dayOf(north.validToMs)} only: look up a value for this date`;
  const unsteady =
    north.needle === "unsteady" ? " The magnetic pole is near: expect the needle to swing." : "";
  const shown = Math.round(compassBearing(bearingDeg, declinationDeg)) % 360;
  return `${shown}° by compass (${where}; ${north.model}, ${valid}).${unsteady}`;
};
