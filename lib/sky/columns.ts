/**
 * What light arrives: one row for each row of the sun columns it was made from. W/m2 unless said otherwise.
 * `global` is beam x sin(altitude) + diffuse, except where a measured file states its own.
 */
export interface SkyColumns {
  /** Rows in each column, the same as in the sun columns. */
  readonly length: number;
  /** Direct normal irradiance (DNI). */
  readonly beamNormal: Float64Array;
  /** Diffuse horizontal irradiance (DHI). */
  readonly diffuse: Float64Array;
  /** Global horizontal irradiance (GHI). */
  readonly global: Float64Array;
  /** Extraterrestrial normal irradiance. */
  readonly extraterrestrial: Float64Array;
  /** Relative air mass (Kasten & Young 1989), not corrected for pressure. */
  readonly airMass: Float64Array;
  /** Ground reflectance, 0..1. */
  readonly albedo: Float64Array;
  /** Air temperature, degC. */
  readonly airC: Float64Array;
  /** Wind at the panel, m/s. */
  readonly windMs: Float64Array;
}

/** Sky columns of a length, all zero: eight views over one buffer. */
export const emptySkyColumns = (length: number): SkyColumns => {
  const buffer = new ArrayBuffer(8 * length * Float64Array.BYTES_PER_ELEMENT);
  const column = (index: number) =>
    new Float64Array(buffer, index * length * Float64Array.BYTES_PER_ELEMENT, length);
  return {
    length,
    beamNormal: column(0),
    diffuse: column(1),
    global: column(2),
    extraterrestrial: column(3),
    airMass: column(4),
    albedo: column(5),
    airC: column(6),
    windMs: column(7),
  };
};
