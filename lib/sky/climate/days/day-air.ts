import type { SeasonDay } from "../../../sun/columns.ts";
import type { WholeDays } from "../../../sun/whole-days.ts";
import type { AirRange } from "../climate.ts";
import { COLDEST_HOUR, WARMEST_HOUR, warmthAt } from "../day-temperature.ts";
import { calendarIndex, smoothYear } from "../month-to-date.ts";
import { dailySpreadK } from "../temperature-spread.ts";
import type { SkySequences } from "./sequences.ts";

/** The air of a season's days: the usual low and high of each date, degC, and how far a day's own lie from them, kelvin (one standard deviation). */
export interface DayAir {
  readonly lowC: Float64Array;
  readonly highC: Float64Array;
  readonly lowSpreadK: Float64Array;
  readonly highSpreadK: Float64Array;
}

/** Lays a climate's air over the dates of a season. */
export const dayAir = (days: readonly Pick<SeasonDay, "date">[], air: AirRange): DayAir => {
  const lows = smoothYear(air.lowC);
  const highs = smoothYear(air.highC);
  const lowC = Float64Array.from(days, ({ date }) => lows[calendarIndex(date)]);
  const highC = Float64Array.from(days, ({ date }) => highs[calendarIndex(date)]);
  return {
    lowC,
    highC,
    lowSpreadK: lowC.map((meanC) => dailySpreadK("low", meanC)),
    highSpreadK: highC.map((meanC) => dailySpreadK("high", meanC)),
  };
};

/**
 * Makes a reader of a drawn season's air, night and day: the hour's temperature on every step of its whole days, degC.
 *
 * From the morning's low to the afternoon's high by the published curve of the day; from there the evening falls to the
 * next day's low, and the small hours fall from the evening before, so that no midnight makes a step. Low and high are
 * the date's usual ones and the season's own departure from them; a low above the high of its day is held at it.
 *
 * @param out one value a step, day after day
 */
export const drawnAir = (
  air: DayAir,
  { perDay, noonStep, stepMinutes }: WholeDays,
  sequences: SkySequences,
) => {
  const { days, lowScore, highScore } = sequences;
  const hours = Float64Array.from(
    { length: perDay },
    (_, at) => 12 + ((at + 0.5 - noonStep) * stepMinutes) / 60,
  );
  const warmth = hours.map(warmthAt);
  const [morning, evening] = [COLDEST_HOUR, WARMEST_HOUR].map(
    (turn) => hours.filter((hour) => hour < turn).length,
  );
  const lows = new Float64Array(days);
  const highs = new Float64Array(days);
  return (season: number, out: Float64Array): void => {
    for (let day = 0; day < days; day += 1) {
      const at = season * days + day;
      highs[day] = air.highC[day] + air.highSpreadK[day] * highScore[at];
      lows[day] = Math.min(highs[day], air.lowC[day] + air.lowSpreadK[day] * lowScore[at]);
    }
    for (let day = 0; day < days; day += 1) {
      const [low, high] = [lows[day], highs[day]];
      const highBefore = highs[Math.max(0, day - 1)];
      const lowAfter = lows[Math.min(days - 1, day + 1)];
      const first = day * perDay;
      for (let at = 0; at < morning; at += 1) out[first + at] = low + (highBefore - low) * warmth[at];
      for (let at = morning; at < evening; at += 1) out[first + at] = low + (high - low) * warmth[at];
      for (let at = evening; at < perDay; at += 1)
        out[first + at] = lowAfter + (high - lowAfter) * warmth[at];
    }
  };
};
