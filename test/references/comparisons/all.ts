import { aboveTheAir } from "./above-the-air.ts";
import { cellTemperature } from "./cell-temperature.ts";
import { clearDays } from "./clear-days.ts";
import { clearSky } from "./clear-sky.ts";
import { climate } from "./climate.ts";
import type { Comparison } from "./comparison.ts";
import { diffuseShare } from "./diffuse-share.ts";
import { diffuseSplits } from "./diffuse-splits.ts";
import { extraterrestrialTable } from "./extraterrestrial-table.ts";
import { fullChain } from "./full-chain.ts";
import { glass } from "./glass.ts";
import { holzkirchen } from "./holzkirchen.ts";
import { magneticField } from "./magnetic-field.ts";
import { measuredPower } from "./measured-power.ts";
import { nyAlesund } from "./ny-alesund.ts";
import { singleDiode } from "./single-diode.ts";
import { storage } from "./storage.ts";
import { sunEvents } from "./sun-events.ts";
import { sunExamples } from "./sun-examples.ts";
import { sunPosition } from "./sun-position.ts";
import { sunSeries } from "./sun-series.ts";
import { tiltRules } from "./tilt-rules.ts";
import { tiltedPlane } from "./tilted-plane.ts";
import { unevenLight } from "./uneven-light.ts";
import { wind } from "./wind.ts";
import { wire } from "./wire.ts";

/** A room's comparisons, in the order in which light becomes an answer. */
export interface Section {
  readonly room: string;
  readonly comparisons: readonly Comparison[];
}

/** Every comparison with something from outside that the accuracy table shows. */
export const sections: readonly Section[] = [
  {
    room: "sun",
    comparisons: [...sunPosition, ...sunEvents, ...sunExamples, ...sunSeries, ...magneticField],
  },
  {
    room: "sky",
    comparisons: [
      ...extraterrestrialTable,
      ...aboveTheAir,
      ...clearSky,
      ...clearDays,
      ...diffuseShare,
      ...diffuseSplits,
    ],
  },
  { room: "climate", comparisons: climate },
  { room: "plane", comparisons: [...tiltedPlane, ...glass, ...holzkirchen, ...nyAlesund] },
  { room: "panel", comparisons: [...cellTemperature, ...singleDiode, ...unevenLight, ...measuredPower] },
  { room: "full chain", comparisons: fullChain },
  { room: "stand", comparisons: [...tiltRules, ...wind] },
  { room: "circuit", comparisons: [...wire, ...storage] },
];
