import { gaugeText } from "../../../../lib/plan/wire-size.ts";
import type { Field, Section } from "../field.ts";
import { valueAt } from "../path.ts";

/** Sizes that shops sell, in both series; a plan file may name any other. */
const SIZES: readonly { readonly value: string | number; readonly label: string }[] = [
  ...[0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35].map((value) => ({ value, label: `${value} mm²` })),
  ...[18, 16, 14, 12, 10, 8, 6, 4, 2].map((gauge) => ({ value: gaugeText(gauge), label: gaugeText(gauge) })),
];

const cableFields = (key: "panelCable" | "batteryCable", name: string): readonly Field[] => [
  { kind: "choice", path: ["circuit", key, "size"], label: `${name}, size`, choices: SIZES },
  {
    kind: "number",
    path: ["circuit", key, "lengthM"],
    label: `${name}, length one way`,
    unit: "m",
    slider: { least: 0.5, most: key === "panelCable" ? 30 : 5, step: 0.5 },
  },
];

const isPwm = (item: unknown): boolean => valueAt(item, ["circuit", "controller", "kind"]) === "pwm";

const withController = (item: unknown, kind: "mppt" | "pwm"): unknown => {
  const circuit = valueAt(item, ["circuit"]) ?? {};
  const maxCurrentA = valueAt(item, ["circuit", "controller", "maxCurrentA"]);
  const controller = { kind, ...(typeof maxCurrentA === "number" ? { maxCurrentA } : {}) };
  return { ...(item as object), circuit: { ...(circuit as object), controller } };
};

export const circuitSection: Section = {
  id: "circuit",
  title: "Cable and controller",
  fields: [
    ...cableFields("panelCable", "Panel cable"),
    ...cableFields("batteryCable", "Battery cable"),
    {
      kind: "choice",
      path: ["circuit", "panelCable", "material"],
      label: "Panel cable, metal",
      choices: [
        { value: "copper", label: "copper" },
        { value: "aluminium", label: "aluminium" },
      ],
    },
    {
      kind: "variant",
      path: [],
      label: "Controller",
      variants: [
        {
          label: "MPPT (tracks the panel's best voltage)",
          is: (item) => !isPwm(item),
          make: (item) => withController(item, "mppt"),
        },
        {
          label: "PWM (holds the panel at the battery's voltage)",
          is: isPwm,
          make: (item) => withController(item, "pwm"),
        },
      ],
    },
    {
      kind: "number",
      path: ["circuit", "controller", "maxCurrentA"],
      label: "Its greatest current",
      unit: "A",
      slider: { least: 5, most: 60, step: 5 },
    },
    {
      kind: "choice",
      path: ["circuit", "wiring"],
      label: "Several panels",
      choices: [
        { value: "parallel", label: "side by side on one controller" },
        { value: "own-controllers", label: "each with a controller of its own" },
      ],
    },
    {
      kind: "number",
      path: ["circuit", "branchFuseA"],
      label: "Fuse in each branch",
      unit: "A",
      says: "Of panels side by side; left empty: none.",
    },
    {
      kind: "number",
      path: ["circuit", "loadCutOff", "reconnectV"],
      label: "Loads come back at",
      unit: "V",
      says: "Of a cut-off that waits until the battery has recovered; left empty: from the first light.",
    },
    {
      kind: "temperature",
      path: ["circuit", "hottestC"],
      label: "Air round the cables at its hottest",
    },
  ],
};
