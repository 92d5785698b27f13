import { z } from "zod";
import { lengthMm, quantity, shortName } from "./field.ts";

/** How a leg holds the panel up: square to its back, standing plumb, or folded out as far as a strap allows. */
export const LEG_STYLES = ["square", "plumb", "strap"] as const;

export type LegStyle = (typeof LEG_STYLES)[number];

const legByLength = z.strictObject({ name: shortName, lengthMm: lengthMm(1, 3000) });

/** A leg named by the tilt it should give. `readFrom` says which side the angle is read from: nothing is assumed. */
const legByTilt = z.strictObject({
  name: shortName,
  tiltDeg: quantity(0, 90, { unit: "degrees" }),
  readFrom: z.enum(["ground", "post"]),
});

export const legSchema = z.union([legByLength, legByTilt]).meta({
  hint: '{"name": ..., "lengthMm": ...} or {"name": ..., "tiltDeg": ..., "readFrom": "ground" or "post"}',
});

export type Leg = z.output<typeof legSchema>;

/** The fold-out stand: its geometry, the legs at hand, and where the panel faces. */
export const standSchema = z.strictObject({
  /** Bearing the panel's face looks along; left out, towards the equator. */
  facingDeg: quantity(0, 360, { unit: "degrees from true north" }).optional(),
  legStyle: z.enum(LEG_STYLES).default("square"),
  /** From the panel's bottom edge to the leg's pivot hole, along the frame. */
  pivotMm: lengthMm(50, 2500).default(700),
  /** The longest leg that stows inside the frame, pivot hole to foot; left out, it is worked out from the frame. */
  stowMm: lengthMm(50, 2500).optional(),
  /** On the ground from the panel's bottom edge to the leg's foot, as the strap allows; for `strap` only. */
  strapMm: lengthMm(50, 3000).optional(),
  legs: z.array(legSchema).max(12).default([]),
});

export type Stand = z.output<typeof standSchema>;
