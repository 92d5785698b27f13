import { aimsVerb } from "./aims.ts";
import { batchVerb } from "./batch/verb.ts";
import { batteryVerb } from "./battery.ts";
import { creditsVerb } from "./credits.ts";
import { legsVerb } from "./legs/verb.ts";
import { placesVerb } from "./places.ts";
import { planVerb } from "./plan.ts";
import { seasonVerb } from "./season.ts";
import { sheetVerb } from "./sheet.ts";
import { swapsVerb } from "./swaps.ts";
import type { Verb } from "./verb.ts";
import { worthVerb } from "./worth.ts";

/** Every verb, in the order a person meets the decisions. */
export const VERBS: readonly Verb[] = [
  seasonVerb,
  legsVerb,
  swapsVerb,
  aimsVerb,
  batteryVerb,
  worthVerb,
  sheetVerb,
  planVerb,
  placesVerb,
  batchVerb,
  creditsVerb,
];
