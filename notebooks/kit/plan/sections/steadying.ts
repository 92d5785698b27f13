import { TERRAINS } from "../../../../lib/plan/steadying.ts";
import type { Section } from "../field.ts";

/** What keeps the stand where it is. */
export const steadyingSection: Section = {
  id: "steadying",
  title: "Wind",
  fields: [
    {
      kind: "number",
      path: ["stand", "steadying", "ballastKg"],
      label: "Ballast",
      unit: "kg",
      slider: { least: 0, most: 60, step: 1 },
      says: "Half on the heel, half on the leg's foot.",
    },
    {
      kind: "number",
      path: ["stand", "steadying", "friction"],
      label: "Friction on the ground",
      unit: "",
      slider: { least: 0.1, most: 1, step: 0.05 },
      says: "About 0.3 on wet grass or smooth rock, 0.5 on dry ground.",
    },
    {
      kind: "choice",
      path: ["stand", "steadying", "terrain"],
      label: "Country around",
      choices: TERRAINS.map((value) => ({ value, label: value })),
    },
    {
      kind: "number",
      path: ["stand", "steadying", "holdWindMs"],
      label: "Wind that ballast should hold",
      unit: "m/s",
      slider: { least: 2, most: 20, step: 1 },
      says: "Mean wind as the forecast states it. 8 to 10.7 m/s is a fresh breeze, Beaufort 5.",
    },
  ],
};
