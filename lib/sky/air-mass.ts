/**
 * How much air the beam crosses, relative to straight up at the same place, and the pressure above a site.
 */
import { clampedAsin, toDegrees } from "../units/angle.ts";

/**
 * Kasten & Young 1989, Applied Optics 28, 4735: m = 1 / (sin h + a (h + b)^-c), h the apparent altitude in degrees.
 * The formula is for the zenith angle z: 96.07995 - z = h + 6.07995.
 */
const A = 0.50572;
const B = 6.07995;
const C = 1.6364;

/**
 * Relative optical air mass from the sine of the apparent altitude: the form the columns use.
 * 0.9997 overhead, 37.92 at the horizon; below it the horizon's value. NaN stays NaN.
 *
 * @example airMassOfSine(0.5) // 1.9943
 */
export const airMassOfSine = (sinAltitude: number): number => {
  const sine = Math.max(sinAltitude, 0);
  return 1 / (sine + A * (toDegrees(clampedAsin(sine)) + B) ** -C);
};

/**
 * Relative optical air mass at an apparent (refracted) altitude in degrees above the horizon, not corrected for
 * pressure. Kasten & Young 1989. Below the horizon the horizon's value, 37.92. NaN stays NaN.
 *
 * @example relativeAirMass(30) // 1.9943
 */
export const relativeAirMass = (altitudeDeg: number): number =>
  airMassOfSine(Math.sin(altitudeDeg * (Math.PI / 180)));

/** ISO 2533:1975, standard atmosphere up to 11 km: pressure and temperature at sea level, lapse rate, exponent. */
const SEA_LEVEL_HPA = 1013.25;
const SEA_LEVEL_K = 288.15;
const LAPSE_K_PER_M = 0.0065;
const EXPONENT = 5.25588; // g M / (R L)

/**
 * Air pressure (hPa) at a height above the sea in the standard atmosphere, ISO 2533:
 * p = 1013.25 (1 - 0.0065 h / 288.15)^5.25588, h in metres from -500 to 11 000.
 *
 * @throws RangeError outside that range.
 * @example standardPressureHPa(1000) // 898.75
 */
export const standardPressureHPa = (elevationM: number): number => {
  if (!(elevationM >= -500 && elevationM <= 11_000)) {
    throw new RangeError(`standardPressureHPa: expected elevation -500 to 11000 m, received ${elevationM}`);
  }
  return SEA_LEVEL_HPA * (1 - (LAPSE_K_PER_M * elevationM) / SEA_LEVEL_K) ** EXPONENT;
};
