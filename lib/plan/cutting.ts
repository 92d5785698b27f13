import { z } from "zod";
import { count, lengthMm } from "./field.ts";

/** How legs are cut: the stock, the saw, and what a piece is longer by than its leg. */
export const cuttingSchema = z.strictObject({
  /** Legs of each length: one at each side of the panel. */
  legsEach: count(1, 4, { unit: "legs" }).default(2),
  /** Width of a leg, and its thickness measured across the frame's depth. */
  legWidthMm: lengthMm(5, 100).default(30),
  legThicknessMm: lengthMm(1, 60).default(12),
  /** Material left beyond the centre of the pivot hole. */
  holeMarginMm: lengthMm(2, 100).default(20),
  holeMm: lengthMm(2, 30).default(8),
  /** A rubber foot or cap that the piece ends short by. */
  footMm: lengthMm(0, 100).default(0),
  /** What the saw turns to dust at each cut. */
  kerfMm: lengthMm(0, 10).default(3),
  /** Lengths of stock that can be had. */
  stockMm: z.array(lengthMm(100, 7000)).min(1).max(6).default([2000]),
  /** The shortest and longest leg to look at (left out: what the stand and its stowing allow), and the saw's step. */
  leastMm: lengthMm(1, 3000).optional(),
  greatestMm: lengthMm(1, 3000).optional(),
  stepMm: lengthMm(1, 100).default(10),
});

export type Cutting = z.output<typeof cuttingSchema>;
