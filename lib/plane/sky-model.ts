/** What every sky-to-plane model states: how the diffuse light of one moment is spread over the sky. */

/** The light of one moment. W/m2. */
export interface SkyMoment {
  /** Direct normal irradiance. */
  readonly beamNormal: number;
  /** Diffuse horizontal irradiance. */
  readonly diffuse: number;
  /** Sine of the apparent sun altitude. */
  readonly sinAltitude: number;
  /** Extraterrestrial normal irradiance. */
  readonly extraterrestrial: number;
  /** Relative air mass, not corrected for pressure. */
  readonly airMass: number;
}

/** The diffuse light of one moment, split by where in the sky it comes from. W/m2. */
export interface SkySplit {
  /** From round the sun: for each unit of the cosine of incidence. */
  circumsolar: number;
  /** From the even dome: for each unit of the sky view. */
  dome: number;
  /** From the band along the horizon: for each unit of the sine of the tilt. May be negative. */
  horizon: number;
}

/**
 * A sky-to-plane model. Writes into `split` and returns it, so that a loop over a season allocates nothing.
 * NaN in, NaN out.
 */
export type SkyModel = (moment: SkyMoment, split: SkySplit) => SkySplit;

/**
 * The least sine of altitude by which circumsolar light is divided: cos 85 degrees, as Perez et al. 1990 set it.
 * Near the horizon the horizontal share of light from round the sun is too small to tell the rest from.
 */
export const LEAST_SIN_ALTITUDE = Math.cos((85 * Math.PI) / 180);
