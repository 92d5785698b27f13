import type { ParallelBranches } from "./branches.ts";

const MOST_STEPS = 60;
/** A last step below this many volts ends the search: the step itself leaves about its square, and power is level there. */
const CLOSE_V = 1e-3;

/**
 * The voltage of most power between two voltages over which no branch switches off, where power bends one way only.
 * Newton on P' = I + V I', held between brackets.
 */
const peakWithin = (branches: ParallelBranches, from: number, to: number, start: number): number => {
  let low = from;
  let high = to;
  let volts = start > low && start < high ? start : (low + high) / 2;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    branches.at(volts);
    const rise = branches.amps + volts * branches.slope;
    if (rise > 0) low = volts;
    else high = volts;
    const newton = volts - rise / (2 * branches.slope + volts * branches.bend);
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (Math.abs(next - volts) < CLOSE_V) return next;
    volts = next;
  }
  return volts;
};

/**
 * The voltage at which branches in parallel give most power together, V, at or above a least voltage; `NaN` when
 * nothing flows there.
 *
 * Each branch's current falls ever faster with voltage, so the power of those still conducting has one peak between
 * any two voltages at which a branch switches off; every such stretch is looked at, and the best of them is the answer.
 *
 * @param leastV V at the joint, 0 or more.
 * @param startV V at the joint that some branch must reach unloaded before anything starts.
 */
export const maxPowerV = (branches: ParallelBranches, leastV: number, startV = 0): number => {
  let top = 0;
  for (let branch = 0; branch < branches.count; branch += 1) top = Math.max(top, branches.openV(branch));
  if (!(top >= startV)) return Number.NaN;
  let best = Number.NaN;
  let bestW = Number.NEGATIVE_INFINITY;
  let from = leastV;
  while (from < top) {
    let to = top;
    let start = 0;
    for (let branch = 0; branch < branches.count; branch += 1) {
      const open = branches.openV(branch);
      if (open <= from) continue;
      start = Math.max(start, branches.usualPeakV(branch, open));
      if (open < to) to = open;
    }
    // Where the peak lies below the stretch, as on a hot day against a full battery, its lower end is the best of it.
    const past = start <= from + 1 && branches.at(from) + from * branches.slope <= 0;
    const peak = past ? from : peakWithin(branches, from, to, start);
    const watts = peak * branches.at(peak);
    if (watts > bestW) {
      best = peak;
      bestW = watts;
    }
    from = to;
  }
  return best;
};
