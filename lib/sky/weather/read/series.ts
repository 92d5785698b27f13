/**
 * A weather file as read: even intervals, no holes in the global light, every value checked.
 */

/** How long an interval may be, minutes: every whole part of an hour. */
export const INTERVAL_MINUTES: readonly number[] = [1, 2, 3, 4, 5, 6, 10, 12, 15, 20, 30, 60];

/** What was mended while reading, for the words that go with an answer. */
export interface Mending {
  /** Intervals without global light that were filled in. */
  readonly filled: number;
  /** Small negative readings (sensor offsets at night) set to zero. */
  readonly zeroed: number;
  /** Columns that no name was known for, left aside. */
  readonly ignoredColumns: readonly string[];
  /** Things a person may want to know, in plain words. */
  readonly remarks: readonly string[];
}

/**
 * Light and air by intervals of even length. Interval `i` runs from `startMs + i x intervalMinutes` (UTC) to the next.
 * Irradiance is the interval's mean, W/m2. Where an optional column has a hole, it holds NaN there.
 */
export interface IntervalSeries {
  readonly kind: "intervals";
  readonly intervalMinutes: number;
  readonly startMs: number;
  readonly length: number;
  /** Global horizontal irradiance, never NaN. */
  readonly global: Float64Array;
  /** Direct normal irradiance. */
  readonly beamNormal?: Float64Array;
  /** Direct irradiance on the horizontal, as reference years give it. */
  readonly beamHorizontal?: Float64Array;
  /** Diffuse horizontal irradiance. */
  readonly diffuse?: Float64Array;
  /** Air temperature, degC. */
  readonly airC?: Float64Array;
  /** Wind, m/s. */
  readonly windMs?: Float64Array;
  readonly mending: Mending;
}

/** Light by whole days: the sum of each civil date at the site. */
export interface DailySeries {
  readonly kind: "days";
  /** The first date, as days since 1970-01-01. */
  readonly firstDay: number;
  readonly length: number;
  /** Global horizontal irradiation of each day, Wh/m2, never NaN. */
  readonly globalWh: Float64Array;
  /** Mean air temperature of each day, degC. */
  readonly airC?: Float64Array;
  /** Mean wind of each day, m/s. */
  readonly windMs?: Float64Array;
  readonly mending: Mending;
}

export type WeatherSeries = IntervalSeries | DailySeries;
