import { z } from "zod";
import { monthly, quantity } from "./field.ts";

/** Classes of clear air, cleanest first; what each means in numbers stands in `sky/turbidity.ts`. */
export const TURBIDITY_CLASSES = ["clean", "standard", "clear", "turbid", "very turbid"] as const;

export type TurbidityClass = (typeof TURBIDITY_CLASSES)[number];

const everyMonth = (least: number, most: number, unit: string) =>
  z.union([quantity(least, most, { unit }), monthly(least, most, { unit })]).meta({
    unit,
    hint: `one number for the whole year or twelve, January first, each ${least} to ${most} ${unit}`,
  });

/** The clear air over the site, and how warm and windy it is where no weather file says so. */
export const airSchema = z.strictObject({
  turbidity: z
    .union([
      z.enum(TURBIDITY_CLASSES),
      z.strictObject({
        aod380: quantity(0, 2, { unit: "(aerosol optical depth at 380 nm)" }),
        aod500: quantity(0, 2, { unit: "(aerosol optical depth at 500 nm)" }),
      }),
    ])
    .meta({ hint: `one of ${TURBIDITY_CLASSES.join(", ")}, or {"aod380": ..., "aod500": ...}` })
    .default("standard"),
  waterCm: quantity(0, 10, {
    unit: "cm of precipitable water",
    hint: "left out: that of the place and month where the climate tells it, else 1.42 at the sea, less with height",
  }).optional(),
  ozoneCm: quantity(0, 0.6, { unit: "cm of ozone" }).default(0.32),
  temperatureC: everyMonth(-60, 55, "degC").default(15),
  windMs: everyMonth(0, 40, "m/s").default(2),
});

export type Air = z.output<typeof airSchema>;
