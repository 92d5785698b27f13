import { Temporal } from "temporal-polyfill";
import type { Problem } from "../units/problem.ts";
import type { Season } from "./season.ts";
import type { Site } from "./site.ts";

/**
 * Hours that a place's clocks may be away from its own sun, summer time included: the farthest, in the west of China and of
 * Alaska, are 3 to 3.5.
 */
const MOST_HOURS_OFF = 4;

/** Polewards of this clocks are a matter of taste, and longitude means little, degrees. */
const POLEWARDS_DEG = 80;

/** Zones of a fixed offset belong to no place: whoever states one may mean it. */
const isFixedZone = (zone: string): boolean => /^(Etc\/|UTC$|GMT$|Zulu$|[+-])/.test(zone);

/** A zone that cannot be the place's: its clocks are hours away from the sun there. */
export const zoneProblems = (
  { latitudeDeg, longitudeDeg, timeZone }: Pick<Site, "latitudeDeg" | "longitudeDeg" | "timeZone">,
  { from }: Pick<Season, "from">,
): readonly Problem[] => {
  if (isFixedZone(timeZone) || Math.abs(latitudeDeg) > POLEWARDS_DEG) return [];
  const { offsetNanoseconds } = Temporal.PlainDate.from(from).toZonedDateTime({
    timeZone,
    plainTime: "12:00",
  });
  const apart = offsetNanoseconds / 3.6e12 - longitudeDeg / 15;
  const hoursOff = apart - 24 * Math.round(apart / 24);
  return Math.abs(hoursOff) <= MOST_HOURS_OFF
    ? []
    : [
        {
          path: "site.timeZone",
          value: timeZone,
          allowed: `must be a zone of the place: its clocks are ${Math.abs(hoursOff).toFixed(0)} hours ${hoursOff > 0 ? "ahead of" : "behind"} the sun at longitude ${longitudeDeg}`,
          hint: "is the longitude's sign right? west is negative; left out, the zone follows the longitude",
        },
      ];
};
