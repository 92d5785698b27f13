/**
 * How much the air lifts the sun, radians, at a true altitude: Meeus 1998, Astronomical Algorithms, eq. 16.4, in the form
 * suncalc has it. Below the horizon the lift of the horizon is kept (0.48 degrees), so that a sun comes into sight exactly
 * where its lifted altitude crosses 0.
 *
 * @param altitude true, radians; NaN in, NaN out
 * @example refraction(0) // 0.00845
 */
export const refraction = (altitude: number): number => {
  const h = Math.max(altitude, 0);
  return 0.0002967 / Math.tan(h + 0.00312536 / (h + 0.08901179));
};

/** The lift at and below the horizon, radians. */
export const HORIZON_LIFT = refraction(0);

/** Parts of the table below. The lift bends most at the horizon, where straight lines between nodes are within 1e-7 rad. */
const PARTS = 4096;

/** The lift against the sine of the true altitude, 0 to 1, for the loop over a season. */
const TABLE = Float64Array.from({ length: PARTS + 2 }, (_, node) =>
  refraction(Math.asin(Math.min(1, node / PARTS))),
);

/** {@link refraction} read from a table, by the sine of the true altitude. */
export const tabledRefraction = (sine: number): number => {
  if (sine <= 0) return HORIZON_LIFT;
  const at = sine * PARTS;
  const node = at | 0;
  return TABLE[node] + (at - node) * (TABLE[node + 1] - TABLE[node]);
};
