/** Vapour in the air. */

/**
 * Saturation vapour pressure over water, hPa: FAO-56 eq. 11 (Tetens 1930).
 *
 * @param airC degC
 * @example saturationHPa(15) // 17.05
 */
export const saturationHPa = (airC: number): number => 6.108 * Math.exp((17.27 * airC) / (airC + 237.3));
