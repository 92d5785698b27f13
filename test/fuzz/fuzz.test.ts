import fc from "fast-check";
import { expect, test } from "vitest";
import { shipped } from "../sky/climate/shipped.ts";
import { climatePlan, plausiblePlan, slippedPlan } from "./plans.ts";
import { holdToPromises } from "./promises.ts";

// The long run is `npm run fuzz`; these are its first cases, the same on every machine.
const SEED = 20_270_401;

test("plausible plans are answered or refused, and their energies possible", () => {
  let answered = 0;
  fc.assert(
    fc.property(plausiblePlan, (plan) => {
      if (holdToPromises(plan) === "answered") answered += 1;
    }),
    { numRuns: 150, seed: SEED },
  );
  // Most random legs don't fit their stand; enough plans must still get through for the check to mean anything.
  expect(answered).toBeGreaterThan(30);
});

test("plans under climates are answered or refused, their bands in order", () => {
  let answered = 0;
  fc.assert(
    fc.property(climatePlan, (plan) => {
      if (holdToPromises(plan, shipped) === "answered") answered += 1;
    }),
    { numRuns: 60, seed: SEED },
  );
  expect(answered).toBeGreaterThan(10);
});

test("plans with slips in them are answered or refused, never crash", () => {
  let refused = 0;
  fc.assert(
    fc.property(slippedPlan, (plan) => {
      if (holdToPromises(plan) === "refused") refused += 1;
    }),
    { numRuns: 300, seed: SEED },
  );
  expect(refused).toBeGreaterThan(100);
});

test("no JSON value crashes the reader", () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(holdToPromises(value)).toBe("refused");
    }),
    { numRuns: 300, seed: SEED },
  );
});
