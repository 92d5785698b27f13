import { totalWh } from "../../season/light/day-sums.ts";
import { bestEachDayWh, bestSingle, judgedWh, type SeasonYield } from "../../season/light/season-yield.ts";
import { energyWords, gainWords, tiltShort } from "./words.ts";

/** The season's answer in a breath: parts to be shown one after the other, the figures among them to be stressed. */
export type Headline = readonly (string | { readonly figure: string })[];

/**
 * The best single setting, what it brings in, what that is worth over lying flat, and what changing legs would add.
 *
 * @throws RangeError for a season without a day
 */
export const seasonHeadline = (yields: SeasonYield): Headline => {
  const { days, settings } = yields;
  if (days.length === 0) throw new RangeError("seasonHeadline: expected at least one day, received none");
  const single = settings[bestSingle(yields)];
  const singleWh = totalWh(judgedWh(single));
  const flat = settings.find(({ setting }) => setting.legMm === null);
  const overFlat =
    flat === undefined || flat === single ? null : gainWords(singleWh, totalWh(judgedWh(flat)));
  const changing = settings.length < 2 ? null : gainWords(bestEachDayWh(yields), singleWh);
  const kind = single.expectedWh === null ? "under a clear sky every day" : "with cloud in it";
  return [
    "Set once and left alone, ",
    { figure: `${single.setting.name} (${tiltShort(single.setting.tiltDeg)})` },
    " does best: ",
    { figure: `${energyWords(singleWh / days.length)} a day` },
    ` on average, ${kind}`,
    ...(overFlat === null ? ["."] : [", ", { figure: overFlat }, " than lying flat."]),
    ...(changing === null || changing === "about the same"
      ? []
      : [" The best setting of each day would bring ", { figure: changing }, " still."]),
  ];
};
