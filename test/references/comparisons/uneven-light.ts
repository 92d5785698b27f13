/** Panels with cells in shadow: two independent solvers' currents and every local maximum, and a textbook's shaded cell. */
import type { DiodeCurve } from "../../../lib/panel/single-diode.ts";
import {
  type CellGroup,
  highestPeak,
  powerPeaks,
  type UnevenPanel,
  unevenCurrentAt,
  unevenVoltageAt,
} from "../../../lib/panel/uneven-light.ts";
import { inputsOf, type ReferenceRow, readReference } from "../read.ts";
import { absolute, type Case, type Comparison } from "./comparison.ts";
import { idOf, numberOf } from "./fields.ts";

const rows = readReference("uneven-light.csv");

/** The rows' own module in some light: photocurrent in step with it, shunt against it, the rest as it is. */
const curveIn = (inputs: Readonly<Record<string, string>>, lightWm2: number): DiodeCurve => ({
  photocurrentA: (numberOf(inputs, "photocurrent_A") * lightWm2) / 1000,
  saturationA: numberOf(inputs, "saturation_current_A"),
  seriesOhm: numberOf(inputs, "series_resistance_ohm"),
  shuntOhm: (numberOf(inputs, "shunt_resistance_ohm") * 1000) / lightWm2,
  idealityV: Number.parseFloat(inputs.modified_ideality_V ?? ""),
});

const groupsOf = (row: ReferenceRow): readonly CellGroup[] => {
  const inputs = inputsOf(row);
  const text = row.inputs ?? "";
  const curve = (light: number): DiodeCurve => curveIn(inputs, light);
  const lights = /groups at ([\d/]+) W/.exec(text)?.[1]?.split("/").map(Number);
  if (lights !== undefined) return lights.map((light) => [{ share: 1 / lights.length, curve: curve(light) }]);
  const single = /one cell at (\d+) W\/m2, the other 35 at 1000/.exec(text);
  if (single === null) throw new Error(`${idOf(row)}: no light`);
  return [
    [
      { share: 17 / 36, curve: curve(1000) },
      { share: 1 / 36, curve: curve(Number(single[1])) },
    ],
    [{ share: 0.5, curve: curve(1000) }],
  ];
};

const panelOf = (row: ReferenceRow): UnevenPanel => {
  const { bypass_drop_V: drop } = inputsOf(row);
  return { groups: groupsOf(row), bypassDropV: drop === "none" ? null : Number(drop) };
};

/** The local maxima beside the highest, the strongest first. */
const lesserPeaks = (panel: UnevenPanel) => [...powerPeaks(panel)].sort((a, b) => b.watts - a.watts).slice(1);

const unevenCase = (row: ReferenceRow): Case => {
  const panel = panelOf(row);
  const computed: Readonly<Record<string, () => number>> = {
    current: () => unevenCurrentAt(panel, numberOf(inputsOf(row), "terminal_voltage_V")),
    global_maximum_power: () => highestPeak(panel).watts,
    voltage_at_global_maximum: () => highestPeak(panel).volts,
    number_of_power_maxima: () => powerPeaks(panel).length,
    local_maximum_1_power: () => lesserPeaks(panel)[0].watts,
    local_maximum_1_voltage: () => lesserPeaks(panel)[0].volts,
    local_maximum_2_power: () => lesserPeaks(panel)[1].watts,
    local_maximum_2_voltage: () => lesserPeaks(panel)[1].volts,
  };
  const ours = computed[row.quantity ?? ""];
  if (ours === undefined) throw new Error(`${idOf(row)}: unknown quantity ${row.quantity}`);
  const tolerance = row.quantity === "number_of_power_maxima" ? 0 : numberOf(row, "tolerance");
  return absolute(idOf(row), ours(), numberOf(row, "expected"), tolerance);
};

/** q/kT of the textbook's example, 1/V. */
const PER_VOLT = 38.9;

/** The textbook's module of 36 cells: all but one in full sun, that one wholly dark, no bypass diode. */
const textbookCase = (row: ReferenceRow): Case => {
  const cell = (photocurrentA: number): DiodeCurve => ({
    photocurrentA,
    saturationA: 6e-10,
    seriesOhm: 36 * 0.005,
    shuntOhm: 36 * 6.6,
    idealityV: 36 / PER_VOLT,
  });
  const shaded: UnevenPanel = {
    groups: [
      [
        { share: 35 / 36, curve: cell(3.4) },
        { share: 1 / 36, curve: cell(0) },
      ],
    ],
    bypassDropV: null,
  };
  const whole: UnevenPanel = { groups: [[{ share: 1, curve: cell(3.4) }]], bypassDropV: null };
  const amps = 2.14;
  const computed: Readonly<Record<string, () => number>> = {
    "MAS-55-V": () => unevenVoltageAt(whole, amps),
    "MASSH-V": () => unevenVoltageAt(shaded, amps),
    "MASSH-P": () => amps * unevenVoltageAt(shaded, amps),
    "MASSH-drop": () => unevenVoltageAt(whole, amps) - unevenVoltageAt(shaded, amps),
  };
  return absolute(idOf(row), computed[idOf(row)](), numberOf(row, "expected"), numberOf(row, "tolerance"));
};

const byQuantity = (pattern: RegExp) =>
  rows.filter((row) => /^(SUB|CELL)/.test(idOf(row)) && pattern.test(row.quantity ?? ""));

const SOLVERS = "two independent solvers: one diode a group, ideal bypass diodes, all at 25 degC";

export const unevenLight: readonly Comparison[] = [
  {
    quantity: "current of a panel with groups in shadow",
    reference: SOLVERS,
    unit: "A",
    cause: "four printed decimals, and their margin of 0.003",
    count: 17,
    cases: () => byQuantity(/^current$/).map(unevenCase),
  },
  {
    quantity: "every local maximum of its power, and how many there are",
    reference: SOLVERS,
    unit: "W, 1",
    cause: "a thousandth of the power",
    count: 26,
    cases: () => byQuantity(/power/).map(unevenCase),
  },
  {
    quantity: "voltage at each of these",
    reference: SOLVERS,
    unit: "V",
    cause: "power is level at its top",
    count: 16,
    cases: () => byQuantity(/voltage/).map(unevenCase),
  },
  {
    quantity: "one of 36 cells wholly dark, no bypass diode",
    reference:
      "Masters 2004, Renewable and Efficient Electric Power Systems, examples 8.4 and 8.6, from memory",
    unit: "V, W",
    cause: "the book's rounding of current and voltage",
    count: 4,
    cases: () =>
      rows
        .filter((row) => ["MAS-55-V", "MASSH-V", "MASSH-P", "MASSH-drop"].includes(idOf(row)))
        .map(textbookCase),
  },
];
