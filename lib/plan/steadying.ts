import { z } from "zod";
import { quantity } from "./field.ts";

/** Kinds of ground roughness a wind blows over before it reaches the stand (EN 1991-1-4 table 4.1). */
export const TERRAINS = ["open sea", "lake or flat", "farmland", "suburb or forest", "town"] as const;

export type Terrain = (typeof TERRAINS)[number];

/** What keeps the stand where it is when the wind blows. */
export const steadyingSchema = z.strictObject({
  /** Weight hung on or laid over the stand, half on the heel and half on the leg's foot. */
  ballastKg: quantity(0, 500, { unit: "kg" }).default(0),
  /** Friction of its feet on the ground. */
  friction: quantity(0.05, 1.2, {
    unit: "(friction coefficient)",
    hint: "about 0.3 on wet grass or smooth rock, 0.5 on dry ground; a rough guide",
  }).default(0.4),
  terrain: z.enum(TERRAINS).default("farmland"),
  /** Mean wind, as a forecast states it, that answers say the ballast for: a fresh breeze, Beaufort 5 (our own choice). */
  holdWindMs: quantity(1, 30, { unit: "m/s, mean wind as forecast" }).default(10),
});

export type Steadying = z.output<typeof steadyingSchema>;
