import type { Battery } from "../../plan/battery.ts";
import type { ColdToll } from "../../season/battery/cold-toll.ts";
import { shortDaysWords } from "./short-days-words.ts";

const STANDS: Readonly<Record<Battery["stands"], string>> = {
  "living space": "in a living space",
  locker: "in an unheated locker",
  outside: "outside",
};

/** Fewer days a season than this are none to speak of. */
const HARDLY = 0.2;

const whole = (days: number): string => String(days < 0.95 ? Number(days.toFixed(1)) : Math.round(days));

/**
 * What the cold does to a battery, in plain sentences: on how many days it cannot be charged, how many short days come from
 * that, and what to do. For lead-acid, which hardly minds, nothing where nothing is blocked.
 *
 * @param days of the season
 * @param shortDays a season, as it is
 */
export const coldWords = (
  toll: ColdToll | null,
  battery: Battery,
  days: number,
  shortDays: number,
): readonly string[] => {
  if (toll === null)
    return battery.chemistry === "LiFePO4" ? ["Cold never keeps the battery from being charged."] : [];
  const kept = battery.keptAtC === undefined ? "" : `, kept at ${battery.keptAtC} °C`;
  const blocked = `Cold: the battery stands ${STANDS[battery.stands]}${kept} and cannot be charged below ${battery.chargeAboveC} °C. That keeps light from it on ${whole(toll.blockedDays)} of ${days} days a season.`;
  if (toll.shortDaysFromCold < HARDLY) return [`${blocked} Hardly a short day comes from it.`];
  return [
    blocked,
    `${whole(toll.shortDaysFromCold)} of the ${shortDaysWords(shortDays)} come from the cold: with the battery kept warm there would be ${shortDaysWords(toll.shortDaysWarm)}. Before a bigger panel or battery, keep this one warm: in a heated space, or insulated with a heating mat.`,
  ];
};
