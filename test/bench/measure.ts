/** How benchmarks are taken here: interleaved, warmed up, the least of several, and every result used. */

export interface Candidate {
  readonly name: string;
  /** Does the work once and returns a number made from its result, so that no work can be skipped. */
  readonly run: () => number;
}

export interface Measured {
  readonly name: string;
  readonly leastMs: number;
  readonly meanMs: number;
  readonly sdMs: number;
}

let sink = 0;

/**
 * Times candidates in turn within each round, so that a slow moment of the machine hits all alike.
 * The least time is what the code costs; mean and spread say how noisy the machine was.
 */
export const measure = (candidates: readonly Candidate[], rounds = 9, warmUps = 3): readonly Measured[] => {
  const times = candidates.map((): number[] => []);
  for (let round = 0; round < warmUps + rounds; round += 1) {
    candidates.forEach(({ run }, index) => {
      const start = performance.now();
      sink += run();
      const took = performance.now() - start;
      if (round >= warmUps) times[index].push(took);
    });
  }
  if (Number.isNaN(sink)) throw new Error("measure: a candidate returned NaN");
  return candidates.map(({ name }, index) => {
    const taken = times[index];
    const meanMs = taken.reduce((sum, time) => sum + time, 0) / taken.length;
    const variance = taken.reduce((sum, time) => sum + (time - meanMs) ** 2, 0) / taken.length;
    return { name, leastMs: Math.min(...taken), meanMs, sdMs: Math.sqrt(variance) };
  });
};

/** One line of a benchmark's report. */
export const measuredLine = ({ name, leastMs, meanMs, sdMs }: Measured): string =>
  `  ${name.padEnd(58)}${leastMs.toFixed(2).padStart(9)} ms   (mean ${meanMs.toFixed(2)} +- ${sdMs.toFixed(2)})`;

/** A ratio against its target. `atLeast` says on which side of the target it must lie. */
export const ratioLine = (
  name: string,
  ratio: number,
  target: number,
  side: "at least" | "at most",
): string => {
  const met = side === "at least" ? ratio >= target : ratio <= target;
  return `  ${name.padEnd(58)}${ratio.toFixed(2).padStart(9)} x    (${side} ${target}: ${met ? "met" : "NOT MET"})`;
};
