import { z } from "zod";
import { controllerSchema, wireSize } from "./circuit.ts";
import { count, quantity, shortName } from "./field.ts";
import { moduleSchema } from "./panels.ts";
import { STEP_MINUTES } from "./season.ts";

const money = (most: number, usual: number, of: string) =>
  quantity(0, most, { unit: `of your currency, ${of}` }).default(usual);

/** What the remedies cost, in one currency. Invented defaults of about the right size: put in your own. */
const prices = z.strictObject({
  legs: money(1e5, 20, "for a set of legs"),
  panelPerW: money(1e3, 0.9, "for each watt of a second panel"),
  roofMount: money(1e5, 40, "to fix a panel on the roof"),
  secondStand: money(1e5, 35, "for a second stand with legs"),
  thickerCable: money(1e5, 25, "for the thicker cable"),
  betterController: money(1e5, 90, "for the better controller"),
  largerController: money(1e5, 45, "for a controller of more amperes or volts in place of today's"),
  furtherController: money(1e5, 110, "for a further controller with its fuse"),
  branchFuse: money(1e4, 8, "for a fuse with its holder in each branch of panels"),
  biggerBattery: money(1e6, 260, "for the bigger battery"),
  warmBattery: money(1e5, 45, "for a heating mat with its thermostat under the battery"),
  fewerLoads: money(1e5, 0, "for doing with less"),
});

/** Ways to top a battery up that the panels left flat. */
export const TOP_UP_WAYS = ["hook-up", "driving", "generator"] as const;

export type TopUpWay = (typeof TOP_UP_WAYS)[number];

/**
 * What a person does when the battery is flat. A mains charger for lead-acid gives 10 to 25 % of the capacity an hour (an
 * inverter maker's manual); a 40 A alternator 30 A when hot (the same), some 360 W, less at idle; a small petrol generator
 * feeds a charger of about its half load. Hours and minutes are common practice, no source.
 */
const instead = z.strictObject({
  /** The way in use. Left out, every answer says which it took. */
  inUse: z.enum(TOP_UP_WAYS).optional(),
  hookUpNight: money(1e4, 30, "for a night with a hook-up"),
  hookUpHours: quantity(1, 72, { unit: "hours that a stay at a hook-up lasts" }).default(12),
  hookUpChargePct: quantity(1, 100, {
    unit: "% of the capacity that the mains charger gives in an hour",
  }).default(15),
  drivingHour: money(1e4, 8, "for an hour of driving"),
  drivingHourWh: quantity(1, 1e4, { unit: "Wh that an hour of driving brings" }).default(300),
  drivingMinutes: quantity(5, 1440, { unit: "minutes that a drive lasts" }).default(60),
  generatorHour: money(1e4, 2.5, "for an hour of generator"),
  generatorHourWh: quantity(1, 1e5, { unit: "Wh that an hour of generator brings" }).default(600),
  generatorHours: quantity(0.25, 24, {
    unit: "hours at most that the generator runs; it stops when full",
  }).default(3),
});

/** The question whether something is worth it: what is compared, what it costs, and how many short days are accepted. */
export const worthSchema = z.strictObject({
  currency: shortName.default("EUR"),
  /** Years that what is bought is used for, one season a year. */
  years: quantity(1, 40, { unit: "years of use, one season each" }).default(5),
  /** Short days a season, on average, that are accepted. */
  wantedShortDays: quantity(0, 366, { unit: "short days a season, on average" }).default(2),
  /** How the stand is used today: on its legs, changed by the calendar; on the best one of them for good; or lying flat. */
  now: z.enum(["legs", "one-leg", "flat"]).default("legs"),
  /** Aims a day in the set-up with the panel turned after the sun. */
  aimsADay: count(2, 4, { unit: "aims a day" }).default(3),
  /** Nameplate of the second panel; left out, the same as the first. */
  secondPanel: moduleSchema.optional(),
  /** The thicker panel cable; left out, two sizes up. */
  thickerCable: wireSize.optional(),
  /** The better controller; left out, an MPPT one with as much current. */
  betterController: controllerSchema.optional(),
  biggerBatteryPct: quantity(101, 1000, { unit: "% of today's capacity" }).default(200),
  /** Draw of the mat that keeps the battery warm: 20 W under one of 100 Ah (common practice, no source). */
  warmBatteryW: quantity(1, 500, { unit: "W of the heating mat" }).default(20),
  keptLoadPct: quantity(0, 99, { unit: "% of every load that is kept" }).default(75),
  prices: prices.prefault({}),
  instead: instead.prefault({}),
  /** Steps of the seasons that are lived through; every set-up sees the same. */
  stepMinutes: z
    .literal([...STEP_MINUTES])
    .meta({ unit: "minutes" })
    .default(60),
});

export type Worth = z.output<typeof worthSchema>;
