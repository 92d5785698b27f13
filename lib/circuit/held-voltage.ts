import type { ParallelBranches } from "./branches.ts";

const MOST_STEPS = 60;
const CLOSE_A = 1e-9;

/**
 * Current into a source that holds its voltage behind a resistance, A, 0 or more: I = sum of branches at (V + I R).
 *
 * Newton's method on an excess that only rises, held between brackets: where all branches are off, and where one switches
 * off, a step may go too far. Started from the current with no resistance, which is the most it can be.
 *
 * @param heldV Voltage held, V.
 * @param commonOhm Resistance that the joint current passes, ohm, 0 or more.
 */
export const currentIntoHeldV = (branches: ParallelBranches, heldV: number, commonOhm: number): number => {
  if (commonOhm === 0) return branches.at(heldV);
  let low = 0;
  let high = branches.at(heldV);
  let amps = high;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const excess = amps - branches.at(heldV + commonOhm * amps);
    if (excess > 0) high = amps;
    else low = amps;
    const newton = amps - excess / (1 - commonOhm * branches.slope);
    if (Math.abs(newton - amps) < CLOSE_A) return newton;
    amps = newton > low && newton < high ? newton : (low + high) / 2;
  }
  return amps;
};
