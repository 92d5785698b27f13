import type { DayRoutine, Reaim } from "../../season/aiming/reaim.ts";
import { aimCard, type CardPlace } from "./aim-card.ts";
import {
  bearingShort,
  compassPoint,
  energyWords,
  gainWords,
  listWords,
  NO_LIGHT,
  tiltShort,
} from "./words.ts";

const settingWords = ({ parts }: DayRoutine, index: number): string => {
  const { setting } = parts[index];
  return setting.legMm === null
    ? "lying flat"
    : `${setting.name} (${tiltShort(setting.tiltDeg)}) facing ${bearingShort(setting.bearingDeg)} (${compassPoint(setting.bearingDeg)})`;
};

/**
 * What turning the panel brings, in a few plain sentences, and how to do it.
 *
 * @param mostAims the routine to spell out: at most so many aims a day, no more than the answer has
 */
export const aimsSummary = (answer: Reaim, place: CardPlace, mostAims: number): readonly string[] => {
  const [season] = answer.periods;
  const { noon, routines, limitDayWh } = season;
  if (!(limitDayWh > 0)) return [NO_LIGHT];
  const chosen = routines[mostAims - 1];
  const sentences = [
    answer.cloudIn
      ? "Figures are expected values, with cloud in them, for the panels on the stand."
      : "Figures are for a clear sky every day, for the panels on the stand: an upper bound, not what to expect.",
    `Facing the noon sun all season, ${settingWords(noon, 0)} brings in ${energyWords(noon.dayWh)} a day.`,
  ];
  const steps = routines.slice(1).flatMap(({ dayWh, parts }, index) => {
    const before = routines[index].dayWh;
    return parts.length === index + 2
      ? [`${parts.length} aims ${energyWords(dayWh)} (${energyWords(dayWh - before)} more)`]
      : [];
  });
  sentences.push(
    steps.length === 0
      ? `Turning it in the course of the day brings nothing more.`
      : `One best aim brings ${energyWords(routines[0].dayWh)} a day; ${listWords(steps)}.`,
  );
  const short = gainWords(limitDayWh, noon.dayWh);
  sentences.push(
    `A panel turned at every moment to where most light comes from would bring ${energyWords(limitDayWh)}${short === null ? "" : `, ${short} than facing noon`}: no stand reaches that.`,
  );
  if (chosen.parts.length > 1) {
    sentences.push(`${chosen.parts.length} aims a day, all season:`);
    aimCard(place, season.period, chosen).forEach(({ when, compass, byShadow }, index) => {
      sentences.push(
        `  ${index + 1}. ${index === 0 ? `set ${when}` : `at ${when}`}: ${settingWords(chosen, index)}. ${compass}${byShadow === null ? "" : ` ${byShadow}`}`,
      );
    });
    sentences.push(
      "Never look into the sun. A panel in the light is live: turn it by its frame, and stake the stand again after every turn.",
    );
  }
  return sentences;
};
