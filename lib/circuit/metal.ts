/** The metals wires are made of. */
export type Metal = "copper" | "aluminium";

/** Resistivity at 20 degC, ohm mm2/m, and its rise with temperature, 1/K at 20 degC. */
export interface MetalConstants {
  readonly resistivity: number;
  readonly perK: number;
  /** IEC 60228, annex: R20 = R x (a + 20) / (a + T), this a in degC. */
  readonly iecZeroC: number;
}

export const METALS: Readonly<Record<Metal, MetalConstants>> = {
  /** International annealed copper standard, IEC 60028: 1/58 ohm mm2/m, 0.00393/K (constant mass). */
  copper: { resistivity: 1 / 58, perK: 0.00393, iecZeroC: 230 },
  /** Hard-drawn aluminium wire, IEC 60889: 61 % of the copper standard, 0.00403/K (from memory). */
  aluminium: { resistivity: 0.028264, perK: 0.00403, iecZeroC: 228 },
};

/**
 * How much more a wire resists at a temperature than at 20 degC: 1 + alpha (T - 20), with alpha of IEC 60028 or 60889.
 *
 * @param conductorC degC of the conductor, -40 to 120.
 * @example temperatureFactor("copper", 75) // 1.21615
 */
export const temperatureFactor = (metal: Metal, conductorC: number): number =>
  1 + METALS[metal].perK * (conductorC - 20);

/**
 * The same by the rule that IEC 60228 prints for its own table: (230 + T) / 250 for copper, (228 + T) / 248 for
 * aluminium. It is 0.3 % above {@link temperatureFactor} at 75 degC; the standard's table of factors is this one,
 * inverted.
 *
 * @example 1 / iecTemperatureFactor("copper", 60) // 0.862
 */
export const iecTemperatureFactor = (metal: Metal, conductorC: number): number => {
  const { iecZeroC } = METALS[metal];
  return (iecZeroC + conductorC) / (iecZeroC + 20);
};
