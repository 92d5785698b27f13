/** What goes along when a plan's place moves: its clocks, the sky over it, its height above the sea. */
import zoneOnMap from "@photostructure/tz-lookup";
import { sunZone } from "../../../lib/plan/site.ts";
import { coordinateWords } from "../../../lib/report/words/place-words.ts";
import { shippedWeatherPlace } from "../weather/shipped.ts";
import { DEMOS } from "./demos.ts";
import { valueAt, withValue } from "./path.ts";

const ZONE = ["site", "timeZone"] as const;

/** Zones that were asked for, and whether the browser knows them: it takes its time to say. */
const asked = new Map<string, boolean>();

const isKnown = (zone: string): boolean => {
  const before = asked.get(zone);
  if (before !== undefined) return before;
  try {
    new Intl.DateTimeFormat("en", { timeZone: zone });
    asked.set(zone, true);
    return true;
  } catch {
    asked.set(zone, false);
    return false;
  }
};

interface Place {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** A plan's place; `null` while it can't be read. */
const placeOf = (given: unknown): Place | null => {
  const [latitudeDeg, longitudeDeg] = ["latitudeDeg", "longitudeDeg"].map((key) =>
    valueAt(given, ["site", key]),
  );
  if (typeof latitudeDeg !== "number" || typeof longitudeDeg !== "number") return null;
  return Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180 ? { latitudeDeg, longitudeDeg } : null;
};

/** How far apart two places are, degrees of a great circle; near enough for short ways. */
const apartDeg = (one: Place, other: Place): number => {
  const east = (one.longitudeDeg - other.longitudeDeg) * Math.cos((one.latitudeDeg * Math.PI) / 180);
  return Math.hypot(one.latitudeDeg - other.latitudeDeg, east);
};

/** The time zone kept at a plan's place, by the map; `null` while the place can't be read. */
const zoneOfPlace = (given: unknown): string | null => {
  const place = placeOf(given);
  if (place === null) return null;
  const zone = zoneOnMap(place.latitudeDeg, place.longitudeDeg);
  return isKnown(zone) ? zone : sunZone(place.longitudeDeg);
};

/** The zone a plan goes by: the one it states, else whole hours by the longitude. */
const zoneInUse = (given: unknown): string | null => {
  const stated = valueAt(given, ZONE);
  if (typeof stated === "string") return isKnown(stated) ? stated : null;
  const longitude = valueAt(given, ["site", "longitudeDeg"]);
  return typeof longitude === "number" ? sunZone(longitude) : null;
};

/** What a zone's clocks show on the first of each month of the season's year: equal for zones that differ by name only. */
const clockOf = (zone: string, given: unknown): string => {
  const from = valueAt(given, ["season", "from"]);
  const year = typeof from === "string" && /^\d{4}/.test(from) ? Number(from.slice(0, 4)) : 2027;
  const clock = new Intl.DateTimeFormat("en", { timeZone: zone, dateStyle: "short", timeStyle: "short" });
  return Array.from({ length: 12 }, (_, month) => clock.format(Date.UTC(year, month, 1))).join();
};

const sameClock = (one: string, other: string, given: unknown): boolean =>
  one === other || clockOf(one, given) === clockOf(other, given);

/** The zone that was last that of its place, kept while a coordinate is half typed and there is no place to ask for. */
let followed: string | null = null;

/**
 * A plan whose place has changed, with the zone of the new place if it had that of the old one. A zone that was chosen
 * against the map stays, and {@link otherZone} tells of it.
 *
 * @param before the plan as it was before the place changed
 */
export const withZoneOfPlace = (given: unknown, before: unknown): unknown => {
  const stated = valueAt(before, ZONE);
  const [old, now] = [zoneOfPlace(before), zoneOfPlace(given)];
  const isOwn =
    stated === undefined ||
    stated === followed ||
    (typeof stated === "string" && isKnown(stated) && old !== null && sameClock(stated, old, before));
  if (!isOwn) return given;
  if (now === null) {
    followed = typeof stated === "string" ? stated : null;
    return given;
  }
  const zone = typeof stated === "string" && isKnown(stated) && sameClock(stated, now, given) ? stated : now;
  followed = zone;
  return withValue(given, ZONE, zone);
};

/** The zone of a plan's place by the map, where its clocks show another time than those the plan goes by; else `null`. */
export const otherZone = (given: unknown): string | null => {
  const [mapped, used] = [zoneOfPlace(given), zoneInUse(given)];
  return mapped === null || used === null || sameClock(mapped, used, given) ? null : mapped;
};

/** A plan that goes by the clocks of its place. */
export const withMappedZone = (given: unknown): unknown =>
  withValue(given, ZONE, zoneOfPlace(given) ?? undefined);

/** A zone as people write it. */
export const zoneText = (zone: string): string => zone.replaceAll("_", " ");

/** Weather is taken as that of the site within this: a degree of latitude is 111 km. */
const WEATHER_NEAR_DEG = 1.5;

/** Whether the plan's weather file, one of those that travel with the notebooks, was recorded somewhere else. */
export const weatherFromElsewhere = (given: unknown): boolean => {
  const file = valueAt(given, ["sky", "file"]);
  const place = placeOf(given);
  if (valueAt(given, ["sky", "source"]) !== "weather" || typeof file !== "string" || place === null)
    return false;
  const recorded = shippedWeatherPlace(file);
  return recorded !== null && apartDeg(place, recorded) > WEATHER_NEAR_DEG;
};

/** A plan under the climate of its place. */
export const withClimateOfPlace = (given: unknown): unknown =>
  withValue(given, ["sky"], { source: "climate" });

/** Beyond this a height above the sea and a name are those of another place. */
const SAME_PLACE_DEG = 0.25;

const isElsewhere = (given: unknown, before: unknown): boolean => {
  const [old, now] = [placeOf(before), placeOf(given)];
  return now !== null && (old === null || apartDeg(old, now) > SAME_PLACE_DEG);
};

const withHeightLeftOut = (given: unknown, before: unknown): unknown =>
  isElsewhere(given, before) ? withValue(given, ["site", "elevationM"], undefined) : given;

const SITE_NAME = ["site", "name"] as const;

/** Whether a name is nobody's own: a demo's, or coordinates that stand for one. */
const isBorrowed = (name: unknown, place: Place | null): boolean =>
  DEMOS.some((demo) => valueAt(demo.given, SITE_NAME) === name) ||
  (place !== null && name === coordinateWords(place));

/**
 * Names do not stay behind: a demo's place that was moved is called by its coordinates until it is named, and its plan is one's
 * own. A name that was typed stays.
 */
const withNamesMoved = (given: unknown, before: unknown): unknown => {
  const [old, now] = [placeOf(before), placeOf(given)];
  if (now === null || !isBorrowed(valueAt(given, SITE_NAME), old)) return given;
  const isCoordinates = old !== null && valueAt(given, SITE_NAME) === coordinateWords(old);
  if (!isCoordinates && !isElsewhere(given, before)) return given;
  const named = withValue(given, SITE_NAME, coordinateWords(now));
  return DEMOS.some(({ name }) => name === valueAt(named, ["name"]))
    ? withValue(named, ["name"], "my plan")
    : named;
};

/**
 * A plan whose place was moved by hand: the zone follows, a weather file that was recorded at the old place gives way to the
 * climate of the new one, the old height is left out, and the names of place and demo do not stay behind. What was chosen against the place stays, and is told.
 *
 * @param before the plan as it was before the place moved
 */
export const withPlaceMoved = (given: unknown, before: unknown): unknown => {
  const there = withNamesMoved(withHeightLeftOut(withZoneOfPlace(given, before), before), before);
  return weatherFromElsewhere(there) && !weatherFromElsewhere(before) ? withClimateOfPlace(there) : there;
};
