import { z } from "zod";
import { metresOf } from "../units/length.ts";
import { quantity } from "./field.ts";
import { gaugeOf, gaugeText } from "./wire-size.ts";

/** A cable length one way: a number is metres; text carries its unit (`"16 ft"`, `"5 m"`). Metres out. */
const oneWayM = z
  .preprocess(
    (value) => (typeof value === "string" ? (metresOf(value) ?? value) : value),
    z.number().min(0.05).max(200),
  )
  .meta({ unit: "m one way", hint: 'a bare number is metres, one way; feet are text with a unit, "16 ft"' });

const AWG_HINT = 'mm2 as a number, or a gauge as text, "12 AWG"';

/** A wire size: mm2 as a number, or a gauge as text. Stays as given, the gauge spelled one way. */
export const wireSize = z
  .union([
    quantity(0.2, 300, { unit: "mm2", hint: AWG_HINT }),
    z
      .string()
      .refine((text) => gaugeOf(text) !== null, "must be a gauge from 24 AWG to 4/0 AWG")
      .transform((text) => gaugeText(gaugeOf(text) ?? 0))
      .meta({ hint: AWG_HINT }),
  ])
  .meta({ hint: AWG_HINT });

const cable = (usual: {
  readonly size: number;
  readonly lengthM: number;
  readonly contactMilliohm: number;
}) =>
  z.strictObject({
    size: wireSize.default(usual.size),
    lengthM: oneWayM.default(usual.lengthM),
    material: z.enum(["copper", "aluminium"]).default("copper"),
    /** Fine-stranded flexible (IEC 60228 class 5), plain stranded (class 2), or one solid wire (class 1). */
    strands: z.enum(["flexible", "stranded", "solid"]).default("flexible"),
    conductorC: quantity(-40, 120, { unit: "degC of the conductor at work" }).default(45),
    /** What the insulation stands, for the current it may carry. */
    insulationC: z.literal([60, 70, 75, 90]).meta({ unit: "degC" }).default(70),
    /** Plugs, fuse holder and terminals of both wires together. */
    contactMilliohm: quantity(0, 200, { unit: "milliohm, plugs and terminals together" }).default(
      usual.contactMilliohm,
    ),
  });

/** Share of the rated power that goes in, and the share of it that comes out. */
const efficiencyPoint = z.strictObject({
  loadPct: quantity(0, 100, { unit: "% of the rated power" }),
  efficiencyPct: quantity(0, 100, { unit: "%" }),
});

const rising = (points: readonly { readonly loadPct: number }[]): boolean =>
  points.every((point, index) => index === 0 || point.loadPct > (points[index - 1]?.loadPct ?? 0));

const mppt = z.strictObject({
  kind: z.literal("mppt"),
  /** A small charger of good make (common practice, no source). */
  efficiency: z
    .array(efficiencyPoint)
    .min(1)
    .max(20)
    .refine(rising, "must have rising loads")
    .default([
      { loadPct: 0, efficiencyPct: 85 },
      { loadPct: 5, efficiencyPct: 91 },
      { loadPct: 10, efficiencyPct: 94 },
      { loadPct: 20, efficiencyPct: 96 },
      { loadPct: 50, efficiencyPct: 97 },
      { loadPct: 100, efficiencyPct: 96 },
    ]),
  maxCurrentA: quantity(1, 200, { unit: "A into the battery" }).default(15),
  /** The most it takes from the panels, where its label says less than current x voltage. */
  maxPowerW: quantity(10, 20_000, { unit: "W from the panels" }).optional(),
  /** The greatest short-circuit current of panels that its label allows at its input. */
  maxPanelIscA: quantity(1, 300, { unit: "A of short-circuit current" }).optional(),
  maxInputV: quantity(10, 600, { unit: "V from the panel" }).default(75),
  /** Panel voltage above the battery's to begin with, and to keep going. */
  startAboveBatteryV: quantity(0, 20, { unit: "V above the battery" }).default(5),
  headroomV: quantity(0, 20, { unit: "V above the battery" }).default(1),
  ownW: quantity(0, 20, { unit: "W day and night" }).default(0.25),
});

const pwm = z.strictObject({
  kind: z.literal("pwm"),
  dropV: quantity(0, 2, { unit: "V between panel and battery terminals" }).default(0.3),
  maxCurrentA: quantity(1, 200, { unit: "A" }).default(15),
  maxInputV: quantity(10, 600, { unit: "V from the panel" }).default(50),
  ownW: quantity(0, 20, { unit: "W day and night" }).default(0.1),
});

export const controllerSchema = z.discriminatedUnion("kind", [mppt, pwm]);

/**
 * A cut-off that keeps loads off until the battery has recovered: to a voltage at its terminals or to a state of charge. A
 * controller's data sheet for 12 V lead-acid has 12.5 V; a compressor fridge's own cut-in is 11.7 V.
 */
const loadCutOff = z
  .strictObject({
    reconnectV: quantity(8, 64, { unit: "V at the battery's terminals" }).optional(),
    reconnectPct: quantity(1, 100, { unit: "% state of charge" }).optional(),
  })
  .refine(({ reconnectV, reconnectPct }) => (reconnectV === undefined) !== (reconnectPct === undefined), {
    message: "must state either `reconnectV` or `reconnectPct`",
    params: { hint: "the voltage or the state of charge at which loads come back" },
  });

/** From the panels to the battery: two cables and what stands between them. */
export const circuitSchema = z.strictObject({
  /** Each panel's own cable, or that of each string of them, to the controller or to the joint in front of it. */
  panelCable: cable({ size: 4, lengthM: 6, contactMilliohm: 2 }).prefault({}),
  batteryCable: cable({ size: 6, lengthM: 1.5, contactMilliohm: 2 }).prefault({}),
  controller: controllerSchema.prefault({ kind: "mppt" }),
  /** Several panels: side by side on one controller, or one such controller for each string. */
  wiring: z.enum(["parallel", "own-controllers"]).default("parallel"),
  /** Left out: loads are served again from the first light after the battery has fallen to its floor. */
  loadCutOff: loadCutOff.optional(),
  /** The fuse in each branch of panels side by side; left out, there is none. */
  branchFuseA: quantity(1, 100, { unit: "A" }).optional(),
  /** Forward drop of a blocking diode in each panel's branch; 0 for none that costs voltage. */
  blockingDiodeV: quantity(0, 1.5, { unit: "V" }).default(0),
  /** Panel current above its nameplate in strong light, and the allowance for current that runs for hours. */
  strongLightFactor: quantity(1, 1.6, { unit: "x Isc" }).default(1.25),
  continuousFactor: quantity(1, 1.6, { unit: "x worst-case current" }).default(1.25),
  /** Air round the cables at its hottest, for the current that they may carry; and the coldest morning, for Voc. */
  hottestC: quantity(-20, 80, { unit: "degC" }).default(40),
  coldestC: quantity(-60, 40, { unit: "degC" }).default(-10),
});

export type Circuit = z.output<typeof circuitSchema>;
export type CableRun = Circuit["panelCable"];
export type Controller = z.output<typeof controllerSchema>;
export type MpptController = Extract<Controller, { readonly kind: "mppt" }>;
export type PwmController = Extract<Controller, { readonly kind: "pwm" }>;
