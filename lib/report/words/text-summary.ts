import type { Plan } from "../../plan/plan.ts";
import { totalWh } from "../../season/light/day-sums.ts";
import { bestEachDayWh, bestSingle, judgedWh, type SeasonYield } from "../../season/light/season-yield.ts";
import { dateWords } from "../../units/dates.ts";
import {
  bearingShort,
  compassPoint,
  energyWords,
  gainWords,
  listWords,
  NO_LIGHT,
  tiltShort,
} from "./words.ts";

/** Which panels the figures count, where some of them no leg can move. */
export const countedWords = ({ panels }: Pick<Plan, "panels">): readonly string[] => {
  const fixed = panels.filter(({ mount }) => mount.kind === "fixed");
  if (fixed.length === 0) return [];
  if (fixed.length === panels.length) return ["No panel is on the stand: every setting brings the same."];
  return [`All panels are counted, fixed ones (${listWords(fixed.map(({ name }) => name))}) where they are.`];
};

/** Days on which each setting is the best one, in the order of the settings. */
const daysBest = ({ settings, best }: SeasonYield): readonly number[] => {
  const days = settings.map(() => 0);
  for (const setting of best) days[setting] += 1;
  return days;
};

const settingWords = ({ setting }: SeasonYield["settings"][number]): string =>
  setting.legMm === null ? setting.name : `${setting.name} (${tiltShort(setting.tiltDeg)})`;

/**
 * The season's answer in a few plain sentences: what is asked, which single setting is best, and what changing brings.
 *
 * @param yields at least one day
 * @param place the site's name
 * @param rough whether the sky is known only roughly, as by analogy [false]
 * @throws RangeError for a season without a day
 */
export const textSummary = (yields: SeasonYield, place: string, rough = false): readonly string[] => {
  const { days, settings } = yields;
  const first = days[0];
  const last = days[days.length - 1];
  if (first === undefined || last === undefined) {
    throw new RangeError("textSummary: expected at least one day, received none");
  }
  const single = settings[bestSingle(yields)];
  const singleWh = totalWh(judgedWh(single));
  const cloudIn = single.expectedWh !== null;
  const about =
    `${place}, ${dateWords(first.date)} to ${dateWords(last.date)} (${days.length} ${days.length === 1 ? "day" : "days"}), ` +
    `facing ${compassPoint(single.setting.bearingDeg)} (${bearingShort(single.setting.bearingDeg)} from true north).`;
  if (!(bestEachDayWh(yields) > 0)) return [about, NO_LIGHT];
  const sentences = [
    about,
    cloudIn
      ? `Figures are ${rough ? "rough " : ""}expected values, with cloud in them.`
      : "Figures are for a clear sky every day: an upper bound, not what to expect.",
    `Left alone all season, ${settingWords(single)} brings in the most: ${energyWords(singleWh)}, ` +
      `${energyWords(singleWh / days.length)} a day.`,
  ];
  const flat = settings.find(({ setting }) => setting.legMm === null);
  if (flat !== undefined && flat !== single) {
    const gain = gainWords(singleWh, totalWh(judgedWh(flat)));
    if (gain !== null) sentences.push(`That is ${gain} than lying flat.`);
  }
  if (settings.length > 1) {
    const changedWh = bestEachDayWh(yields);
    const gain = gainWords(changedWh, singleWh);
    const counts = daysBest(yields);
    const uses = settings.flatMap((setting, index) =>
      counts[index] === 0 ? [] : [`${settingWords(setting)} on ${counts[index]}`],
    );
    if (uses.length === 1) sentences.push("It is the best on every day.");
    else if (gain !== null) {
      sentences.push(
        `Using whichever is best on each day would bring in ${energyWords(changedWh)}, ${gain}: ${listWords(uses)} of the days.`,
      );
    }
  }
  return sentences;
};
