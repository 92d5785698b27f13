import type { Battery, Chemistry } from "../plan/battery.ts";
import { type Curve, readCurve } from "../units/interpolation.ts";

/** What a chemistry is like, for a battery of 12 V class. */
export interface ChemistryTraits {
  /** Voltage that turns its ampere-hours into watt-hours. */
  readonly nominalV: number;
  /** Voltage at rest against state of charge, 0 to 1. Never falls. */
  readonly restV: Curve;
  /** Voltage above that while charging at a tenth of its capacity an hour; grows in step with the current. */
  readonly chargeRiseV: number;
  /** Share of its capacity at a temperature, degC. */
  readonly capacityAtC: Curve;
}

/**
 * Lead-acid capacity in the cold: the inverse of the temperature multipliers of a battery-sizing worksheet (27 to -7
 * degC: 1.00, 1.04, 1.11, 1.19, 1.30, 1.40, 1.59; 1.11 and 1.40 from memory). Colder than that, no more is taken off.
 */
const LEAD_ACID_COLD: Curve = [
  [-6.7, 1 / 1.59],
  [-1.1, 1 / 1.4],
  [4.4, 1 / 1.3],
  [10, 1 / 1.19],
  [15.6, 1 / 1.11],
  [21.1, 1 / 1.04],
  [26.7, 1],
];

/** Common practice, no source. */
const LITHIUM_COLD: Curve = [
  [-20, 0.65],
  [-10, 0.8],
  [0, 0.9],
  [20, 1],
];

/**
 * Rest voltages: customary tables of the trade, from memory. The flooded one follows the rule "specific gravity + 0.84
 * V a cell" between 1.265 full and about 1.12 empty.
 */
export const CHEMISTRY_TRAITS: Readonly<Record<Chemistry, ChemistryTraits>> = {
  LiFePO4: {
    nominalV: 12.8,
    restV: [
      [0, 10.5],
      [0.1, 12.6],
      [0.2, 12.9],
      [0.4, 13.1],
      [0.7, 13.2],
      [0.95, 13.35],
      [1, 13.6],
    ],
    chargeRiseV: 0.1,
    capacityAtC: LITHIUM_COLD,
  },
  AGM: {
    nominalV: 12,
    restV: [
      [0, 11.65],
      [0.25, 12.0],
      [0.5, 12.3],
      [0.75, 12.6],
      [1, 12.9],
    ],
    chargeRiseV: 0.7,
    capacityAtC: LEAD_ACID_COLD,
  },
  gel: {
    nominalV: 12,
    restV: [
      [0, 11.8],
      [0.25, 12.0],
      [0.5, 12.3],
      [0.75, 12.6],
      [1, 12.85],
    ],
    chargeRiseV: 0.8,
    capacityAtC: LEAD_ACID_COLD,
  },
  flooded: {
    nominalV: 12,
    restV: [
      [0, 11.89],
      [0.25, 12.06],
      [0.5, 12.24],
      [0.75, 12.45],
      [1, 12.65],
    ],
    chargeRiseV: 0.8,
    capacityAtC: LEAD_ACID_COLD,
  },
};

/** Voltage class of a battery in twelves: 1 for 12 V, 2 for 24 V, 4 for 48 V. */
const twelves = ({ systemV }: Pick<Battery, "systemV">): number => systemV / 12;

/** The voltage that turns a battery's ampere-hours into watt-hours, V. */
export const nominalV = (battery: Pick<Battery, "chemistry" | "systemV">): number =>
  CHEMISTRY_TRAITS[battery.chemistry].nominalV * twelves(battery);

/**
 * Voltage of a battery at rest, V.
 *
 * @param charge State of charge, 0 to 1 of the whole capacity; beyond, the end's.
 * @example restV({ chemistry: "flooded", systemV: 12 }, 1) // 12.65
 */
export const restV = (battery: Pick<Battery, "chemistry" | "systemV">, charge: number): number =>
  readCurve(CHEMISTRY_TRAITS[battery.chemistry].restV, charge) * twelves(battery);

/** What a battery puts in the way of charging current, ohm: its rise at a tenth of the capacity an hour, over that current. */
export const chargeOhm = (battery: Pick<Battery, "chemistry" | "systemV" | "capacityAh">): number =>
  (CHEMISTRY_TRAITS[battery.chemistry].chargeRiseV * twelves(battery) * 10) / battery.capacityAh;

/**
 * Share of the capacity that a battery has at a temperature, 0 to 1.
 *
 * @example 1 / capacityShare("AGM", 10) // 1.19
 */
export const capacityShare = (chemistry: Chemistry, batteryC: number): number =>
  readCurve(CHEMISTRY_TRAITS[chemistry].capacityAtC, batteryC);
