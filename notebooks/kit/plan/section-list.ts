import type { Section } from "./field.ts";
import { aimingSection } from "./sections/aiming.ts";
import { batterySection } from "./sections/battery.ts";
import { circuitSection } from "./sections/circuit.ts";
import { cuttingSection } from "./sections/cutting.ts";
import { loadsSection } from "./sections/loads.ts";
import { panelsSection } from "./sections/panels.ts";
import { placeSection } from "./sections/place.ts";
import { seasonSection } from "./sections/season.ts";
import { skySection } from "./sections/sky.ts";
import { standSection } from "./sections/stand.ts";
import { steadyingSection } from "./sections/steadying.ts";
import { worthSection } from "./sections/worth.ts";

/** The plan as people fill it in, in the order of the decisions. A new part of the plan adds its section here. */
export const SECTIONS: readonly Section[] = [
  placeSection,
  seasonSection,
  skySection,
  panelsSection,
  standSection,
  cuttingSection,
  steadyingSection,
  aimingSection,
  circuitSection,
  batterySection,
  loadsSection,
  worthSection,
];
