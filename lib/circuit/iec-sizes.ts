import { readCurve } from "../units/interpolation.ts";
import { iecTemperatureFactor, METALS, type Metal } from "./metal.ts";

/** How a conductor of IEC 60228 is built: solid or stranded (classes 1 and 2), or fine-stranded flexible (class 5). */
export type IecClass = "1-2" | "5";

interface IecSize {
  readonly areaMm2: number;
  /** Greatest DC resistance at 20 degC, ohm/km; `null` where the standard lists none. */
  readonly copper12: number;
  readonly copper5: number;
  readonly aluminium12: number | null;
}

const size = (
  areaMm2: number,
  copper12: number,
  copper5: number,
  aluminium12: number | null = null,
): IecSize => ({ areaMm2, copper12, copper5, aluminium12 });

/** IEC 60228:2004, tables 1 to 3, plain copper and aluminium. The aluminium column is from memory. */
const IEC_TABLE: readonly IecSize[] = [
  size(0.5, 36.0, 39.0),
  size(0.75, 24.5, 26.0),
  size(1, 18.1, 19.5),
  size(1.5, 12.1, 13.3),
  size(2.5, 7.41, 7.98),
  size(4, 4.61, 4.95),
  size(6, 3.08, 3.3),
  size(10, 1.83, 1.91, 3.08),
  size(16, 1.15, 1.21, 1.91),
  size(25, 0.727, 0.78, 1.2),
  size(35, 0.524, 0.554, 0.868),
  size(50, 0.387, 0.386, 0.641),
  size(70, 0.268, 0.272, 0.443),
  size(95, 0.193, 0.206, 0.32),
  size(120, 0.153, 0.161, 0.253),
  size(150, 0.124, 0.129, 0.206),
  size(185, 0.0991, 0.106, 0.164),
  size(240, 0.0754, 0.0801, 0.125),
  size(300, 0.0601, 0.0641, 0.1),
];

/** The metric sizes, mm2, thinnest first. */
export const IEC_AREAS_MM2: readonly number[] = IEC_TABLE.map(({ areaMm2 }) => areaMm2);

/** Aluminium that the standard does not list: the metal's resistivity with copper's allowance of the same row. */
const listedOhmPerKm = (row: IecSize, iecClass: IecClass, metal: Metal): number => {
  const copper = iecClass === "5" ? row.copper5 : row.copper12;
  if (metal === "copper") return copper;
  return iecClass === "1-2" && row.aluminium12 !== null
    ? row.aluminium12
    : (copper * METALS.aluminium.resistivity) / METALS.copper.resistivity;
};

/**
 * Resistance of a metric conductor, ohm/km: the greatest that IEC 60228 allows, which is 4 to 16 % above the metal's
 * own. Between listed sizes resistance x area is interpolated; beyond them the nearest size's is kept.
 *
 * @param areaMm2 Nominal cross-section, above 0 mm2.
 * @param conductorC degC of the conductor; 20 gives the standard's own table.
 * @throws RangeError when the area is not above 0.
 * @example iecOhmPerKm(2.5, "5", "copper", 20) // 7.98
 */
export const iecOhmPerKm = (
  areaMm2: number,
  iecClass: IecClass,
  metal: Metal,
  conductorC: number,
): number => {
  if (!(areaMm2 > 0)) throw new RangeError(`iecOhmPerKm: expected an area above 0 mm2, received ${areaMm2}`);
  const warm = iecTemperatureFactor(metal, conductorC);
  const listed = IEC_TABLE.find((row) => row.areaMm2 === areaMm2);
  if (listed !== undefined) return listedOhmPerKm(listed, iecClass, metal) * warm;
  const ohmMm2 = readCurve(
    IEC_TABLE.map((row) => [row.areaMm2, listedOhmPerKm(row, iecClass, metal) * row.areaMm2]),
    areaMm2,
  );
  return (ohmMm2 / areaMm2) * warm;
};
