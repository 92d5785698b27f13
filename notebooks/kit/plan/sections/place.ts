import { GROUND_KINDS } from "../../../../lib/plan/site.ts";
import type { Section } from "../field.ts";

/** Time zones the browser knows; the plan's own stays among the choices whatever the browser knows. */
const zones = (): readonly string[] => ["Etc/UTC", ...Intl.supportedValuesOf("timeZone")];

export const placeSection: Section = {
  id: "site",
  title: "Place",
  fields: [
    { kind: "text", path: ["site", "name"], label: "Name" },
    {
      kind: "number",
      path: ["site", "latitudeDeg"],
      label: "Latitude",
      unit: "°",
      slider: { least: -90, most: 90, step: 0.5 },
      says: "South is negative.",
    },
    {
      kind: "number",
      path: ["site", "longitudeDeg"],
      label: "Longitude",
      unit: "°",
      slider: { least: -180, most: 180, step: 0.5 },
      says: "West is negative.",
    },
    { kind: "number", path: ["site", "elevationM"], label: "Above the sea", unit: "m" },
    {
      kind: "choice",
      path: ["site", "timeZone"],
      label: "Time zone",
      choices: zones().map((value) => ({ value, label: value.replaceAll("_", " ") })),
    },
    {
      kind: "choice",
      path: ["site", "ground"],
      label: "Ground",
      choices: GROUND_KINDS.map((value) => ({ value, label: value })),
      says: "What the ground sends back onto a steep panel.",
    },
  ],
};
