/** The light on one tilted plane: one row for each row of the sun columns. W/m2. */
export interface PlaneColumns {
  readonly length: number;
  /** Plane irradiance, before the glass. */
  readonly plane: Float64Array;
  /** What passes the glass at that incidence, relative to light square on. */
  readonly absorbed: Float64Array;
}
