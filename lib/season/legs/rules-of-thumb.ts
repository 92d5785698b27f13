import { latitudeTilt, lorenzoTilt, noonTilt, summerTilt, winterTilt } from "../../stand/angle-rules.ts";
import type { SeasonDay } from "../../sun/columns.ts";
import { spencerDeclinationDeg } from "../../sun/orbit.ts";
import { between, placeAmong } from "../../units/interpolation.ts";
import { totalWh } from "../light/day-sums.ts";
import type { TiltLadder } from "./tilt-ladder.ts";

/** A rule for the tilt and what it brings beside the computed best. Wh over the season. */
export interface RuleOfThumb {
  readonly rule: string;
  /** Lowest and highest tilt the rule asks for, degrees up from horizontal; alike when it never changes. */
  readonly tiltDeg: readonly [number, number];
  /** Whether it asks for changes during the season; it is then held against the best tilt of each day. */
  readonly changes: boolean;
  readonly totalWh: number;
  /** What is lost against the computed best of its kind, Wh, and as a share of it. 0 or more but for rounding. */
  readonly lossWh: number;
  readonly lossShare: number;
}

/** Declination at which summer rules hand over to winter rules: the equinoxes. */
const isSummer = (latitudeDeg: number, declinationDeg: number): boolean => latitudeDeg * declinationDeg > 0;

/** Wh of a day at a tilt between two rungs of the ladder, by a straight line. */
const dayWhAt = (
  tiltsDeg: readonly number[],
  columns: readonly Float64Array[],
  day: number,
  tiltDeg: number,
): number => {
  const { below, share } = placeAmong(tiltsDeg, tiltDeg);
  return between(columns[below][day], (columns[below + 1] ?? columns[below])[day], share);
};

/**
 * Rules of thumb against the computed best: the latitude, 15 degrees less in the summer half-year and more in the
 * winter half-year, square to the noon sun of each day, a yearly fit, and flat. Fixed rules are held against the best
 * fixed tilt, changing ones against the best tilt of every day.
 *
 * @param ladder rising tilts from 0 to 90 degrees
 * @throws RangeError when the ladder does not reach from flat to upright
 */
export const rulesOfThumb = (ladder: TiltLadder, latitudeDeg: number): readonly RuleOfThumb[] => {
  const { days, tiltsDeg, dayWh: columns } = ladder;
  if (tiltsDeg[0] !== 0 || tiltsDeg.at(-1) !== 90) {
    throw new RangeError(
      `rulesOfThumb: expected tilts from 0 to 90 degrees, received ${tiltsDeg[0]} to ${tiltsDeg.at(-1)}`,
    );
  }
  const totalOf = (tiltOn: (day: number) => number): number =>
    days.reduce((sum, _, day) => sum + dayWhAt(tiltsDeg, columns, day, tiltOn(day)), 0);
  const declinations = days.map(({ dayOfYear }: SeasonDay) => spencerDeclinationDeg(dayOfYear));
  const totals = columns.map(totalWh);
  const bestFixedWh = Math.max(...totals);
  const bestDailyWh = days.reduce((sum, _, day) => sum + Math.max(...columns.map((dayWh) => dayWh[day])), 0);

  const held = (rule: string, changes: boolean, tilts: readonly number[]): RuleOfThumb => {
    const totalWh = totalOf((day) => tilts[day]);
    const bestWh = changes ? bestDailyWh : bestFixedWh;
    return {
      rule,
      tiltDeg: [Math.min(...tilts), Math.max(...tilts)],
      changes,
      totalWh,
      lossWh: bestWh - totalWh,
      lossShare: bestWh > 0 ? 1 - totalWh / bestWh : 0,
    };
  };
  const always = (rule: string, tiltDeg: number): RuleOfThumb =>
    held(
      rule,
      false,
      days.map(() => tiltDeg),
    );
  const bestTilt = tiltsDeg[totals.indexOf(bestFixedWh)];
  const bestOfDay = days.map((_, day) => {
    const of = columns.map((dayWh) => dayWh[day]);
    return tiltsDeg[of.indexOf(Math.max(...of))];
  });
  return [
    always("computed best, never changed", bestTilt),
    always("latitude", latitudeTilt(latitudeDeg)),
    always("latitude less 15", summerTilt(latitudeDeg)),
    always("latitude plus 15", winterTilt(latitudeDeg)),
    always("3.7 + 0.69 x latitude", lorenzoTilt(latitudeDeg)),
    always("flat", 0),
    held("computed best of every day", true, bestOfDay),
    held(
      "latitude less 15 in summer, plus 15 in winter",
      true,
      declinations.map((declination) =>
        isSummer(latitudeDeg, declination) ? summerTilt(latitudeDeg) : winterTilt(latitudeDeg),
      ),
    ),
    held(
      "square to the noon sun: latitude less declination",
      true,
      declinations.map((declination) => noonTilt(latitudeDeg, declination)),
    ),
  ];
};
