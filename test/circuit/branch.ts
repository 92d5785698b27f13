import type { Branch } from "../../lib/circuit/index.ts";
import { diodePanel } from "../../lib/panel/index.ts";

/** Two sizes of one ordinary kind: 36 cells for a 12 V battery, and 60 cells. Invented nameplates. */
export const small = diodePanel({ powerW: 100, vmpV: 18, impA: 5.56, vocV: 22, iscA: 5.95 }).fit.reference;
export const large = diodePanel({ powerW: 280, vmpV: 31.5, impA: 8.89, vocV: 38.7, iscA: 9.45 }).fit
  .reference;

/** One small panel on a cable that drops nothing, but for what is said otherwise. */
export const branch = (over: Partial<Branch> = {}): Branch => ({
  reference: small,
  howMany: 1,
  shareLeft: 1,
  cableOhm: 0,
  blockingV: 0,
  ...over,
});
