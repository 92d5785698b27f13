import type { FieldSheet } from "../../season/sheet/field-sheet.ts";
import { dateWords } from "../../units/dates.ts";
import type { Headline } from "./headline.ts";
import { compassPoint, energyWords, listWords, tiltShort } from "./words.ts";

/** More dates than this are only counted: the sheet lists them. */
const MOST_DATES = 4;

/** A field sheet in a sentence: the leg to begin with, when to change, where to face, and what to expect. */
export const fieldSheetHeadline = ({
  swaps,
  kept,
  facingDeg,
  panelsDayWh,
  batteryDayWh,
  cloudIn,
}: FieldSheet): Headline => {
  const [begin, ...changes] = swaps;
  const dates = changes.map(({ date }) => dateWords(date).replace(/ \d{4}$/, ""));
  const plain = kept?.setting ?? begin.to;
  return [
    kept === null ? "Begin with " : "Never change it: set ",
    { figure: `${plain.name} (${tiltShort(plain.tiltDeg)})` },
    ...(dates.length === 0 || kept !== null
      ? [" and leave it"]
      : dates.length > MOST_DATES
        ? [", change ", { figure: `${dates.length} times` }]
        : [", change on ", { figure: listWords(dates) }]),
    ", face ",
    { figure: `${compassPoint(facingDeg)} (${Math.round(facingDeg)}° true)` },
    ", and expect ",
    { figure: `${energyWords(batteryDayWh)} a day` },
    ` into the battery, of ${energyWords(panelsDayWh)} that the panels make`,
    cloudIn ? ", on average, with cloud in it." : ", under a clear sky, which is more than to expect.",
  ];
};
