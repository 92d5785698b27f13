import type { SkySource } from "../light/sky-source.ts";
import { type BatteryOptions, type BatterySeason, batterySeasons, meanOutcome } from "./battery-season.ts";

/** What the cold does to a set-up, a season on average. */
export interface ColdToll {
  /** Days on which the cold kept the battery from being charged. */
  readonly blockedDays: number;
  /** Short days of the same seasons with the battery kept warm, and how many fewer those are. */
  readonly shortDaysWarm: number;
  readonly shortDaysFromCold: number;
}

/** Warm enough for every limit and for its whole capacity, degC. */
const WARM_C = 20;

/**
 * What the cold costs: the same seasons once more, with the battery kept warm.
 *
 * @returns `null` where the cold never keeps the battery from being charged; nothing is then lived through again
 */
export const coldToll = (
  source: SkySource,
  season: BatterySeason,
  options: Pick<BatteryOptions, "timeZone" | "airC">,
): ColdToll | null => {
  const blockedDays = meanOutcome(season, "blockedDays");
  if (blockedDays === 0) return null;
  const { setUp } = season;
  const battery = { ...setUp.battery, keptAtC: WARM_C };
  const [warm] = batterySeasons(source, [{ ...setUp, battery }], options);
  const shortDaysWarm = meanOutcome(warm, "shortDays");
  return {
    blockedDays,
    shortDaysWarm,
    shortDaysFromCold: Math.max(0, meanOutcome(season, "shortDays") - shortDaysWarm),
  };
};
