import { benchBattery } from "./battery.ts";
import { benchClimate } from "./climate.ts";
import { benchFloor } from "./floor.ts";
import { benchGrowth } from "./growth.ts";
import { benchLegSets } from "./leg-sets.ts";
import { benchPlane } from "./plane.ts";
import { benchSeason } from "./season.ts";
import { benchSky } from "./sky.ts";

/** Prints every benchmark; ratios are taken within one run, so they hold on any machine. */
const benches: readonly (() => readonly string[])[] = [
  benchSeason,
  benchSky,
  benchPlane,
  benchFloor,
  benchGrowth,
  benchLegSets,
  benchBattery,
  benchClimate,
];

for (const bench of benches) {
  for (const line of bench()) console.log(line);
  console.log();
}
