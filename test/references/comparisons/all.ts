import { aboveTheAir } from "./above-the-air.ts";
import { cellTemperature } from "./cell-temperature.ts";
import { clearDays } from "./clear-days.ts";
import { clearSky } from "./clear-sky.ts";
import type { Comparison } from "./comparison.ts";
import { diffuseShare } from "./diffuse-share.ts";
import { diffuseSplits } from "./diffuse-splits.ts";
import { fullChain } from "./full-chain.ts";
import { glass } from "./glass.ts";
import { holzkirchen } from "./holzkirchen.ts";
import { nyAlesund } from "./ny-alesund.ts";
import { singleDiode } from "./single-diode.ts";
import { storage } from "./storage.ts";
import { tiltedPlane } from "./tilted-plane.ts";
import { wire } from "./wire.ts";

/** A room's comparisons, in the order in which light becomes an answer. */
export interface Section {
  readonly room: string;
  readonly comparisons: readonly Comparison[];
}

/** Every comparison with something from outside that the accuracy table shows. */
export const sections: readonly Section[] = [
  {
    room: "sky",
    comparisons: [...aboveTheAir, ...clearSky, ...clearDays, ...diffuseShare, ...diffuseSplits],
  },
  { room: "plane", comparisons: [...tiltedPlane, ...glass, ...holzkirchen, ...nyAlesund] },
  { room: "panel", comparisons: [...cellTemperature, ...singleDiode] },
  { room: "full chain", comparisons: fullChain },
  { room: "circuit", comparisons: [...wire, ...storage] },
];
