/**
 * What clear air is made of when nobody has measured it: haze by class or by visibility, water vapour, ozone.
 */
import type { TurbidityClass } from "../plan/air.ts";
import { standardPressureHPa } from "./air-mass.ts";
import type { ClearAir } from "./bird.ts";

/** Angstrom's wavelength exponent for the classes below: Iqbal 1983, table 6.2 (1.3 for all), from memory. */
export const ANGSTROM_EXPONENT = 1.3;

/** A class of clear air: Angstrom's turbidity coefficient (aerosol optical depth at 1 um) and what the eye sees. */
export interface AirClass {
  readonly angstromBeta: number;
  readonly visibilityKm: number;
}

/**
 * Aerosol optical depth at a wavelength (um) by Angstrom's law, beta x wavelength^-alpha.
 * Angstrom 1929; Iqbal 1983 eq. 6.6.1.
 *
 * @example aerosolDepth(0.1, 0.5) // 0.246
 */
export const aerosolDepth = (
  angstromBeta: number,
  wavelengthUm: number,
  exponent = ANGSTROM_EXPONENT,
): number => angstromBeta * wavelengthUm ** -exponent;

/**
 * Angstrom's turbidity coefficient from the visibility in km, 5 and up: McClatchey & Selby 1972 as in Iqbal 1983
 * eq. 6.6.3, from memory, confirmed by the handbook's own table (28 km gives 0.10, 11 km 0.20, 5 km 0.40, 340 km 0):
 * beta = 0.55^alpha (3.912 / V - 0.01162) (0.02472 (V - 5) + 1.132), not below 0.
 *
 * @throws RangeError below 5 km, where it is fog or dust and no clear-sky model holds.
 * @example angstromBetaOfVisibility(28) // 0.100
 */
export const angstromBetaOfVisibility = (visibilityKm: number): number => {
  if (!(visibilityKm >= 5)) {
    throw new RangeError(
      `angstromBetaOfVisibility: expected visibility 5 km or more, received ${visibilityKm}`,
    );
  }
  return Math.max(
    0,
    0.55 ** ANGSTROM_EXPONENT * (3.912 / visibilityKm - 0.01162) * (0.02472 * (visibilityKm - 5) + 1.132),
  );
};

/**
 * The classes, cleanest first. All but `standard`: Iqbal 1983, table 6.2 (clean, clear, turbid, very turbid), from
 * memory, confirmed by the visibility relation above.
 *
 * `standard`, the default, is the air of the standard solar spectra, ASTM G173-03 (rural aerosol, optical depth 0.084 at
 * 500 nm; its water is 1.42 cm, its ozone 0.344 cm; from memory). Gueymard, Myers & Emery 2002 chose it as what cloudless
 * days at good solar sites really have; the handbook's `clear` is the upper half of ordinary summer haze, and its
 * `clean` has no aerosol at all, which only polar and high-mountain air comes near.
 */
const CLASSES: Readonly<Record<TurbidityClass, AirClass>> = {
  clean: { angstromBeta: 0, visibilityKm: 340 },
  standard: { angstromBeta: 0.0341, visibilityKm: 137 }, // 0.084 x 0.5^1.3; visibility by the relation above
  clear: { angstromBeta: 0.1, visibilityKm: 28 },
  turbid: { angstromBeta: 0.2, visibilityKm: 11 },
  "very turbid": { angstromBeta: 0.4, visibilityKm: 5 },
};

/** What a class of clear air means in numbers. */
export const airClassOf = (turbidity: TurbidityClass): AirClass => CLASSES[turbidity];

/** Haze by class, or as two aerosol optical depths. */
export type Haze = TurbidityClass | { readonly aod380: number; readonly aod500: number };

/** What `clearAirOf` is told: the `air` section of a plan has these fields. */
export interface AirStated {
  readonly turbidity: Haze;
  /** Precipitable water at the site, cm; left out, what the standard spectra have at the sea, thinned with height. */
  readonly waterCm?: number | undefined;
  /** Ozone, cm. */
  readonly ozoneCm: number;
}

/** Precipitable water of the standard solar spectra, ASTM G173-03, cm at the sea; from memory. */
const WATER_AT_SEA_CM = 1.42;

/**
 * Heights over which water vapour and aerosol thin to 1/e, m: 2 km (Reitan 1963 and most handbooks) and 1.2 km
 * (Elterman 1968), both from memory. Below the sea they stay as at the sea.
 */
const WATER_SCALE_M = 2000;
const AEROSOL_SCALE_M = 1200;

/** Shares the report recommends for ordinary (rural) aerosol, Bird & Hulstrom 1981. */
const FORWARD_SHARE = 0.84;
const AEROSOL_ABSORPTION = 0.1;

/**
 * The air over a site: pressure from the height above the sea (ISO 2533), haze from its class. A class says how hazy it
 * is at the sea and thins with height; optical depths and water that are stated are taken as the site's own.
 *
 * @param elevationM metres above the sea, -500 to 11 000
 * @throws RangeError outside that range.
 * @example clearAirOf({ turbidity: "standard", ozoneCm: 0.34 }, 0).aod500 // 0.084
 */
export const clearAirOf = ({ turbidity, waterCm, ozoneCm }: AirStated, elevationM: number): ClearAir => {
  const heightM = Math.max(0, elevationM);
  const thinning = Math.exp(-heightM / AEROSOL_SCALE_M);
  const haze =
    typeof turbidity === "string"
      ? {
          aod380: thinning * aerosolDepth(CLASSES[turbidity].angstromBeta, 0.38),
          aod500: thinning * aerosolDepth(CLASSES[turbidity].angstromBeta, 0.5),
        }
      : { aod380: turbidity.aod380, aod500: turbidity.aod500 };
  return {
    pressureHPa: standardPressureHPa(elevationM),
    ozoneCm,
    waterCm: waterCm ?? WATER_AT_SEA_CM * Math.exp(-heightM / WATER_SCALE_M),
    ...haze,
    forwardShare: FORWARD_SHARE,
    aerosolAbsorption: AEROSOL_ABSORPTION,
  };
};
