import type { CableRun } from "../plan/circuit.ts";
import { type Ampacity, ampacityOf, smallConductorFuseA } from "./ampacity.ts";
import { wireSizeOf } from "./wire.ts";

/**
 * Standard fuse ratings, A: blade fuses of ISO 8820-3 up to 40 A, bolted strip fuses of ISO 8820-5 above
 * (both from memory).
 */
export const FUSE_AMPS: readonly number[] = [
  1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 250, 300, 350, 400, 500,
];

/** The smallest standard fuse of at least that many amperes; `null` above the largest. */
export const fuseAtLeast = (amps: number): number | null =>
  FUSE_AMPS.find((rating) => rating >= amps) ?? null;

/** What can be said of a cable's current and its fuse. */
export type CurrentVerdict = "fits" | "too-thin" | "not-listed" | "no-fuse";

/** Whether a cable run may carry its current, and the fuse that would protect it: to be confirmed by the local code. */
export interface CurrentCheck {
  readonly verdict: CurrentVerdict;
  /** The most that can flow. */
  readonly worstCaseA: number;
  /** That with the allowance for current that runs for hours: what cable and fuse are chosen by. */
  readonly designA: number;
  readonly ampacity: Ampacity | null;
  /** The fuse to fit: at least the design current and at most what the cable may carry. */
  readonly fuseA: number | null;
  readonly words: string;
}

const CONFIRM = "A first check from published tables: confirm it by the local code before you build.";

const amperes = (amps: number): string => `${amps.toFixed(1)} A`;

/**
 * Checks a cable run against a published table and picks its fuse: design current = worst case x continuous factor;
 * the fuse is the next standard size up, and the cable must carry the fuse's whole rating; before a small conductor it is
 * no larger than the code's cap.
 *
 * @param worstCaseA The most current that can flow, A, 0 or more.
 * @param continuousFactor Allowance for current that runs for hours, 1.25 by custom (NEC 690.8).
 * @param hottestAirC Air round the cable at its hottest, degC.
 */
export const checkCurrent = (
  run: CableRun,
  worstCaseA: number,
  continuousFactor: number,
  hottestAirC: number,
): CurrentCheck => {
  const designA = worstCaseA * continuousFactor;
  const size = wireSizeOf(run.size);
  const ampacity = ampacityOf(size, run.material, run.insulationC, hottestAirC);
  const capA = smallConductorFuseA(size, run.material);
  const nextFuse = fuseAtLeast(designA);
  const base = { worstCaseA, designA, ampacity };
  if (ampacity === null) {
    return {
      ...base,
      verdict: "not-listed",
      fuseA: null,
      words: `The tables known here list no current for this wire: ask its maker or the local code. ${CONFIRM}`,
    };
  }
  const allowed = `${amperes(ampacity.amps)} (${ampacity.source}, air at ${hottestAirC} °C)`;
  if (ampacity.amps < designA) {
    return {
      ...base,
      verdict: "too-thin",
      fuseA: null,
      words: `Too thin: design current ${amperes(designA)}, cable limit ${allowed}. Take a thicker one. ${CONFIRM}`,
    };
  }
  if (nextFuse === null || nextFuse > ampacity.amps) {
    return {
      ...base,
      verdict: "no-fuse",
      fuseA: null,
      words: `No standard fuse lies between ${amperes(designA)} and ${allowed}: take a thicker cable. ${CONFIRM}`,
    };
  }
  if (nextFuse > capA) {
    return {
      ...base,
      verdict: "no-fuse",
      fuseA: null,
      words: `Too thin for its fuse: ${amperes(designA)} ask for one of ${nextFuse} A, and before a wire this thin it may be ${capA} A at most (small conductors, NEC 240.4(D)). Take a thicker cable. ${CONFIRM}`,
    };
  }
  return {
    ...base,
    verdict: "fits",
    fuseA: nextFuse,
    words: `Design current ${amperes(designA)}, cable limit ${allowed}: a ${nextFuse} A fuse protects it. ${CONFIRM}`,
  };
};
