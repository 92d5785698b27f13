/**
 * Prints how well each published split of global light into beam and diffuse does at stations where both were measured.
 * `npm run compare:diffuse`. The default split is the one with the smallest error on a tilted panel.
 */
import { DIFFUSE_SPLITS, type DiffuseSplit } from "../../lib/plan/sky.ts";
import {
  rankedSplits,
  SPLIT_STATIONS,
  type SplitResult,
  splitResults,
} from "./comparisons/diffuse-splits.ts";

const NAMES: Readonly<Record<DiffuseSplit, string>> = {
  engerer: "Engerer 2015, model 2",
  erbs: "Erbs et al. 1982",
  ridley: "Ridley et al. 2010",
  reindl: "Reindl et al. 1990",
};

const signed = (value: number): string => `${value < 0 ? "-" : "+"}${Math.abs(value).toFixed(1)}`.padStart(7);
const plain = (value: number): string => value.toFixed(1).padStart(7);

const line = (name: string, { diffuseBiasPct, diffuseRmsePct, panel }: SplitResult): string =>
  `  ${name.padEnd(24)}${signed(diffuseBiasPct)}${plain(diffuseRmsePct)}      ${signed(panel.biasPct)}${plain(panel.rmsePct)}`;

console.log("Diffuse light from global alone, against the diffuse light measured beside it.");
console.log("diffuse: bias and root-mean-square error of single steps, % of the mean diffuse light");
console.log("panel:   the same of day sums on a panel tilted 45 degrees to the south, % of the mean day\n");
for (const station of SPLIT_STATIONS) {
  const results = splitResults(station, DIFFUSE_SPLITS);
  const { steps, panel } = results[0][1];
  console.log(`${station.name}: ${steps} steps of ${station.intervalMinutes} min, ${panel.days} days`);
  console.log(`  ${"".padEnd(24)}diffuse: bias   rms   panel: bias   rms`);
  for (const [split, result] of results) {
    console.log(line(NAMES[split], result));
  }
}
console.log("\nMean error of day sums on the panel over the stations, %:");
for (const [split, mean] of rankedSplits()) console.log(`  ${NAMES[split].padEnd(24)}${plain(mean)}`);
