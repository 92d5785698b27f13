/**
 * Diffuse share from clearness and sun height: Reindl, Beckman & Duffie 1990, Solar Energy 45, 1, the reduced form.
 * Coefficients from memory.
 */

/**
 * Diffuse share (0.1..1) of an hour's global horizontal light. NaN stays NaN.
 *
 * @example reindlShare(0.6, 0.7) // 0.47
 */
export const reindlShare = (clearness: number, sinAltitude: number): number => {
  const k = Math.max(0, clearness);
  if (k <= 0.3) return Math.min(1, 1.02 - 0.254 * k + 0.0123 * sinAltitude);
  if (k < 0.78) return Math.min(0.97, Math.max(0.1, 1.4 - 1.749 * k + 0.177 * sinAltitude));
  return Math.max(0.1, 0.486 * k - 0.182 * sinAltitude);
};
