/** What a station's twelve means say of tilted planes, against what its own hours say. */

import type { SkyColumns } from "../../../lib/sky/columns.ts";
import type { Aim } from "../../../lib/units/angle.ts";
import { type HourlyYear, hoursOnPlanes } from "./hourly-year.ts";
import { expectedOnPlanes, monthSums, skiesOfMonths } from "./place.ts";

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** Months that bring a plane less are dark: kWh/m2 in the month. */
const LEAST_LIGHT = 1;

/** A month on a plane, by hours and from twelve means. */
export interface PlaneMonth {
  /** 0 (January) to 11. */
  readonly month: number;
  readonly hoursWhM2Day: number;
  readonly expectedWhM2Day: number;
  readonly errorPct: number;
}

/** One plane at one station. */
export interface PlaneYear {
  readonly name: string;
  readonly tiltDeg: number;
  /** Each month with light. */
  readonly months: readonly PlaneMonth[];
  readonly yearPct: number;
}

/** Tilts compared at a station: a gentle one, its latitude, a steep one; all towards the equator. */
export const tiltsAt = ({ latitudeDeg }: HourlyYear): readonly number[] => [
  ...new Set([30, Math.round(Math.abs(latitudeDeg)), 60]),
];

/** A station's planes from its twelve means against those from its hours. */
export const hoursAgainstMonths = (place: HourlyYear): readonly PlaneYear[] => {
  const aims = tiltsAt(place).map(
    (tiltDeg): Aim => ({ tiltDeg, bearingDeg: place.latitudeDeg < 0 ? 0 : 180 }),
  );
  const { over, global, planes } = hoursOnPlanes(place, aims);
  const means = MONTH_DAYS.map((days, month) => global[month] / days);
  const expected = expectedOnPlanes(over, place, means, aims);
  return aims.map(({ tiltDeg }, index) => {
    const [ours, theirs] = [expected[index], planes[index]];
    const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);
    return {
      name: place.name,
      tiltDeg,
      months: MONTH_DAYS.flatMap((days, month): PlaneMonth[] =>
        theirs[month] < LEAST_LIGHT
          ? []
          : [
              {
                month,
                hoursWhM2Day: (1000 * theirs[month]) / days,
                expectedWhM2Day: (1000 * ours[month]) / days,
                errorPct: 100 * (ours[month] / theirs[month] - 1),
              },
            ],
      ),
      yearPct: 100 * (sum(ours) / sum(theirs) - 1),
    };
  });
};

/** A station's months on the level, hours against twelve means: what they share, and what they part in. */
export interface LevelMonth {
  readonly month: number;
  /** Highest noon sun of the month, degrees. */
  readonly noonDeg: number;
  /** Global over the clear sky's; the same by hours and by means. */
  readonly globalRatio: number;
  /** Beam on the level over the clear sky's, by hours and from the means. */
  readonly beamRatio: number;
  readonly expectedBeamRatio: number;
}

/** How much of the clear sky's global and beam light each month of a station has. */
export const levelMonths = (place: HourlyYear): readonly LevelMonth[] => {
  const { over, sky, global } = hoursOnPlanes(place, []);
  const { sun, clear } = over;
  const beamOf = ({ beamNormal }: SkyColumns): Float64Array =>
    monthSums(
      sun,
      beamNormal.map((beam, row) => beam * sun.up[row]),
    );
  const clearGlobal = monthSums(sun, clear.global);
  const [clearBeam, beam] = [beamOf(clear), beamOf(sky)];
  const means = MONTH_DAYS.map((days, month) => global[month] / days);
  const expected = new Float64Array(12);
  for (const { weight, sky: own } of skiesOfMonths(over, place, means).skies) {
    for (const [month, sum] of beamOf(own).entries()) expected[month] += weight * sum;
  }
  return MONTH_DAYS.map((_, month) => ({
    month,
    noonDeg: Math.max(
      ...sun.days.map((day) => (day.month === month + 1 ? day.noonAltitudeDeg : Number.NEGATIVE_INFINITY)),
    ),
    globalRatio: global[month] / clearGlobal[month],
    beamRatio: beam[month] / clearBeam[month],
    expectedBeamRatio: expected[month] / clearBeam[month],
  }));
};

/** The size below which a share of errors lies. */
export const sizeBelow = (errorsPct: readonly number[], share: number): number => {
  const sizes = errorsPct.map(Math.abs).sort((a, b) => a - b);
  return sizes[Math.min(sizes.length - 1, Math.floor(share * sizes.length))] ?? Number.NaN;
};
