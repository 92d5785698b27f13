import { z } from "zod";
import { clockTime, windowMinutes } from "./clock.ts";
import { count, quantity, shortName } from "./field.ts";

/** Days of the week, Monday first (ISO 8601). */
export const WEEKDAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;

export type Weekday = (typeof WEEKDAYS)[number];

/** From one clock time to another, in the site's zone; one that ends earlier than it begins runs over midnight. */
const clockWindow = z.strictObject({ from: clockTime, to: clockTime }).refine(({ from, to }) => from !== to, {
  path: ["to"],
  message: "must differ from `from`",
  params: { hint: 'a whole day is "00:00" to "24:00"' },
});

const onAtTimes = z.strictObject({
  kind: z.literal("at-times"),
  times: z.array(clockWindow).min(1).max(12),
});

const forHours = z
  .strictObject({
    kind: z.literal("for-hours"),
    hours: quantity(0, 24, { unit: "hours of use a day" }),
    /** The hours of use are spread evenly over this part of the day. */
    between: clockWindow.default({ from: "00:00", to: "24:00" }),
  })
  .refine(({ hours, between }) => hours * 60 <= windowMinutes(between), {
    path: ["hours"],
    message: "must fit into the part of the day between the two clock times",
  });

/** Runs for a share of the day that grows with the warmth round it, as heat leaks in. */
const cooling = z
  .strictObject({
    kind: z.literal("cooling"),
    dutyPct: quantity(0, 100, { unit: "% of the day at the stated air" }).default(35),
    statedAtC: quantity(-10, 60, { unit: "degC of the air" }).default(25),
    insideC: quantity(-40, 20, { unit: "degC inside" }).default(5),
    /** Air round it; left out, the outdoor air of the day. */
    roomC: quantity(-40, 60, { unit: "degC of the room" }).optional(),
  })
  .refine(({ statedAtC, insideC }) => statedAtC > insideC, {
    path: ["statedAtC"],
    message: "must be above the temperature kept inside",
    params: { hint: "the air at which the maker states how long it runs, usually 25 degC" },
  });

const appliance = z.strictObject({
  name: shortName,
  watts: quantity(0, 5000, { unit: "W while on" }),
  howMany: count(1, 100, { unit: "pieces" }).default(1),
  use: z.discriminatedUnion("kind", [onAtTimes, forHours, cooling]),
  days: z
    .array(z.enum(WEEKDAYS))
    .min(1)
    .max(7)
    .default([...WEEKDAYS]),
  /** Straight from the battery, or through the inverter. */
  supply: z.enum(["battery", "inverter"]).default("battery"),
});

export type Appliance = z.output<typeof appliance>;

/** What draws on the battery. Clock times are those of the site's zone. */
export const loadsSchema = z.strictObject({
  appliances: z.array(appliance).max(60).default([]),
  inverterEfficiencyPct: quantity(30, 100, { unit: "%" }).default(88),
  /** What the inverter itself draws while it is on. */
  inverterOwnW: quantity(0, 200, { unit: "W while on" }).default(6),
  /** On only while an appliance on it runs, or left on day and night. */
  inverterOn: z.enum(["with-its-loads", "all-day"]).default("with-its-loads"),
});

export type Loads = z.output<typeof loadsSchema>;
