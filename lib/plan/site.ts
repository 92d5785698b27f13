import { z } from "zod";
import { monthly, quantity, shortName } from "./field.ts";

/** Kinds of ground whose reflectance `sky/ground.ts` knows. */
export const GROUND_KINDS = [
  "grass",
  "bare soil",
  "dry sand",
  "gravel",
  "forest",
  "water",
  "asphalt",
  "fresh snow",
  "old snow",
  "sea ice",
] as const;

export type GroundKind = (typeof GROUND_KINDS)[number];

const isZone = (zone: string): boolean => {
  try {
    new Intl.DateTimeFormat("en", { timeZone: zone });
    return true;
  } catch {
    return false;
  }
};

/** Asking takes milliseconds, and a slider reads its plan at every move. */
const lastAsked = { zone: "UTC", known: true };

const known = (zone: string): boolean => {
  if (zone !== lastAsked.zone) Object.assign(lastAsked, { zone, known: isZone(zone) });
  return lastAsked.known;
};

/** The zone of whole hours nearest to the sun's own time at a longitude; `Etc/GMT-1` is one hour AHEAD of UTC. */
export const sunZone = (longitudeDeg: number): string => {
  const hours = Math.round(longitudeDeg / 15);
  return hours === 0 ? "Etc/UTC" : `Etc/GMT${hours > 0 ? "-" : "+"}${Math.abs(hours)}`;
};

const horizonPoint = z.strictObject({
  bearingDeg: quantity(0, 360, { unit: "degrees from true north" }),
  altitudeDeg: quantity(0, 89, { unit: "degrees above level" }),
});

/** Height above the sea, m: from the shore of the lowest lake to above any road. */
export const ELEVATION_RANGE = [-430, 6000] as const;

/** Where the panel stands. */
export const siteSchema = z
  .strictObject({
    name: shortName.default("the site"),
    latitudeDeg: quantity(-90, 90, { unit: "degrees", hint: "south is negative" }),
    longitudeDeg: quantity(-180, 180, { unit: "degrees", hint: "west is negative" }),
    /** Left out: the height of the place whose climate is taken or of those near, else sea level (`heightM`); the answer says which. */
    elevationM: quantity(...ELEVATION_RANGE, { unit: "m above the sea" }).optional(),
    timeZone: z
      .string()
      .refine(known, "must be an IANA time zone")
      .meta({ hint: 'such as "Europe/Berlin"; left out, whole hours from the longitude' })
      .optional(),
    ground: z
      .union([
        z.enum(GROUND_KINDS),
        quantity(0, 1, { unit: "of the light sent back" }),
        monthly(0, 1, { unit: "of the light sent back" }),
      ])
      .meta({ hint: `a reflectance 0 to 1, twelve of them, or one of: ${GROUND_KINDS.join(", ")}` })
      .default("grass"),
    /**
     * Hills and trees: bearing and altitude pairs, joined by straight lines right round. Empty: a level horizon. A hill
     * ends where a point says 0: one point alone is a wall of its height all round.
     */
    horizon: z.array(horizonPoint).max(360).default([]),
  })
  .transform((site) => ({ ...site, timeZone: site.timeZone ?? sunZone(site.longitudeDeg) }));

export type Site = z.output<typeof siteSchema>;

/** Metres above the sea; sea level where the plan states none. */
export const heightM = ({ elevationM }: Pick<Site, "elevationM">): number => elevationM ?? 0;
