import { METALS, type Metal, temperatureFactor } from "./metal.ts";

/** American wire gauge, ASTM B258: 0.127 mm at 36 gauge, 92-fold over 39 gauges. */
const THINNEST = { gauge: 36, diameterMm: 0.127 } as const;
const RATIO = { diameters: 92, gauges: 39 } as const;

/** Strands run round the wire, so they are longer than it is: 2 %, ASTM B8 (from memory). */
export const STRAND_LAY = 1.02;

/** One circular mil, the area of a circle a thousandth of an inch across, mm2. */
export const MM2_PER_CIRCULAR_MIL = (Math.PI / 4) * 0.0254 ** 2;

/**
 * Diameter of a solid wire by its gauge, mm: 0.127 x 92^((36 - n) / 39).
 *
 * ASTM B258.
 *
 * @param gauge -3 (4/0) to 36; 1/0 is 0.
 * @throws RangeError outside that range.
 * @example awgDiameterMm(12) // 2.0525
 */
export const awgDiameterMm = (gauge: number): number => {
  if (!(gauge >= -3 && gauge <= THINNEST.gauge)) {
    throw new RangeError(`awgDiameterMm: expected gauge -3 (4/0) to 36, received ${gauge}`);
  }
  return THINNEST.diameterMm * RATIO.diameters ** ((THINNEST.gauge - gauge) / RATIO.gauges);
};

/** Cross-section of a gauge, mm2. @example awgAreaMm2(12) // 3.3088 */
export const awgAreaMm2 = (gauge: number): number => (Math.PI / 4) * awgDiameterMm(gauge) ** 2;

/**
 * Resistance of a gauge, ohm/km: resistivity / area, and 2 % more for strands.
 *
 * Meets NEC (NFPA 70) chapter 9 table 8 within 0.4 % solid and 0.4 % stranded (uncoated copper, 75 degC).
 *
 * @param conductorC degC of the conductor.
 * @example awgOhmPerKm(12, "solid", "copper", 75) // 6.337
 */
export const awgOhmPerKm = (
  gauge: number,
  build: "solid" | "stranded",
  metal: Metal,
  conductorC: number,
): number =>
  ((1000 * METALS[metal].resistivity) / awgAreaMm2(gauge)) *
  (build === "solid" ? 1 : STRAND_LAY) *
  temperatureFactor(metal, conductorC);
