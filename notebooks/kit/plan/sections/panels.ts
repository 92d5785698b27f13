import type { Field, Section } from "../field.ts";
import { valueAt } from "../path.ts";

const isFixed = (item: unknown): boolean => valueAt(item, ["mount", "kind"]) === "fixed";

const withMount = (item: unknown, mount: unknown): unknown => ({ ...(item as object), mount });

const panelFields: readonly Field[] = [
  { kind: "text", path: ["name"], label: "Name" },
  {
    kind: "number",
    path: ["module", "powerW"],
    label: "Rated power",
    unit: "W",
    slider: { least: 10, most: 400, step: 5 },
    says: "On the nameplate, at standard test conditions.",
  },
  { kind: "number", path: ["howMany"], label: "How many", unit: "" },
  {
    kind: "number",
    path: ["inSeries"],
    label: "In series",
    unit: "panels in a string",
    says: "1: side by side. 2: two behind one another, their volts added up.",
  },
  { kind: "length", path: ["lengthMm"], label: "Length" },
  { kind: "length", path: ["widthMm"], label: "Width" },
  {
    kind: "variant",
    path: [],
    label: "Held by",
    variants: [
      {
        label: "the stand",
        is: (item) => !isFixed(item),
        make: (item) => withMount(item, { kind: "stand" }),
      },
      { label: "a fixed mount", is: isFixed, make: (item) => withMount(item, { kind: "fixed" }) },
    ],
  },
  {
    kind: "number",
    path: ["mount", "tiltDeg"],
    label: "Tilt",
    unit: "° from level",
    when: isFixed,
    slider: { least: 0, most: 90, step: 1 },
  },
  {
    kind: "number",
    path: ["mount", "bearingDeg"],
    label: "Faces",
    unit: "° from true north",
    when: isFixed,
    slider: { least: 0, most: 359, step: 1 },
  },
];

export const panelsSection: Section = {
  id: "panels",
  title: "Panels",
  fields: [
    {
      kind: "list",
      path: ["panels"],
      label: "Panels",
      item: "panel",
      most: 8,
      blank: (count) => ({ name: `panel ${count + 1}`, module: { powerW: 100 } }),
      fields: panelFields,
    },
  ],
};
