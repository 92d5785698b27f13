import { z } from "zod";
import { cuttingSchema } from "./cutting.ts";
import { lengthMm, quantity, shortName } from "./field.ts";
import { steadyingSchema } from "./steadying.ts";

/** How a leg holds the panel up: square to its back, standing plumb, or folded out as far as a strap allows. */
export const LEG_STYLES = ["square", "plumb", "strap"] as const;

export type LegStyle = (typeof LEG_STYLES)[number];

const legByLength = z.strictObject({
  name: shortName,
  /** From the centre of the pivot hole to the foot. */
  lengthMm: lengthMm(1, 3000),
  /** Already cut: kept when the best set of legs is looked for. */
  owned: z.boolean().default(false),
});

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

/** The panel's frame as a box that legs fold into. */
const frameSchema = z.strictObject({
  /** Back edge of the frame to the glass side. */
  depthMm: lengthMm(10, 120).default(35),
  /** What the frame's upper and lower members take off the length inside, at each end. */
  wallMm: lengthMm(0, 150).default(30),
  /** Glass, cells and backsheet: depth that is not free for legs. */
  laminateMm: lengthMm(0, 50).default(6),
});

/** The fold-out stand: its geometry, the legs at hand, and where the panel faces. */
export const standSchema = z.strictObject({
  /** Bearing the panel's face looks along; left out, towards the equator. */
  facingDeg: quantity(0, 360, { unit: "degrees from true north" }).optional(),
  legStyle: z.enum(LEG_STYLES).default("square"),
  /** From the panel's bottom edge to the leg's pivot hole, along the frame. */
  pivotMm: lengthMm(50, 2500).default(700),
  /** From the frame's back edge to the pivot hole, towards the glass; negative when it stands behind on a block. */
  pivotInsetMm: lengthMm(-100, 100, {
    hint: "negative: the pivot stands behind the frame, on a block",
  }).default(0),
  /** A spacer under the bottom edge: what lifts it off the ground. */
  heelSpacerMm: lengthMm(0, 200).default(0),
  /** Slope of the ground along the aim. */
  groundSlopeDeg: quantity(-30, 30, {
    unit: "degrees",
    hint: "positive when the ground falls away towards where the panel faces",
  }).default(0),
  frame: frameSchema.prefault({}),
  /** The longest leg that stows inside the frame, pivot hole to foot; left out, it is worked out from the frame. */
  stowMm: lengthMm(50, 2500).optional(),
  /** On the ground from the panel's bottom edge to the leg's foot, as the strap allows; for `strap` only. */
  strapMm: lengthMm(50, 3000).optional(),
  /** What a further leg, or changing legs, has to bring to be recommended: share of the season's energy; left out, 2. */
  leastGainPct: quantity(0, 50, { unit: "% of the season's energy" }).optional(),
  legs: z.array(legSchema).max(12).default([]),
  cutting: cuttingSchema.prefault({}),
  steadying: steadyingSchema.prefault({}),
});

export type Stand = z.output<typeof standSchema>;
