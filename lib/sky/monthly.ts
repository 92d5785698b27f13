/** One value for the whole year, or twelve, January first. */
export type Monthly = number | readonly number[];

/**
 * The same value or values as twelve numbers, January first.
 *
 * @throws RangeError when a table has not twelve values.
 * @example twelveOf(0.2).length // 12
 */
export const twelveOf = (values: Monthly): Float64Array => {
  if (typeof values === "number") return new Float64Array(12).fill(values);
  if (values.length !== 12)
    throw new RangeError(`twelveOf: expected 12 monthly values, received ${values.length}`);
  return Float64Array.from(values);
};
