import { GROUND_KINDS } from "../../../../lib/plan/site.ts";
import type { Section } from "../field.ts";
import {
  otherZone,
  weatherFromElsewhere,
  withClimateOfPlace,
  withMappedZone,
  withPlaceMoved,
  zoneText,
} from "../moved-place.ts";

/** Time zones the browser knows; the plan's own stays among the choices whatever the browser knows. */
const zones = (): readonly string[] => ["Etc/UTC", ...Intl.supportedValuesOf("timeZone")];

export const placeSection: Section = {
  id: "site",
  title: "Place",
  fields: [
    {
      kind: "text",
      path: ["name"],
      label: "Name of the plan",
      says: "Stands at the head of the field sheet.",
    },
    { kind: "text", path: ["site", "name"], label: "Place" },
    { kind: "coordinates", path: ["site"], label: "Where it is", along: withPlaceMoved },
    {
      kind: "number",
      path: ["site", "latitudeDeg"],
      label: "Latitude",
      unit: "°",
      slider: { least: -90, most: 90, step: 0.5 },
      along: withPlaceMoved,
      says: "South is negative.",
    },
    {
      kind: "number",
      path: ["site", "longitudeDeg"],
      label: "Longitude",
      unit: "°",
      slider: { least: -180, most: 180, step: 0.5 },
      along: withPlaceMoved,
      says: "West is negative.",
    },
    {
      kind: "notice",
      path: [],
      label: "Use the climate of this place",
      text: "The weather file in this plan was recorded somewhere else.",
      when: weatherFromElsewhere,
      act: withClimateOfPlace,
    },
    {
      kind: "number",
      path: ["site", "elevationM"],
      label: "Above the sea",
      unit: "m",
      says: "Left empty, as when the place has moved: that of the places near, else the sea's; the notes say which.",
    },
    {
      kind: "choice",
      path: ["site", "timeZone"],
      label: "Time zone",
      choices: zones().map((value) => ({ value, label: zoneText(value) })),
      says: "Follows the place, by a coarse map (OpenStreetMap contributors). All clock times go by it.",
    },
    {
      kind: "notice",
      path: [],
      label: "Go by the clocks of the place",
      text: (item) =>
        `The clocks at this place are those of ${zoneText(otherZone(item) ?? "")}, not of the zone above.`,
      when: (item) => otherZone(item) !== null,
      act: withMappedZone,
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
