import { turnBetween } from "../../units/angle.ts";
import { dateWords } from "../../units/dates.ts";
import { HIGHEST_FOR_A_SHADOW_DEG, noonShadowWords, type SunStand } from "./plain-directions.ts";

/** Where the sun stands at one day's solar noon. */
export interface NoonSun extends SunStand {
  /** ISO 8601 civil date. */
  readonly date: string;
}

/** What the noon shadow of a stick tells on a day: which way its foot lies from its tip, or why it tells nothing. */
type NoonSide = "south" | "north" | "overhead" | "down";

const noonSide = ({ altitudeDeg, bearingDeg }: SunStand): NoonSide => {
  if (altitudeDeg <= 0) return "down";
  if (altitudeDeg > HIGHEST_FOR_A_SHADOW_DEG) return "overhead";
  return Math.abs(turnBetween(180, bearingDeg)) < 90 ? "south" : "north";
};

/** Days in a row on which the stick tells the same. */
interface Stretch {
  readonly side: NoonSide;
  readonly noons: readonly NoonSun[];
}

const stretchesOf = (noons: readonly NoonSun[]): readonly Stretch[] => {
  const sides = noons.map(noonSide);
  const starts = sides.flatMap((side, day) => (side === sides[day - 1] ? [] : [day]));
  return starts.map((start, index) => ({ side: sides[start], noons: noons.slice(start, starts[index + 1]) }));
};

const sentenceOf = (bearingDeg: number, { side, noons }: Stretch, noonClock: string): string => {
  if (side === "overhead")
    return "The noon sun stands within 10° of overhead: a stick cannot tell the way; go by the compass.";
  return (
    noonShadowWords(bearingDeg, noons[Math.floor(noons.length / 2)], noonClock) ??
    "The sun stays down at noon: no stick can tell; go by the compass."
  );
};

/**
 * How to find a bearing from a stick's noon shadow, true on every day it is printed for: where the sun passes to another
 * side of the zenith in between, each stretch of dates has its own sentence.
 *
 * @param noons the period's days in order, at least one
 * @param noonClock the clock time of solar noon, `13:24`
 * @returns `null` where the noon sun stays down all the time
 * @example
 * stickWords(180, [{ date: "2027-05-01", bearingDeg: 180, altitudeDeg: 50 }], "13:24")
 * // "At solar noon (13:24) look along the shadow of an upright stick, from its tip to the stick's foot: that is true south. Face the panel straight along that line."
 */
export const stickWords = (
  bearingDeg: number,
  noons: readonly NoonSun[],
  noonClock: string,
): string | null => {
  const stretches = stretchesOf(noons);
  if (stretches.every(({ side }) => side === "down")) return null;
  if (stretches.length === 1) return sentenceOf(bearingDeg, stretches[0], noonClock);
  return stretches
    .map((stretch) => {
      const [first, last] = [stretch.noons[0], stretch.noons[stretch.noons.length - 1]];
      return `From ${dateWords(first.date)} to ${dateWords(last.date)}: ${sentenceOf(bearingDeg, stretch, noonClock)}`;
    })
    .join(" ");
};
