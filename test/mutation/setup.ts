import fc from "fast-check";

/**
 * Every mutant is shown to every property that meets it, so a property gets half a second for each, and a case against
 * it is not made smaller: a kill needs no beauty. What it finds is as true as in a full run, which is `npm test`'s.
 */
fc.configureGlobal({
  seed: Number(process.env.FC_SEED ?? 20_270_401),
  endOnFailure: true,
  interruptAfterTimeLimit: 500,
});
