import type { Field, Section } from "../field.ts";
import { valueAt } from "../path.ts";

const isUsed =
  (kind: string) =>
  (item: unknown): boolean =>
    valueAt(item, ["use", "kind"]) === kind;

const withUse = (item: unknown, use: unknown): unknown => ({ ...(item as object), use });

const applianceFields: readonly Field[] = [
  { kind: "text", path: ["name"], label: "Name" },
  {
    kind: "number",
    path: ["watts"],
    label: "Draws while on",
    unit: "W",
    slider: { least: 0, most: 200, step: 1 },
  },
  { kind: "number", path: ["howMany"], label: "How many", unit: "" },
  {
    kind: "variant",
    path: [],
    label: "Used",
    variants: [
      {
        label: "from one clock time to another",
        is: isUsed("at-times"),
        make: (item) => withUse(item, { kind: "at-times", times: [{ from: "19:00", to: "23:00" }] }),
      },
      {
        label: "for some hours a day",
        is: isUsed("for-hours"),
        make: (item) => withUse(item, { kind: "for-hours", hours: 2 }),
      },
      {
        label: "as warmth asks (a fridge)",
        is: isUsed("cooling"),
        make: (item) => withUse(item, { kind: "cooling", dutyPct: 35 }),
      },
    ],
  },
  {
    kind: "list",
    path: ["use", "times"],
    label: "When",
    item: "time",
    most: 12,
    when: isUsed("at-times"),
    blank: () => ({ from: "07:00", to: "08:00" }),
    fields: [
      { kind: "text", path: ["from"], label: "From" },
      { kind: "text", path: ["to"], label: "To" },
    ],
  },
  {
    kind: "number",
    path: ["use", "hours"],
    label: "Hours a day",
    unit: "h",
    when: isUsed("for-hours"),
    slider: { least: 0, most: 24, step: 0.5 },
  },
  {
    kind: "number",
    path: ["use", "dutyPct"],
    label: "Runs at 25 °C",
    unit: "% of the time",
    when: isUsed("cooling"),
    slider: { least: 5, most: 100, step: 5 },
  },
  {
    kind: "choice",
    path: ["supply"],
    label: "Fed by",
    choices: [
      { value: "battery", label: "the battery" },
      { value: "inverter", label: "the inverter" },
    ],
  },
];

export const loadsSection: Section = {
  id: "loads",
  title: "Loads",
  fields: [
    {
      kind: "list",
      path: ["loads", "appliances"],
      label: "Appliances",
      item: "appliance",
      most: 60,
      blank: (count) => ({ name: `appliance ${count + 1}`, watts: 10, use: { kind: "for-hours", hours: 2 } }),
      fields: applianceFields,
    },
    {
      kind: "number",
      path: ["loads", "inverterEfficiencyPct"],
      label: "Inverter",
      unit: "% efficient",
      slider: { least: 60, most: 98, step: 1 },
    },
    {
      kind: "choice",
      path: ["loads", "inverterOn"],
      label: "Inverter is on",
      choices: [
        { value: "with-its-loads", label: "only while something on it runs" },
        { value: "all-day", label: "day and night" },
      ],
    },
    { kind: "number", path: ["loads", "inverterOwnW"], label: "Inverter itself draws", unit: "W while on" },
  ],
};
