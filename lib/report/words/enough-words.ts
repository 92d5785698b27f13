import type { LegsAnswer } from "../../season/legs/legs-answer.ts";
import type { SwapsAnswer } from "../../season/legs/swaps-answer.ts";
import { changingPays, enoughLegs, keptSetting } from "../../season/legs/worthwhile.ts";
import { tiltWords } from "../../stand/reading.ts";
import { legWords } from "./leg-words.ts";
import { energyWords, listWords } from "./words.ts";

/** A small share of the season, to half a per cent. @example smallShare(0.013) // "1.5 %" */
export const smallShare = (share: number): string => {
  const halves = Math.round(200 * share) / 2;
  return halves < 0.5 ? "less than 0.5 %" : `${halves} %`;
};

const ENOUGH = ["No leg is needed", "One leg is enough", "Two legs are enough", "Three legs are enough"];

/**
 * That fewer legs are enough, where more bring less than the share that is worth a cut; `null` where they bring more, or
 * where the sets are judged by short days.
 */
export const enoughLegsWords = ({ sets, leastGain, objective }: LegsAnswer): string | null => {
  const [last] = sets.slice(-1);
  if (last === undefined || objective === "fewest short days") return null;
  const enough = enoughLegs(sets, leastGain);
  if (enough === last) return null;
  const which = enough.legs.length === 0 ? "" : `: ${listWords(enough.legs.map(legWords))}`;
  return `${ENOUGH[enough.legs.length]}${which}. More legs bring ${smallShare(last.scoreWh / enough.scoreWh - 1)} more at best.`;
};

/** That the stand need not be changed, where the calendar's changes bring too little; `null` where they pay or there are none. */
export const neverChangeWords = (answer: SwapsAnswer): string | null => {
  const { calendar, settings } = answer;
  if (calendar.swaps.length === 0 || changingPays(answer)) return null;
  const { index, totalWh } = keptSetting(answer);
  const { name, tiltDeg } = settings[index];
  return `Never change it: ${name}, ${tiltWords(tiltDeg)}, all season brings ${energyWords(totalWh)}. The changes below bring ${smallShare(calendar.totalWh / totalWh - 1)} more.`;
};
