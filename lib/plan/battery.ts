import { z } from "zod";
import { quantity } from "./field.ts";

/** Storage chemistries that `circuit/chemistry.ts` knows. */
export const CHEMISTRIES = ["LiFePO4", "AGM", "gel", "flooded"] as const;

export type Chemistry = (typeof CHEMISTRIES)[number];

/** What differs between chemistries unless the user says otherwise: common practice, no source, unless noted. */
interface Usual {
  readonly usablePct: number;
  readonly chargeEfficiencyPct: number;
  readonly dischargeEfficiencyPct: number;
  readonly maxChargePerHourPct: number;
  readonly taperHours: number;
  readonly selfDischargePctPerMonth: number;
  readonly chargeAboveC: number;
  readonly dischargeAboveC: number;
}

/**
 * Where a battery stands: in a space that people live in and keep warm; in a locker or box under cover, unheated; or out
 * in the open air. What each does to its temperature: `circuit/battery-temperature.ts`.
 */
export const BATTERY_STANDS = ["living space", "locker", "outside"] as const;

export type BatteryStand = (typeof BATTERY_STANDS)[number];

/** A living space is kept about so warm while people are in it (common practice, no source). */
const LIVING_SPACE_C = 15;

/**
 * Energy efficiencies multiply to the round trip: about 0.95 for lithium, 0.72 for flooded lead (a battery handbook
 * gives 0.70 for lead-acid and "almost 1" in charge for lithium). A lead-acid taper of one hour is the ampere-hour
 * rule (Woodbridge 1935, from memory): the current never above the ampere-hours still missing.
 *
 * Temperature limits of lithium: no charge below 0 degC in every maker's table read; discharge ends at -20 to -40
 * degC, at -30 or with a tenth of the capacity an hour, and most protection circuits part the battery at -20.
 */
const USUAL: Readonly<Record<Chemistry, Usual>> = {
  LiFePO4: {
    usablePct: 90,
    chargeEfficiencyPct: 97,
    dischargeEfficiencyPct: 98,
    maxChargePerHourPct: 50,
    taperHours: 0.1,
    selfDischargePctPerMonth: 2,
    chargeAboveC: 0,
    dischargeAboveC: -20,
  },
  AGM: {
    usablePct: 50,
    chargeEfficiencyPct: 87,
    dischargeEfficiencyPct: 94,
    maxChargePerHourPct: 25,
    taperHours: 1,
    selfDischargePctPerMonth: 2,
    chargeAboveC: -20,
    dischargeAboveC: -40,
  },
  gel: {
    usablePct: 50,
    chargeEfficiencyPct: 86,
    dischargeEfficiencyPct: 94,
    maxChargePerHourPct: 20,
    taperHours: 1,
    selfDischargePctPerMonth: 2,
    chargeAboveC: -20,
    dischargeAboveC: -40,
  },
  flooded: {
    usablePct: 50,
    chargeEfficiencyPct: 80,
    dischargeEfficiencyPct: 90,
    maxChargePerHourPct: 15,
    taperHours: 1,
    selfDischargePctPerMonth: 5,
    chargeAboveC: -20,
    dischargeAboveC: -40,
  },
};

const battery = <C extends Chemistry>(chemistry: C) => {
  const usual = USUAL[chemistry];
  return z.strictObject({
    chemistry: z.literal(chemistry),
    capacityAh: quantity(1, 5000, { unit: "Ah", hint: "the nameplate's, at its 20-hour rate" }).default(100),
    systemV: z.literal([12, 24, 48]).meta({ unit: "V" }).default(12),
    usablePct: quantity(5, 100, { unit: "% of the capacity you are willing to take out" }).default(
      usual.usablePct,
    ),
    startPct: quantity(0, 100, { unit: "% state of charge on the first evening" }).default(100),
    chargeEfficiencyPct: quantity(30, 100, { unit: "% of the energy" }).default(usual.chargeEfficiencyPct),
    dischargeEfficiencyPct: quantity(30, 100, { unit: "% of the energy" }).default(
      usual.dischargeEfficiencyPct,
    ),
    maxChargePerHourPct: quantity(1, 300, { unit: "% of the capacity an hour" }).default(
      usual.maxChargePerHourPct,
    ),
    /** Near full no more is taken in an hour than what is missing, divided by this many hours. */
    taperHours: quantity(0.01, 12, { unit: "h" }).default(usual.taperHours),
    selfDischargePctPerMonth: quantity(0, 50, { unit: "% a month" }).default(usual.selfDischargePctPerMonth),
    chargeAboveC: quantity(-40, 20, { unit: "degC, no charge below it" }).default(usual.chargeAboveC),
    dischargeAboveC: quantity(-60, 20, { unit: "degC, nothing is taken out below it" }).default(
      usual.dischargeAboveC,
    ),
    /** Warms a battery too cold to charge, from light that is to spare. 0: no heater. */
    heaterW: quantity(0, 500, { unit: "W" }).default(0),
    /**
     * A locker unless stated: most batteries stand under cover and unheated, and taking a battery for warm that is
     * not would hide the days on which it cannot be charged.
     */
    stands: z.enum(BATTERY_STANDS).default("locker"),
    /** Temperature at which the battery is kept. Left out, a living space is taken as kept at 15 degC; elsewhere it follows the air. */
    keptAtC: quantity(-40, 50, { unit: "degC" }).optional(),
  });
};

/** What stores the energy. `usablePct` sets the floor: below it nothing is taken out. */
export const batterySchema = z.discriminatedUnion("chemistry", [
  battery("LiFePO4"),
  battery("AGM"),
  battery("gel"),
  battery("flooded"),
]);

export type Battery = z.output<typeof batterySchema>;

/** The temperature at which a battery is kept, degC; `null` when it follows the air. */
export const keptAtC = ({ stands, keptAtC: stated }: Pick<Battery, "stands" | "keptAtC">): number | null =>
  stated ?? (stands === "living space" ? LIVING_SPACE_C : null);
