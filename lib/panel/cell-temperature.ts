/** How warm the cells run: the light on the panel heats them, the air and the wind carry it off. */

/** How a mount sheds heat, for each W/m2 and kelvin above the air: u0 + u1 x wind. */
export interface HeatLoss {
  /** In still air, W/m2/K. */
  readonly u0: number;
  /** For each m/s of wind, W/m2/K per m/s. */
  readonly u1: number;
}

/** Open rack, air on both sides: Faiman 2008, Progress in Photovoltaics 16, 307, mean of seven crystalline modules. */
const OPEN_RACK: HeatLoss = { u0: 25.0, u1: 6.84 };

/**
 * How much warmer than on an open rack a panel runs that lies on a roof with a narrow gap: 1.8 times the rise, the
 * mounting coefficient of a roof in Skoplaki, Boudouvis & Palyvos 2008, Solar Energy Materials and Solar Cells 92, 1393
 * (from memory). At 1000 W/m2 and 1 m/s that is 0.057 K m2/W, inside the range of 0.02 to 0.06 that Maturi et al. 2014
 * give for all mounts.
 */
const ROOF_RISE = 1.8;

/** How a panel is mounted: what carries its heat off. */
export type PanelMount = "open-rack" | "flat-on-roof";

/** The heat loss of each mount. */
export const HEAT_LOSS: Readonly<Record<PanelMount, HeatLoss>> = {
  "open-rack": OPEN_RACK,
  "flat-on-roof": { u0: OPEN_RACK.u0 / ROOF_RISE, u1: OPEN_RACK.u1 / ROOF_RISE },
};

/** Conditions under which the nominal operating cell temperature is stated: IEC 61215. */
const NOCT = { irradiance: 800, airC: 20, windMs: 1 } as const;

/**
 * Cell temperature by Faiman: air + plane irradiance / (u0 + u1 x wind).
 *
 * Faiman 2008, Progress in Photovoltaics 16, 307 (also IEC 61853-2).
 *
 * @param planeWm2 Plane irradiance before the glass, W/m2.
 * @param airC Air temperature, degC.
 * @param windMs Wind at the panel, m/s.
 * @param heatLoss How the mount sheds heat [open rack].
 * @returns degC; NaN in, NaN out.
 * @example faimanCellC(800, 20, 1) // 45.13
 */
export const faimanCellC = (
  planeWm2: number,
  airC: number,
  windMs: number,
  heatLoss: HeatLoss = OPEN_RACK,
): number => airC + planeWm2 / (heatLoss.u0 + heatLoss.u1 * windMs);

/**
 * Kelvins above the air for each W/m2, from a nameplate's NOCT: (NOCT - 20) / 800.
 *
 * Ross 1976, with the conditions of IEC 61215.
 *
 * @param noctC Nominal operating cell temperature, degC, above 20.
 * @example rossCoefficient(45) // 0.03125
 */
export const rossCoefficient = (noctC: number): number => (noctC - NOCT.airC) / NOCT.irradiance;

/**
 * Cell temperature by the NOCT alone, whatever the wind: air + plane irradiance x (NOCT - 20) / 800.
 *
 * Ross 1976; Masters 2004, equation 8.24.
 *
 * @example rossCellC(1000, 30, 47) // 63.75
 */
export const rossCellC = (planeWm2: number, airC: number, noctC: number): number =>
  airC + planeWm2 * rossCoefficient(noctC);

/**
 * The heat loss of an open rack whose panel runs at its own NOCT rather than at the mean of Faiman's seven.
 *
 * Keeps Faiman's part for the wind and lets the still-air part meet the NOCT at its 1 m/s (IEC 61215).
 *
 * @param noctC Nominal operating cell temperature, degC, 25 to 80.
 * @throws RangeError outside that range.
 * @example heatLossOfNoct(45) // { u0: 25.16, u1: 6.84 }
 */
export const heatLossOfNoct = (noctC: number): HeatLoss => {
  if (!(noctC >= 25 && noctC <= 80)) {
    throw new RangeError(`heatLossOfNoct: expected NOCT 25 to 80 degC, received ${noctC}`);
  }
  return { u0: 1 / rossCoefficient(noctC) - OPEN_RACK.u1 * NOCT.windMs, u1: OPEN_RACK.u1 };
};
