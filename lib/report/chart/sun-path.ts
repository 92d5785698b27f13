import { sunVector } from "../../sun/position.ts";
import { toDegrees, turnBetween } from "../../units/angle.ts";
import { DAY_MINUTES, MINUTE_MS } from "../../units/time.ts";
import type { CardPlace } from "../words/aim-card.ts";

/** Minutes from one point of a path to the next: whole parts of an hour, so that the hours fall on points. */
export const PATH_MINUTES = 5;

/** A place of the sun on the chart: bearings are counted from the chart's middle, so that none jumps past north. */
export interface PathPoint {
  readonly turnDeg: number;
  readonly altitudeDeg: number;
  readonly afterNoon: number;
  readonly clock: number;
  readonly date: string;
  /** Tells the stretches of a path apart that the chart's edge cuts: where it runs out at one side and in at the other. */
  readonly stretch: string;
}

/** Two neighbouring points further apart than this lie at either side of the chart. */
const ACROSS_DEG = 180;

/** The sun's path above the horizon on one of the season's days, bearings counted from a middle one. */
export const pathOf = (
  { site, days, clocks }: CardPlace,
  day: number,
  middleDeg: number,
): readonly PathPoint[] => {
  const points: PathPoint[] = [];
  let cuts = 0;
  const { date, noonMs } = days[day];
  const first = Math.ceil((clocks[day] - DAY_MINUTES / 2) / PATH_MINUTES) * PATH_MINUTES;
  for (let clock = first; clock < clocks[day] + DAY_MINUTES / 2; clock += PATH_MINUTES) {
    const afterNoon = clock - clocks[day];
    const sun = sunVector(noonMs + afterNoon * MINUTE_MS, site.latitudeDeg, site.longitudeDeg);
    if (sun.up <= 0) continue;
    const turnDeg = turnBetween(middleDeg, toDegrees(Math.atan2(sun.east, sun.north)));
    const before = points.at(-1);
    if (before !== undefined && Math.abs(turnDeg - before.turnDeg) > ACROSS_DEG) cuts += 1;
    points.push({
      turnDeg,
      altitudeDeg: toDegrees(Math.asin(sun.up)),
      afterNoon,
      clock,
      date,
      stretch: `${date}/${cuts}`,
    });
  }
  return points;
};

/** Days whose paths frame the season: those with the lowest and the highest noon sun. */
export const framingDays = ({ days }: CardPlace): readonly number[] => {
  const byNoon = days.map((_, day) => day).sort((a, b) => days[a].noonAltitudeDeg - days[b].noonAltitudeDeg);
  return [...new Set([byNoon[0], byNoon[byNoon.length - 1]])];
};
