import { GROUND_KINDS } from "../../../../lib/plan/site.ts";
import { shippedWeatherPlace } from "../../weather/shipped.ts";
import type { Section } from "../field.ts";
import { valueAt } from "../path.ts";
import { otherZone, withMappedZone, withZoneOfPlace, zoneText } from "../place-zone.ts";

/** Weather is taken as that of the site within this: a degree of latitude is 111 km. */
const NEAR_DEG = 1.5;

/** Whether the plan's weather file, one of those that travel with the notebooks, was recorded somewhere else. */
const weatherFromElsewhere = (item: unknown): boolean => {
  const file = valueAt(item, ["sky", "file"]);
  const [latitude, longitude] = [
    valueAt(item, ["site", "latitudeDeg"]),
    valueAt(item, ["site", "longitudeDeg"]),
  ];
  if (valueAt(item, ["sky", "source"]) !== "weather" || typeof file !== "string") return false;
  if (typeof latitude !== "number" || typeof longitude !== "number") return false;
  const place = shippedWeatherPlace(file);
  if (place === null) return false;
  const east = (longitude - place.longitudeDeg) * Math.cos((latitude * Math.PI) / 180);
  return Math.hypot(latitude - place.latitudeDeg, east) > NEAR_DEG;
};

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
      along: withZoneOfPlace,
      says: "South is negative.",
    },
    {
      kind: "number",
      path: ["site", "longitudeDeg"],
      label: "Longitude",
      unit: "°",
      slider: { least: -180, most: 180, step: 0.5 },
      along: withZoneOfPlace,
      says: "West is negative.",
    },
    {
      kind: "notice",
      path: [],
      label: "Use the climate of this place",
      text: "The weather file in this plan was recorded somewhere else.",
      when: weatherFromElsewhere,
      act: (item) => ({ ...(item as object), sky: { source: "climate" } }),
    },
    {
      kind: "number",
      path: ["site", "elevationM"],
      label: "Above the sea",
      unit: "m",
      says: "Off a map. Left empty: that of the place whose climate is taken, else the sea's.",
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
