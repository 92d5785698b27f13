import { BATTERY_STANDS, type BatteryStand, CHEMISTRIES } from "../../../../lib/plan/battery.ts";
import type { Section } from "../field.ts";

const STANDS_WORDS: Readonly<Record<BatteryStand, string>> = {
  "living space": "in a living space, kept warm",
  locker: "in a locker, not heated",
  outside: "outside",
};

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
      kind: "choice",
      path: ["battery", "stands"],
      label: "Where it stands",
      choices: BATTERY_STANDS.map((value) => ({ value, label: STANDS_WORDS[value] })),
      says: "A cold lithium battery cannot be charged. A locker follows the day's mean air, a battery outside the hour's.",
    },
    {
      kind: "temperature",
      path: ["battery", "keptAtC"],
      label: "Kept at",
      says: "Left empty: a living space is taken as 15 °C; elsewhere it follows the air.",
    },
    {
      kind: "temperature",
      path: ["battery", "chargeAboveC"],
      label: "No charge below",
      says: "Left empty: 0 °C for lithium, -20 °C for lead-acid.",
    },
    { kind: "number", path: ["battery", "heaterW"], label: "Heater", unit: "W", says: "0: none." },
  ],
};
