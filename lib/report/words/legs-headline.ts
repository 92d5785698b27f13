import { swapRows } from "../../season/legs/swap-rows.ts";
import type { SwapsAnswer } from "../../season/legs/swaps-answer.ts";
import { changingPays, keptSetting } from "../../season/legs/worthwhile.ts";
import { dayMonthWords } from "../../units/dates.ts";
import { smallShare } from "./enough-words.ts";
import type { Headline } from "./headline.ts";
import { energyWords, gainWords, listWords, NO_LIGHT, tiltShort } from "./words.ts";

/** Which legs, when to change, and what that is worth, in a breath. */
export const legsHeadline = (answer: SwapsAnswer): Headline => {
  const { calendar, days, settings, cloudIn } = answer;
  if (!(calendar.everyDayWh > 0)) return [NO_LIGHT];
  const [start, ...swaps] = swapRows(answer);
  const used = settings.filter((_, index) => calendar.stays.some(({ setting }) => setting === index));
  const pays = swaps.length > 0 && changingPays(answer);
  const kept = pays || swaps.length === 0 ? null : keptSetting(answer);
  const keptWh = kept?.totalWh ?? calendar.totalWh;
  const gain = gainWords(keptWh, calendar.firstWh);
  const perDay: Headline = [
    { figure: `${energyWords(keptWh / days.length)} a day` },
    cloudIn ? " on average, with cloud in it" : " under a clear sky every day",
    ...(gain === null || used.every(({ legMm }) => legMm === null) || kept?.index === 0
      ? ["."]
      : [", ", { figure: gain }, " than lying flat."]),
  ];
  if (swaps.length === 0) {
    return [
      "Set ",
      { figure: `${start.to.name} (${tiltShort(start.to.tiltDeg)})` },
      " once and leave it: ",
      ...perDay,
    ];
  }
  if (kept !== null) {
    const { name, tiltDeg } = settings[kept.index];
    return [
      "Never change it: ",
      { figure: `${name} (${tiltShort(tiltDeg)})` },
      " all season brings ",
      ...perDay,
      ` Changing by date brings ${smallShare(calendar.totalWh / keptWh - 1)} more.`,
    ];
  }
  const dates = swaps.map(({ date }) => dayMonthWords(date));
  return [
    "With ",
    { figure: listWords(used.map(({ name, tiltDeg }) => `${name} (${tiltShort(tiltDeg)})`)) },
    ", changed on ",
    { figure: listWords(dates) },
    ": ",
    ...perDay,
  ];
};
