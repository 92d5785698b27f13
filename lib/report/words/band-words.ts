import { quantileSorted } from "d3";
import { bestSingle, type SeasonYield } from "../../season/light/season-yield.ts";
import type { TotalBand } from "../../season/light/sequences.ts";
import { monthWords } from "../../units/dates.ts";
import { energyWords, tiltShort } from "./words.ts";

/** A month speaks for itself with this many of its days in the season. */
const DAYS_OF_A_MONTH = 20;

interface MonthSpread {
  readonly month: string;
  readonly p10Wh: number;
  readonly p50Wh: number;
  readonly p90Wh: number;
}

/** The spread of single days in each month of the season, under skies that are equally likely. */
const monthSpreads = ({ days, settings }: SeasonYield, index: number): readonly MonthSpread[] => {
  const { underEachSky } = settings[index];
  const months = [...new Set(days.map(({ date }) => date.slice(0, 7)))];
  return months.flatMap((month): MonthSpread[] => {
    const own = days.flatMap(({ date }, day) => (date.startsWith(month) ? [day] : []));
    if (own.length < DAYS_OF_A_MONTH) return [];
    const sorted = underEachSky.flatMap((dayWh) => own.map((day) => dayWh[day])).sort((a, b) => a - b);
    const point = (share: number): number => quantileSorted(sorted, share) ?? Number.NaN;
    return [
      {
        month: monthWords(month),
        p10Wh: point(0.1),
        p50Wh: point(0.5),
        p90Wh: point(0.9),
      },
    ];
  });
};

const monthSentence = ({ month, p10Wh, p90Wh }: MonthSpread): string =>
  `Nine ${month} days in ten bring more than ${energyWords(p10Wh)}, one in ten more than ${energyWords(p90Wh)}.`;

/**
 * How far days and seasons scatter, in plain sentences, for the setting that does best when left alone: its darkest and
 * its brightest month, and the season as a whole.
 *
 * @param totals the band of each setting's season total, in their order; `null` when no seasons were drawn
 * @returns nothing when no band is known
 */
export const bandSentences = (
  yields: SeasonYield,
  totals: readonly TotalBand[] | null,
): readonly string[] => {
  const single = bestSingle(yields);
  const { setting, band } = yields.settings[single];
  if (band === null) return [];
  const spreads = [...monthSpreads(yields, single)].sort((a, b) => a.p50Wh - b.p50Wh);
  const ends = spreads.length > 1 ? [spreads[0], spreads[spreads.length - 1]] : spreads;
  const name = setting.legMm === null ? setting.name : `${setting.name} (${tiltShort(setting.tiltDeg)})`;
  const total = totals?.[single];
  return [
    ...(ends.length === 0 ? [] : [`With ${name} left alone: ${ends.map(monthSentence).join(" ")}`]),
    ...(total === undefined
      ? []
      : [
          `Nine such seasons in ten bring more than ${energyWords(total.p10Wh)}, ` +
            `half more than ${energyWords(total.p50Wh)}, one in ten more than ${energyWords(total.p90Wh)}.`,
        ]),
  ];
};
