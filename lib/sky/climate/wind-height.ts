/** Anemometers stand at ten metres, panels at knee height. */

/** Height of the middle of a propped panel above ground, m. */
export const PANEL_HEIGHT_M = 0.5;

/** Logarithmic wind profile over clipped grass, FAO-56 (Allen et al. 1998) eq. 47: ln(67.8 z - 5.42), z in metres. */
const profile = (heightM: number): number => Math.log(67.8 * heightM - 5.42);

/** Where the profile is still meant to hold; below, the panel stands in the grass. */
const LEAST_HEIGHT_M = 0.2;

/**
 * What part of the wind at one height blows at another, by the logarithmic profile over open, short grass.
 * Trees, walls and tents break it further; a bare coast breaks it less.
 *
 * @param fromM height of the anemometer above ground, m
 * @param toM height wanted; below 0.2 m the value of 0.2 m
 * @throws RangeError for an anemometer below 0.2 m
 * @example windShareAtHeight(10, 2) // 0.748
 */
export const windShareAtHeight = (fromM: number, toM: number): number => {
  if (!(fromM >= LEAST_HEIGHT_M)) {
    throw new RangeError(`windShareAtHeight: expected a height of at least 0.2 m, received ${fromM}`);
  }
  return profile(Math.max(LEAST_HEIGHT_M, toM)) / profile(fromM);
};
