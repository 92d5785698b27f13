/** One whole solar day of a season. */
export interface SeasonDay {
  /** Civil date of the day's solar noon in the site's zone, ISO 8601 (`2027-06-21`). */
  readonly date: string;
  /** Day of the year of that date, 1..366. */
  readonly dayOfYear: number;
  /** Month of that date, 1..12. */
  readonly month: number;
  /** The day's rows in the columns: from `first` up to, not including, `end`. Equal when the sun stays down. */
  readonly first: number;
  readonly end: number;
  /** Start of the solar day (12 hours before its noon), and its solar noon, in UTC milliseconds. */
  readonly startMs: number;
  readonly noonMs: number;
  /** Apparent altitude at solar noon, degrees; negative in polar night. */
  readonly noonAltitudeDeg: number;
  /** Hours with the sun's centre above the apparent horizon, 0..24: the sum of the day's `hours`. */
  readonly sunHours: number;
}

/**
 * Where the sun is through a season: one row for each step in which the sun is in sight, wholly or for a part.
 * Computed once per site and season, shared by every aim.
 */
export interface SunColumns {
  readonly stepMinutes: number;
  readonly days: readonly SeasonDay[];
  /** Rows in each column. */
  readonly length: number;
  /** Middle of the sunlit part of the step, UTC milliseconds. */
  readonly timeMs: Float64Array;
  /** Hours of sun the row stands for: the whole step, or its sunlit part at sunrise and sunset. W x hours is Wh. */
  readonly hours: Float64Array;
  /** Unit vector to the apparent (refracted) sun. */
  readonly east: Float64Array;
  readonly north: Float64Array;
  readonly up: Float64Array;
  /** Index into `days` of each row. */
  readonly day: Uint16Array;
}
