import type { SunColumns } from "../../../sun/columns.ts";
import { HOUR_MS } from "../../../units/time.ts";
import type { SkyColumns } from "../../columns.ts";
import type { Climate } from "../climate.ts";
import { warmthAt } from "../day-temperature.ts";
import { calendarIndex, smoothYear } from "../month-to-date.ts";
import { PANEL_HEIGHT_M, windShareAtHeight } from "../wind-height.ts";
import { dayAir } from "./day-air.ts";

/**
 * Puts a climate's warmth and wind into sky columns: the air's daily course between the date's low and high, and the wind
 * brought down to the panel. What the climate does not know stays as it is.
 *
 * @param out columns of the season, changed in place
 */
export const fillClimateAir = (
  sun: SunColumns,
  climate: Pick<Climate, "air" | "wind">,
  out: Pick<SkyColumns, "airC" | "windMs">,
): void => {
  const { air, wind } = climate;
  if (air !== null) {
    const { lowC, highC } = dayAir(sun.days, air);
    for (const [day, { noonMs, first, end }] of sun.days.entries()) {
      const [low, span] = [lowC[day], highC[day] - lowC[day]];
      for (let row = first; row < end; row++) {
        out.airC[row] = low + span * warmthAt(12 + (sun.timeMs[row] - noonMs) / HOUR_MS);
      }
    }
  }
  if (wind !== null) {
    const share = windShareAtHeight(wind.heightM, PANEL_HEIGHT_M);
    const winds = smoothYear(wind.ms);
    for (const { date, first, end } of sun.days) {
      out.windMs.fill(Math.max(0, winds[calendarIndex(date)]) * share, first, end);
    }
  }
};
