/** What a station's twelve means say of tilted planes, against what its own hours say. */
import type { Aim } from "../../../lib/plan/angle.ts";
import { type HourlyYear, hoursOnPlanes } from "./hourly-year.ts";
import { expectedOnPlanes } from "./place.ts";

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** Months that bring a plane less are dark: kWh/m2 in the month. */
const LEAST_LIGHT = 1;

/** One plane at one station. */
export interface PlaneYear {
  readonly name: string;
  readonly tiltDeg: number;
  /** Relative error of each month with light, per cent. */
  readonly monthsPct: readonly { readonly month: number; readonly errorPct: number }[];
  readonly yearPct: number;
}

/** Tilts compared at a station: a gentle one, its latitude, a steep one; all towards the equator. */
export const tiltsAt = ({ latitudeDeg }: HourlyYear): readonly number[] => [
  30,
  Math.round(Math.abs(latitudeDeg)),
  60,
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
      monthsPct: MONTH_DAYS.flatMap((_, month) =>
        theirs[month] < LEAST_LIGHT ? [] : [{ month, errorPct: 100 * (ours[month] / theirs[month] - 1) }],
      ),
      yearPct: 100 * (sum(ours) / sum(theirs) - 1),
    };
  });
};

/** The size below which a share of errors lies. */
export const sizeBelow = (errorsPct: readonly number[], share: number): number => {
  const sizes = errorsPct.map(Math.abs).sort((a, b) => a - b);
  return sizes[Math.min(sizes.length - 1, Math.floor(share * sizes.length))] ?? Number.NaN;
};
