/** `npm run fuzz -- [--runs N] [--seed N]`: many random plans, whole and broken, held to what is promised of every plan. */
import { parseArgs } from "node:util";
import fc from "fast-check";
import { shipped } from "../sky/climate/shipped.ts";
import { climatePlan, plausiblePlan, slippedPlan } from "./plans.ts";
import { type Fate, holdToPromises } from "./promises.ts";

const { values } = parseArgs({
  options: { runs: { type: "string", default: "100000" }, seed: { type: "string", default: "1" } },
});
const runs = Number(values.runs);
const seed = Number(values.seed);
const fates: Record<Fate, number> = { answered: 0, refused: 0 };
let done = 0;

// A season under a climate takes as long as thirty clear ones.
const anyPlan = fc.oneof(
  { weight: 10, arbitrary: plausiblePlan },
  { weight: 1, arbitrary: climatePlan },
  { weight: 10, arbitrary: slippedPlan },
  { weight: 10, arbitrary: fc.jsonValue() },
);

fc.assert(
  fc.property(anyPlan, (plan) => {
    fates[holdToPromises(plan, shipped)] += 1;
    done += 1;
    if (process.stderr.isTTY && done % 500 === 0) process.stderr.write(`\r${done} of ${runs} plans`);
  }),
  { numRuns: runs, seed },
);
console.log(
  `${runs} plans (seed ${seed}): ${fates.answered} answered, ${fates.refused} refused with reasons, none broke a promise.`,
);
