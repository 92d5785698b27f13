import { benchLegSets } from "./leg-sets.ts";
import { benchSeason } from "./season.ts";

/** Prints every benchmark; ratios are taken within one run, so they hold on any machine. */
const benches: readonly (() => readonly string[])[] = [benchSeason, benchLegSets];

for (const bench of benches) {
  for (const line of bench()) console.log(line);
  console.log();
}
