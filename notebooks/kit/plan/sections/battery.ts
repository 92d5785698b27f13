import { CHEMISTRIES } from "../../../../lib/plan/battery.ts";
import type { Section } from "../field.ts";

export const batterySection: Section = {
  id: "battery",
  title: "Battery",
  fields: [
    {
      kind: "choice",
      path: ["battery", "chemistry"],
      label: "Chemistry",
      choices: CHEMISTRIES.map((value) => ({ value, label: value })),
      says: "Efficiencies, limits and the share that may be taken out follow it unless the plan says otherwise.",
    },
    {
      kind: "number",
      path: ["battery", "capacityAh"],
      label: "Capacity",
      unit: "Ah",
      slider: { least: 10, most: 300, step: 5 },
    },
    {
      kind: "choice",
      path: ["battery", "systemV"],
      label: "Voltage class",
      choices: [12, 24, 48].map((value) => ({ value, label: `${value} V` })),
    },
    {
      kind: "number",
      path: ["battery", "usablePct"],
      label: "May be taken out",
      unit: "%",
      slider: { least: 20, most: 100, step: 5 },
    },
    {
      kind: "temperature",
      path: ["battery", "keptAtC"],
      label: "Kept at",
      says: "Left empty: it follows the air.",
    },
    { kind: "number", path: ["battery", "heaterW"], label: "Heater", unit: "W", says: "0: none." },
  ],
};
