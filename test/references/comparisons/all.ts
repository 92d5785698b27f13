import { cellTemperature } from "./cell-temperature.ts";
import type { Comparison } from "./comparison.ts";
import { glass } from "./glass.ts";
import { singleDiode } from "./single-diode.ts";
import { tiltedPlane } from "./tilted-plane.ts";

/** A room's comparisons, in the order in which light becomes an answer. */
export interface Section {
  readonly room: string;
  readonly comparisons: readonly Comparison[];
}

/** Every comparison with something from outside that the accuracy table shows. */
export const sections: readonly Section[] = [
  { room: "plane", comparisons: [...tiltedPlane, ...glass] },
  { room: "panel", comparisons: [...cellTemperature, ...singleDiode] },
];
