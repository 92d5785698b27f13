import { type StandGeometry, tiltDegOfLeg } from "../../stand/geometry.ts";
import type { SeasonDay } from "../../sun/columns.ts";
import { wrapBearing } from "../../units/angle.ts";
import { meanOver } from "../light/day-sums.ts";
import { type Period, periodsOf } from "../light/periods.ts";
import type { Setting } from "../light/settings.ts";
import type { AimEnergy, TiltLadder } from "./tilt-ladder.ts";

/** Bearings a stand may be off by, that costs are given for. Degrees. */
export const BEARING_ERRORS_DEG = [5, 10, 20, 30] as const;

/** What being a little off costs in one period, Wh a day: the worse of the two directions, never below 0. */
export interface ToleranceCost {
  readonly period: Period;
  /** What the setting brings when it is right, Wh a day. */
  readonly dayWh: number;
  /** A leg 1 mm too long or short; `null` for flat. */
  readonly perMmWh: number | null;
  /** A tilt 1 degree too steep or flat. */
  readonly perDegWh: number;
  /** A bearing off by 5, 10, 20, 30 degrees to either side, in that order. */
  readonly bearingWh: readonly number[];
}

const heldTilt = (tiltDeg: number): number => Math.min(90, Math.max(0, tiltDeg));

/** The tilt that a leg gives; where the stand can't follow, the one that is there anyway. */
const tiltOr = (stand: StandGeometry, legMm: number, elseDeg: number): number => {
  const tilt = tiltDegOfLeg(stand, legMm);
  return Number.isNaN(tilt) ? elseDeg : heldTilt(tilt);
};

/**
 * What small errors cost a setting that is kept all through a season, by period.
 * The season comes first, then its months.
 */
export const toleranceOf = (
  energy: AimEnergy,
  days: readonly SeasonDay[],
  stand: StandGeometry,
  setting: Setting,
): readonly ToleranceCost[] => {
  const { tiltDeg, bearingDeg, legMm } = setting;
  const right = energy(tiltDeg, bearingDeg);
  const both = (aim: (sign: 1 | -1) => Float64Array): readonly [Float64Array, Float64Array] => [
    aim(1),
    aim(-1),
  ];
  const byLeg =
    legMm === null ? null : both((sign) => energy(tiltOr(stand, legMm + sign, tiltDeg), bearingDeg));
  const byTilt = both((sign) => energy(heldTilt(tiltDeg + sign), bearingDeg));
  const byBearing = BEARING_ERRORS_DEG.map((error) =>
    both((sign) => energy(tiltDeg, wrapBearing(bearingDeg + sign * error))),
  );
  return periodsOf(days).map((period) => {
    const dayWh = meanOver(right, period);
    const cost = (wrong: readonly [Float64Array, Float64Array]): number =>
      Math.max(0, ...wrong.map((column) => dayWh - meanOver(column, period)));
    return {
      period,
      dayWh,
      perMmWh: byLeg && cost(byLeg),
      perDegWh: cost(byTilt),
      bearingWh: byBearing.map(cost),
    };
  });
};

/** The tilts that are good enough in one period. Degrees up from horizontal. */
export interface TiltBand {
  readonly period: Period;
  readonly bestTiltDeg: number;
  /** What the best brings, Wh a day. */
  readonly dayWh: number;
  /** Lowest and highest tilt within 1 % and within 3 % of the best. */
  readonly within1Pct: readonly [number, number];
  readonly within3Pct: readonly [number, number];
}

/**
 * The best tilt of each period and the band around it that is as good to 1 % and to 3 %. A period without light has
 * the whole ladder for its band.
 *
 * @param ladder tilts in rising order
 */
export const tiltBands = (ladder: TiltLadder): readonly TiltBand[] =>
  periodsOf(ladder.days).map((period) => {
    const means = ladder.dayWh.map((dayWh) => meanOver(dayWh, period));
    const dayWh = Math.max(...means);
    const within = (share: number): readonly [number, number] => {
      const good = (mean: number): boolean => mean >= (1 - share) * dayWh;
      return [ladder.tiltsDeg[means.findIndex(good)], ladder.tiltsDeg[means.findLastIndex(good)]];
    };
    return {
      period,
      bestTiltDeg: ladder.tiltsDeg[means.indexOf(dayWh)],
      dayWh,
      within1Pct: within(0.01),
      within3Pct: within(0.03),
    };
  });
