import type { Plan } from "../../plan/plan.ts";
import { batterySeasons } from "../battery/battery-season.ts";
import { todayOf } from "../battery/today.ts";
import { aimByDay } from "../light/aim-plan.ts";
import type { Setting } from "../light/settings.ts";
import type { SeasonSkies } from "../light/skies.ts";
import type { SkyDays } from "./month-expectations.ts";

/**
 * What a plan's cables and controller can put into its battery on each day, under each of the season's skies, with the
 * stand set by the calendar. A full or a cold battery takes less.
 *
 * @param inUse for each day, the number of the setting in use
 */
export const intoBattery = (
  plan: Plan,
  skies: SeasonSkies,
  settings: readonly Setting[],
  inUse: Uint8Array,
): readonly SkyDays[] => {
  const { sun, clear, expected } = skies;
  const { asIs, place } = todayOf(plan, skies);
  const setUp = { ...asIs, panels: place(aimByDay(sun, settings, inUse)) };
  const cloudIn = expected.length > 0;
  const weighted = cloudIn ? expected : [{ ...clear, weight: 1 }];
  return weighted.map((sky) => {
    const [season] = batterySeasons({ kind: "years", sun, skies: [sky], cloudIn }, [setUp], {
      timeZone: plan.site.timeZone,
      airC: plan.air.temperatureC,
    });
    return { weight: sky.weight, dayWh: season.meanOfferedWh };
  });
};
