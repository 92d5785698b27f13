import { z } from "zod";
import { controllerSchema } from "./circuit.ts";
import { count, lengthMm, quantity, shortName } from "./field.ts";

/** What the nameplate says. Only the power is needed; the rest is filled by stated defaults in `nameplate.ts`. */
export const moduleSchema = z.strictObject({
  powerW: quantity(1, 1000, { unit: "W at STC" }),
  powerPctPerK: quantity(-1, 0, {
    unit: "% of power per K",
    hint: "a loss as it warms: negative, usually -0.3 to -0.5",
  }).optional(),
  vmpV: quantity(1, 200, { unit: "V" }).optional(),
  impA: quantity(0.05, 40, { unit: "A" }).optional(),
  vocV: quantity(1, 250, { unit: "V" }).optional(),
  iscA: quantity(0.05, 45, { unit: "A" }).optional(),
  vocPctPerK: quantity(-1, 0, { unit: "% of Voc per K", hint: "a loss as it warms: negative" }).optional(),
  iscPctPerK: quantity(-0.1, 0.3, { unit: "% of Isc per K" }).optional(),
  cellsInSeries: count(1, 200, { unit: "cells" }).optional(),
  /** "Maximum series fuse" on the label: the largest fuse that may protect it beside others. */
  maxSeriesFuseA: quantity(1, 60, { unit: "A" }).optional(),
});

export type Module = z.output<typeof moduleSchema>;

const onStand = z.strictObject({ kind: z.literal("stand") });

const fixed = z.strictObject({
  kind: z.literal("fixed"),
  tiltDeg: quantity(0, 90, {
    unit: "degrees up from level",
    hint: "0 is flat; a reading taken from a post is 90 minus this",
  }).default(0),
  /** Left out: towards the equator, as `plan.ts` settles it from the site. */
  bearingDeg: quantity(0, 360, { unit: "degrees from true north" }).optional(),
  /** Whether air moves behind it; a panel lying on a roof runs warmer. */
  back: z.enum(["open", "roof"]).default("roof"),
});

/** How a panel is held: on the stand, so that a leg sets its tilt, or fixed for good. */
export const mountSchema = z.discriminatedUnion("kind", [onStand, fixed]);

export const panelSchema = z.strictObject({
  name: shortName,
  /** Panels of this kind, all on the same mount. */
  howMany: count(1, 20, { unit: "panels" }).default(1),
  /** How many of them are wired one behind another in each string, their voltages added up; the strings stand side by side. */
  inSeries: count(1, 20, { unit: "panels in a string" }).default(1),
  /** A controller that these panels have to themselves; left out, they are on the circuit's. */
  controller: controllerSchema.optional(),
  module: moduleSchema,
  mount: mountSchema.default({ kind: "stand" }),
  /** Outer size of one panel, and its weight: for wind and for the cutting sheet. */
  lengthMm: lengthMm(100, 2500).default(1000),
  widthMm: lengthMm(100, 2000).default(540),
  massKg: quantity(0.2, 60, { unit: "kg" }).default(7),
  dustPct: quantity(0, 50, { unit: "% of the light" }).default(2),
  otherLossPct: quantity(0, 50, {
    unit: "% of the power (mismatch, ageing, wiring inside the panel)",
  }).default(3),
});

export const panelsSchema = z
  .array(panelSchema)
  .min(1)
  .max(8)
  .superRefine((panels, context) => {
    const seen = new Set<string>();
    panels.forEach(({ name }, index) => {
      if (seen.has(name)) {
        context.addIssue({
          code: "custom",
          path: [index, "name"],
          input: name,
          message: "must differ from the other panels' names",
        });
      }
      seen.add(name);
    });
  });
