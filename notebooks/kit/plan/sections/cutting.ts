import type { Section } from "../field.ts";

/** What a saw and a frame ask for. */
export const cuttingSection: Section = {
  id: "cutting",
  title: "Cutting and stowing",
  fields: [
    {
      kind: "length",
      path: ["stand", "cutting", "stepMm"],
      label: "Step of the saw",
      says: "Legs are whole steps long.",
    },
    {
      kind: "length",
      path: ["stand", "stowMm"],
      label: "Longest leg that stows",
      says: "Pivot hole to foot. Left empty: worked out from the frame.",
    },
    { kind: "length", path: ["stand", "frame", "depthMm"], label: "Depth of the frame" },
    {
      kind: "length",
      path: ["stand", "frame", "wallMm"],
      label: "Ends of the frame",
      says: "What its upper and lower members take off the length inside, each.",
    },
    { kind: "length", path: ["stand", "cutting", "legThicknessMm"], label: "Thickness of a leg" },
    { kind: "length", path: ["stand", "cutting", "legWidthMm"], label: "Width of a leg" },
    {
      kind: "length",
      path: ["stand", "cutting", "holeMarginMm"],
      label: "Beyond the hole",
      says: "Material left above the centre of the pivot hole.",
    },
    { kind: "length", path: ["stand", "cutting", "holeMm"], label: "Hole" },
    {
      kind: "length",
      path: ["stand", "cutting", "footMm"],
      label: "Rubber foot",
      says: "The piece ends short by it.",
    },
    { kind: "length", path: ["stand", "cutting", "kerfMm"], label: "Saw cut" },
    { kind: "length", path: ["stand", "cutting", "stockMm", 0], label: "Length of the stock" },
    { kind: "number", path: ["stand", "cutting", "legsEach"], label: "Legs of each length", unit: "" },
  ],
};
