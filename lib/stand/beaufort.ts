/** One force of the Beaufort scale: mean wind at 10 m, m/s (World Meteorological Organization). */
export interface BeaufortForce {
  readonly force: number;
  readonly name: string;
  readonly leastMs: number;
  /** Infinity for hurricane force. */
  readonly mostMs: number;
}

const TENTH = 0.1;

const LEAST_MS_AND_NAMES: readonly (readonly [number, string])[] = [
  [0, "calm"],
  [0.3, "light air"],
  [1.6, "light breeze"],
  [3.4, "gentle breeze"],
  [5.5, "moderate breeze"],
  [8.0, "fresh breeze"],
  [10.8, "strong breeze"],
  [13.9, "near gale"],
  [17.2, "gale"],
  [20.8, "strong gale"],
  [24.5, "storm"],
  [28.5, "violent storm"],
  [32.7, "hurricane force"],
];

/** The scale, calm first. */
export const BEAUFORT: readonly BeaufortForce[] = LEAST_MS_AND_NAMES.map(([leastMs, name], force) => {
  const next = LEAST_MS_AND_NAMES[force + 1];
  return { force, name, leastMs, mostMs: next ? next[0] - TENTH : Number.POSITIVE_INFINITY };
});

/**
 * The Beaufort force of a mean wind at 10 m (m/s), read to the tenth that the scale is stated in.
 *
 * @throws RangeError for a negative wind or NaN
 * @example beaufortOf(12).name // "strong breeze"
 */
export const beaufortOf = (windMs: number): BeaufortForce => {
  const tenths = Math.round(windMs * 10) / 10;
  const found = BEAUFORT.findLast(({ leastMs }) => tenths >= leastMs);
  if (!found) throw new RangeError(`beaufortOf: expected a wind of 0 m/s or more, received ${windMs}`);
  return found;
};
