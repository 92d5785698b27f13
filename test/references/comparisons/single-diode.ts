/** The current-voltage curve against measured curves, an independent fit, and Lambert's function to 25 digits. */
import {
  currentAt,
  curveAt,
  type DiodeCurve,
  fitDiode,
  lambertW0,
  maxPowerPoint,
  openCircuitV,
  shortCircuitA,
} from "../../../lib/panel/index.ts";
import { type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Case, type Comparison, relative } from "./comparison.ts";
import { idOf, lastDigit, numberOf } from "./fields.ts";

const parameterRows = readReference("module-parameters.csv");
const measuredRows = readReference("module-iv-points.csv");
const lambertRows = readReference("lambert-w.csv");
const desotoRows = readReference("desoto-module.csv");

const byDevice = (prefix: string): ReferenceRow => {
  const row = parameterRows.find((each) => idOf(each).startsWith(prefix));
  if (row === undefined) throw new Error(`module-parameters.csv: no row ${prefix}`);
  return row;
};

/** Boltzmann constant over the electron's charge, V/K (CODATA 2018). */
const BOLTZMANN_OVER_CHARGE = 8.617333e-5;

const publishedCurve = (row: ReferenceRow): DiodeCurve => ({
  photocurrentA: numberOf(row, "photocurrent_A"),
  saturationA: numberOf(row, "saturation_current_A"),
  seriesOhm: numberOf(row, "series_resistance_ohm"),
  shuntOhm: numberOf(row, "shunt_resistance_ohm"),
  idealityV:
    numberOf(row, "ideality_times_cells") * BOLTZMANN_OVER_CHARGE * (numberOf(row, "temperature_C") + 273.15),
});

/** How far the equation is from closing with the measured current on both sides: the error that the fits publish. */
const implicitResidual = (curve: DiodeCurve, volts: number, amps: number): number => {
  const diodeV = volts + amps * curve.seriesOhm;
  const dark = curve.saturationA * Math.expm1(diodeV / curve.idealityV);
  return curve.photocurrentA - dark - diodeV / curve.shuntOhm - amps;
};

const pointsOf = (prefix: string): readonly (readonly [number, number])[] =>
  measuredRows
    .filter((row) => idOf(row).startsWith(prefix))
    .map((row) => [numberOf(row, "voltage_V"), numberOf(row, "current_A")] as const);

const rms = (errors: readonly number[]): number =>
  Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length);

const fitOf = (row: ReferenceRow) => {
  const fit = fitDiode({
    iscA: numberOf(row, "isc_A"),
    vocV: numberOf(row, "voc_V"),
    impA: numberOf(row, "imp_A"),
    vmpV: numberOf(row, "vmp_V"),
    iscPerK: numberOf(row, "alpha_isc_A_per_K"),
    vocPerK: numberOf(row, "beta_voc_V_per_K"),
  });
  if (fit === null) throw new Error(`${idOf(row)}: no fit`);
  return fit.reference;
};

const desotoCase = (row: ReferenceRow): Case => {
  const reference = fitOf(row);
  const curve = curveAt(reference, numberOf(row, "irradiance_W_per_m2"), numberOf(row, "cell_temperature_C"));
  const computed: Readonly<Record<string, () => number>> = {
    modified_ideality_a: () => reference.idealityV,
    photocurrent: () => reference.photocurrentA,
    saturation_current: () => reference.saturationA,
    series_resistance: () => reference.seriesOhm,
    shunt_resistance: () => reference.shuntOhm,
    short_circuit_current: () => shortCircuitA(curve),
    open_circuit_voltage: () => openCircuitV(curve),
    voltage_at_maximum_power: () => maxPowerPoint(curve).volts,
    maximum_power: () => maxPowerPoint(curve).watts,
  };
  const ours = computed[row.quantity ?? ""];
  if (ours === undefined) throw new Error(`${idOf(row)}: unknown quantity ${row.quantity}`);
  const expected = numberOf(row, "expected");
  return relative(idOf(row), ours(), expected, (100 * lastDigit(row.expected ?? "")) / Math.abs(expected));
};

export const singleDiode: readonly Comparison[] = [
  {
    quantity: "Lambert W",
    reference: "its definition, 25-digit arithmetic",
    unit: "relative",
    cause: "rounding of doubles (1e-11 beside the branch point, where W is that sensitive)",
    count: 22,
    cases: () =>
      lambertRows.map((row) => {
        const [ours, theirs] = [lambertW0(numberOf(row, "x")), numberOf(row, "lambert_w0")];
        const tolerance = Number.parseFloat(row.tolerance ?? "");
        const case_ = relative(idOf(row), ours, theirs, tolerance);
        return { ...case_, difference: theirs === 0 ? ours : ours / theirs - 1 };
      }),
  },
  {
    quantity: "measured current of a 36-cell module, 25 points",
    reference: "Easwarakhanthan et al. 1986, with its fitted parameters",
    unit: "A",
    cause: "the published fit's own scatter",
    count: 25,
    cases: () => {
      const curve = publishedCurve(byDevice("PWP"));
      return measuredRows.map((row) =>
        absolute(
          idOf(row),
          currentAt(curve, numberOf(row, "voltage_V")),
          numberOf(row, "current_A"),
          numberOf(row, "tolerance_A"),
        ),
      );
    },
  },
  {
    quantity: "rms of the implicit equation over those points",
    reference: "Easwarakhanthan et al. 1986 and later fits",
    unit: "A",
    cause: "the published digits",
    count: 1,
    cases: () => {
      const row = byDevice("PWP");
      const curve = publishedCurve(row);
      const errors = pointsOf("PWP").map(([volts, amps]) => implicitResidual(curve, volts, amps));
      return [absolute(idOf(row), rms(errors), numberOf(row, "expected"), numberOf(row, "tolerance"))];
    },
  },
  {
    quantity: "five parameters of a 60 W module from its nameplate",
    reference: "De Soto, Klein & Beckman 2006, solved by an independent program",
    unit: "%",
    cause: "the last printed digit",
    count: 5,
    cases: () => desotoRows.slice(0, 5).map(desotoCase),
  },
  {
    quantity: "curve of that module at other light and warmth",
    reference: "De Soto, Klein & Beckman 2006, solved by an independent program",
    unit: "%",
    cause: "the last printed digit",
    count: 20,
    cases: () => desotoRows.slice(5).map(desotoCase),
  },
];
