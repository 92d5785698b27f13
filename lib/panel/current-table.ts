/**
 * Current at any voltage, fast: the closed form of {@link currentAt} with its two costly functions tabled.
 *
 * Light, warmth and voltage all meet in one number, the logarithm of Lambert's argument, so that a table along one line
 * serves the whole curve at every light and temperature: a controller that holds the panel at the battery's voltage asks
 * for it at each step.
 */
import { type DiodeReference, idealityRatio, logSaturationRatio } from "./diode-conditions.ts";
import { lambertW0OfExp } from "./lambert-w.ts";
import { STC } from "./linear-module.ts";
import { NEGLIGIBLE_OHM } from "./single-diode.ts";

/** The logarithm of Lambert's argument is tabled from -40 (W is 4e-18) to 60; W bends by at most 4/27 there. */
const [LEAST_LOG, MOST_LOG] = [-40, 60] as const;
const LOG_STEPS_PER_UNIT = 64;

const lambertTable = Float64Array.from(
  { length: (MOST_LOG - LEAST_LOG) * LOG_STEPS_PER_UNIT + 2 },
  (_, step) => lambertW0OfExp(LEAST_LOG + step / LOG_STEPS_PER_UNIT),
);

/** W(exp(log)) from the table: within 5e-6. */
export const tabledLambert = (log: number): number => {
  if (log <= LEAST_LOG) return 0;
  if (log >= MOST_LOG) return lambertW0OfExp(log);
  const at = (log - LEAST_LOG) * LOG_STEPS_PER_UNIT;
  const step = at | 0;
  return lambertTable[step] + (at - step) * (lambertTable[step + 1] - lambertTable[step]);
};

/** Nodes of the saturation current's logarithm along the cell temperature: -40 to 110 degC. */
const LEAST_CELL_C = -40;
const CELL_NODES = 151;

/** A curve made ready to be asked for its current. */
export interface CurrentTable {
  readonly reference: DiodeReference;
  /** Logarithm of the saturation current at each degC from -40 to 110. */
  readonly logSaturation: Float64Array;
}

/** Makes a curve ready for {@link tabledCurrentAt}. */
export const currentTable = (reference: DiodeReference): CurrentTable => ({
  reference,
  logSaturation: Float64Array.from(
    { length: CELL_NODES + 1 },
    (_, node) =>
      Math.log(reference.saturationA) + logSaturationRatio(reference.bandGapEv, LEAST_CELL_C + node),
  ),
});

/** Logarithm of the saturation current at a cell temperature, from the table. */
export const logSaturationAt = ({ logSaturation }: CurrentTable, cellC: number): number => {
  const cell = cellC - LEAST_CELL_C;
  const node = Math.max(0, Math.min(CELL_NODES - 1, cell | 0));
  return logSaturation[node] + (cell - node) * (logSaturation[node + 1] - logSaturation[node]);
};

/**
 * Current at a terminal voltage, A; negative above the open-circuit voltage, 0 in the dark.
 *
 * Within 1e-4 of the short-circuit current of the full solution from -40 to 110 degC (tested). NaN in, NaN out.
 *
 * @param table Made once for the panel.
 * @param volts Terminal voltage, V.
 * @param absorbedWm2 Light that passes the glass, W/m2.
 * @param cellC Cell temperature, degC.
 */
export const tabledCurrentAt = (
  table: CurrentTable,
  volts: number,
  absorbedWm2: number,
  cellC: number,
): number => {
  if (absorbedWm2 <= 0) return 0;
  const { reference } = table;
  const suns = absorbedWm2 / STC.irradiance;
  const photocurrentA = Math.max(
    0,
    suns * (reference.photocurrentA + reference.photocurrentPerK * (cellC - STC.cellC)),
  );
  const log = logSaturationAt(table, cellC);
  const { seriesOhm } = reference;
  const shuntS = suns / reference.shuntOhm;
  const idealityV = reference.idealityV * idealityRatio(cellC);
  // The saturation current itself, some 1e-10 A beside the light current, is left out of the sum.
  if (seriesOhm < NEGLIGIBLE_OHM) return photocurrentA - Math.exp(log + volts / idealityV) - volts * shuntS;
  const spread = idealityV * (1 + seriesOhm * shuntS);
  const argument = log + Math.log(seriesOhm / spread) + (seriesOhm * photocurrentA + volts) / spread;
  return (
    (photocurrentA - volts * shuntS) / (1 + seriesOhm * shuntS) -
    (idealityV / seriesOhm) * tabledLambert(argument)
  );
};
