import { batchVerb } from "./batch/verb.ts";
import { seasonVerb } from "./season.ts";
import type { Verb } from "./verb.ts";

/** Every verb, in the order a person meets the decisions. */
export const VERBS: readonly Verb[] = [seasonVerb, batchVerb];
