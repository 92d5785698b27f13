import type { Plan } from "../../../../lib/plan/plan.ts";
import { facingOf } from "../../../../lib/season/light/settings.ts";
import { namedLegs, readingOfTilt } from "../../../../lib/stand/index.ts";
import type { Field, Section } from "../field.ts";
import { valueAt, withValue } from "../path.ts";

const byLength = (item: unknown): boolean => valueAt(item, ["lengthMm"]) !== undefined;
const readFrom =
  (from: "ground" | "post") =>
  (item: unknown): boolean =>
    valueAt(item, ["readFrom"]) === from;

/** The leg as it stands now, so that stating it in another way changes nothing. */
const sameLeg = (item: unknown, plan: Plan): { readonly legMm: number; readonly tiltDeg: number } => {
  const name = valueAt(item, ["name"]);
  const now = namedLegs(plan.stand).find((leg) => leg.name === name);
  return { legMm: Math.round(now?.legMm ?? 400), tiltDeg: Math.round(now?.tiltDeg ?? 35) };
};

const withOwned = (item: unknown, owned: true | undefined): unknown => withValue(item, ["owned"], owned);

const asTilt = (from: "ground" | "post") => (item: unknown, plan: Plan) => ({
  name: valueAt(item, ["name"]),
  tiltDeg: readingOfTilt(sameLeg(item, plan).tiltDeg, from).deg,
  readFrom: from,
});

const legFields: readonly Field[] = [
  { kind: "text", path: ["name"], label: "Name" },
  {
    kind: "variant",
    path: [],
    label: "Stated by",
    variants: [
      {
        label: "its length",
        is: byLength,
        make: (item, plan) => ({ name: valueAt(item, ["name"]), lengthMm: sameLeg(item, plan).legMm }),
      },
      { label: "tilt read from the ground", is: readFrom("ground"), make: asTilt("ground") },
      { label: "tilt read from a post", is: readFrom("post"), make: asTilt("post") },
    ],
  },
  {
    kind: "length",
    path: ["lengthMm"],
    label: "Length",
    when: byLength,
    slider: { least: 50, most: 1500, step: 5 },
    says: "From the centre of the pivot hole to the foot.",
  },
  {
    kind: "variant",
    path: [],
    label: "To be had by",
    when: byLength,
    variants: [
      {
        label: "cutting it",
        is: (item) => valueAt(item, ["owned"]) !== true,
        make: (item) => withOwned(item, undefined),
      },
      {
        label: "it is there already: keep it in every set",
        is: (item) => valueAt(item, ["owned"]) === true,
        make: (item) => withOwned(item, true),
      },
    ],
  },
  {
    kind: "number",
    path: ["tiltDeg"],
    label: "Tilt",
    unit: "°",
    says: "From the ground: 0 lies flat, 90 stands upright.",
    when: readFrom("ground"),
    slider: { least: 0, most: 90, step: 1 },
  },
  {
    kind: "number",
    path: ["tiltDeg"],
    label: "Tilt",
    unit: "°",
    says: "From a post: 90 lies flat, 0 stands upright.",
    when: readFrom("post"),
    slider: { least: 0, most: 90, step: 1 },
  },
];

export const standSection: Section = {
  id: "stand",
  title: "Stand and legs",
  fields: [
    {
      kind: "number",
      path: ["stand", "facingDeg"],
      label: "Faces",
      unit: "°",
      slider: { least: 0, most: 359, step: 1 },
      otherwise: facingOf,
      says: "Clockwise from true north: 90 east, 180 south. Left empty: towards the equator.",
    },
    {
      kind: "list",
      path: ["stand", "legs"],
      label: "Legs",
      item: "leg",
      most: 12,
      blank: (count) => ({ name: `leg ${count + 1}`, lengthMm: 400 }),
      fields: legFields,
    },
    {
      kind: "choice",
      path: ["stand", "legStyle"],
      label: "How a leg holds",
      choices: [
        { value: "square", label: "square to the panel's back" },
        { value: "plumb", label: "standing plumb" },
        { value: "strap", label: "folded out as far as a strap allows" },
      ],
    },
    {
      kind: "length",
      path: ["stand", "pivotMm"],
      label: "Pivot",
      slider: { least: 200, most: 1500, step: 5 },
      says: "From the panel's bottom edge to the leg's pivot hole, along the frame.",
    },
    {
      kind: "length",
      path: ["stand", "strapMm"],
      label: "Strap",
      when: (item) => valueAt(item, ["stand", "legStyle"]) === "strap",
      says: "On the ground from the panel's bottom edge to the leg's foot.",
    },
    {
      kind: "length",
      path: ["stand", "pivotInsetMm"],
      label: "Pivot inside the frame",
      says: "From the frame's back edge towards the glass; negative when it stands behind on a block.",
    },
    {
      kind: "length",
      path: ["stand", "heelSpacerMm"],
      label: "Spacer under the bottom edge",
    },
    {
      kind: "number",
      path: ["stand", "groundSlopeDeg"],
      label: "Slope of the ground",
      unit: "°",
      slider: { least: -20, most: 20, step: 1 },
      says: "Positive when it falls away towards where the panel faces.",
    },
  ],
};
