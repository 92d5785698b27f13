import type { Setting } from "../light/settings.ts";
import type { Swap } from "./swap-calendar.ts";
import type { SwapsAnswer } from "./swaps-answer.ts";

/** One line of the calendar: from that date on, this setting. */
export interface SwapRow {
  readonly date: string;
  readonly from: Setting | null;
  readonly to: Setting;
  /** `null` for the setting that the season begins with. */
  readonly swap: Swap | null;
  readonly earliest: string;
  readonly latest: string;
}

/** The swap calendar as rows: how the season begins, then every swap. */
export const swapRows = ({ days, settings, calendar }: SwapsAnswer): readonly SwapRow[] => {
  const dateOf = (day: number): string => days[Math.min(days.length - 1, Math.max(0, day))].date;
  return calendar.stays.map(({ setting, first }, index): SwapRow => {
    const swap = index === 0 ? null : calendar.swaps[index - 1];
    return {
      date: dateOf(first),
      from: swap && settings[swap.from],
      to: settings[setting],
      swap,
      earliest: dateOf(first - (swap?.earlyDays ?? 0)),
      latest: dateOf(first + (swap?.lateDays ?? 0)),
    };
  });
};
