/** Rules of thumb for the tilt. Degrees up from horizontal, towards the equator, held to 0..90. */

const held = (tiltDeg: number): number => Math.min(90, Math.max(0, tiltDeg));

/** "As steep as the latitude": most over the year (NREL map note on flat-plate collectors). */
export const latitudeTilt = (latitudeDeg: number): number => held(Math.abs(latitudeDeg));

/** Latitude less 15 degrees: best summer (convention of Marion & Wilcox 1994; from memory). */
export const summerTilt = (latitudeDeg: number): number => held(Math.abs(latitudeDeg) - 15);

/** Latitude plus 15 degrees: best winter (convention of Marion & Wilcox 1994; from memory). */
export const winterTilt = (latitudeDeg: number): number => held(Math.abs(latitudeDeg) + 15);

/**
 * Square to the noon sun: latitude less declination. Degrees; towards the equator, so a noon sun on the far side of
 * the zenith (in the tropics) gives 0.
 *
 * @example noonTilt(45, 23.44) // 21.56
 */
export const noonTilt = (latitudeDeg: number, declinationDeg: number): number =>
  held(latitudeDeg < 0 ? declinationDeg - latitudeDeg : latitudeDeg - declinationDeg);

/**
 * Yearly optimum from the latitude alone: `3.7 + 0.69 |latitude|` (Lorenzo, Energy Collected and Delivered by PV
 * Modules, in Luque & Hegedus, handbook ch. 22; from memory).
 */
export const lorenzoTilt = (latitudeDeg: number): number => held(3.7 + 0.69 * Math.abs(latitudeDeg));

/**
 * Yearly light at a tilt, relative to that at the optimum: `1 + 4.46e-4 d - 1.19e-4 d^2`, d the degrees above the
 * optimum (Lorenzo, as above).
 */
export const lorenzoRelativeLight = (tiltDeg: number, optimumDeg: number): number => {
  const above = tiltDeg - optimumDeg;
  return 1 + 4.46e-4 * above - 1.19e-4 * above ** 2;
};
